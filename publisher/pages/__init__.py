"""Room 7: all of it in, a pack for one paper out.

Comes in: a ``Design``, its parts, how they go together, the board sheets, a paper. Goes out: a ``Pack``: pages as placed strokes,
words and pictures in mm, and the promises that proof holds against the finished file. Never: imports reportlab, holds PDF bytes.
"""

from publisher.pages.compose import compose
from publisher.pages.model import (
    Arc,
    Attachment,
    Bookmark,
    Drawn,
    Fill,
    FontFile,
    LineStyle,
    Link,
    Pack,
    PackImage,
    Page,
    Paper,
    Path,
    Picture,
    Stroke,
    Tile,
    Words,
)
from publisher.pages.record import facts_document, with_attachment
from publisher.pages.sheet import Caution, cautions_for, material_words, paper_for, papers, thing, tool_words

__all__ = [
    "Arc",
    "Attachment",
    "Bookmark",
    "Caution",
    "Drawn",
    "Fill",
    "FontFile",
    "LineStyle",
    "Link",
    "Pack",
    "PackImage",
    "Page",
    "Paper",
    "Path",
    "Picture",
    "Stroke",
    "Tile",
    "Words",
    "cautions_for",
    "compose",
    "facts_document",
    "material_words",
    "paper_for",
    "papers",
    "thing",
    "tool_words",
    "with_attachment",
]
