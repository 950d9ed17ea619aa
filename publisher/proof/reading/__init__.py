"""A finished PDF read as a stranger would: objects, content, letters, layers, every matrix followed.

Comes in: bytes. Goes out: what a viewer shows, in mm on the page.
Never: know a promise.
"""

from publisher.proof.reading.areas import COVERS_FROM, Cover, clip_area, covers, filled_area, pictures_and_letters
from publisher.proof.reading.beside import beside_pages
from publisher.proof.reading.giving_up import GIVES_UP, why_given_up
from publisher.proof.reading.glyph_shapes import LetterShapes, letter_shapes
from publisher.proof.reading.model import (
    Array,
    FileRead,
    GlyphRead,
    LinkRead,
    Measured,
    PageLooked,
    PageRead,
    PaintedPath,
    PlacedImage,
    Proof,
    TagRead,
    TextRun,
    ThingsLooked,
)
from publisher.proof.reading.objects import TooMuch
from publisher.proof.reading.other_words import page_in_english, promises_in_english, reader_of, unbroken
from publisher.proof.reading.reader import MOST_PAGES, read_file
from publisher.proof.reading.texts import TextLine, normal, says, text_lines, why_hidden
from publisher.proof.reading.units import MM_PER_INCH, MM_PER_PT
