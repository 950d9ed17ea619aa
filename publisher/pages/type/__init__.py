"""How words and lines look: fonts and their metrics, one type scale, lines broken, tables set.

Comes in: words. Goes out: placed words.
Never: know a part, a page or a paper.
"""

from publisher.pages.type.fonts import Faces, face, faces_of
from publisher.pages.type.languages import ENGLISH, known_languages, language_titles
from publisher.pages.type.rectangles import as_polygon
from publisher.pages.type.styles import (
    BODY,
    CUT,
    DIMENSION,
    DISPLAY,
    DRAW,
    FRAME,
    GAUGE,
    GUTTER,
    HATCH,
    HEADING,
    INSET,
    LEADER,
    LEAST,
    LEAST_SIZE,
    LETTER,
    NOTE,
    PALE,
    PICTURE_ADDED,
    PICTURE_ADDED_CONTOUR,
    PICTURE_BEHIND,
    PICTURE_CONTOUR,
    PICTURE_CUE,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_GUIDE,
    PICTURE_HATCH,
    PICTURE_OUTLINE,
    PICTURE_PAPER,
    PICTURE_RING,
    PICTURE_THERE,
    PICTURE_THERE_CONTOUR,
    REFERENCE,
    RULE,
    SCREEN,
    SCREEN_HEAD,
    SCREEN_SMALL,
    SMALL,
    SPACE,
    STRONG_RULE,
    TICK,
    TITLE,
    TRIM,
    TypeStyle,
    line_style,
)
from publisher.pages.type.tables import CELL_GAP, Column, LaidTable, make_table
from publisher.pages.type.text import Align, Block, Setter, tidy
from publisher.pages.type.tongue import Tongue
from publisher.pages.type.word_boxes import Note, note_at, word_in
