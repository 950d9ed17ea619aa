"""Room 7: all of it in, a pack for one paper out.

Comes in: a ``Design``, its parts, how they go together, the board sheets, a paper. Goes out: a ``Pack``: pages as placed strokes,
words and pictures in mm, and the promises that proof holds against the finished file. Never: imports reportlab, holds PDF bytes.
"""

from publisher.basics import Rule
from publisher.pages.compose import FONT_UNREADABLE, compose
from publisher.pages.front import (
    NO_COVER_PICTURE,
    Covering,
    covering_words,
    coverings_of,
    materials_to_buy,
    shop_picture_names,
    tools_to_buy,
)
from publisher.pages.model import (
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
    Picture,
    ShownPage,
    Stroke,
    StructureElement,
    Tile,
    Words,
)
from publisher.pages.page_counts import PageCount, count_pages
from publisher.pages.record import record_of, record_schema, with_attachment
from publisher.pages.sheet import (
    CHECKS,
    COARSE_PHOTO,
    NOT_TRANSLATED,
    PAPER_TOO_SMALL,
    TITLE_TOO_LONG,
    TOO_MANY_PAGES,
    UNKNOWN_PAPER,
    Caution,
    cautions_for,
    material_words,
    paper_for,
    papers,
    said_for,
    terms,
    thing,
    tool_words,
)
from publisher.pages.templates import TOO_MANY_COPIES
from publisher.pages.tiles import TOO_MANY_TILES
from publisher.pages.type import language_titles

RULES: tuple[Rule, ...] = (
    *CHECKS,
    COARSE_PHOTO,
    FONT_UNREADABLE,
    NOT_TRANSLATED,
    NO_COVER_PICTURE,
    UNKNOWN_PAPER,
    PAPER_TOO_SMALL,
    TITLE_TOO_LONG,
    TOO_MANY_COPIES,
    TOO_MANY_PAGES,
    TOO_MANY_TILES,
)

__all__ = [
    "RULES",
    "Attachment",
    "Bookmark",
    "Caution",
    "Covering",
    "Drawn",
    "Fill",
    "FontFile",
    "LineStyle",
    "Link",
    "Pack",
    "PackImage",
    "Page",
    "PageCount",
    "Paper",
    "Picture",
    "ShownPage",
    "Stroke",
    "StructureElement",
    "Tile",
    "Words",
    "cautions_for",
    "compose",
    "count_pages",
    "covering_words",
    "coverings_of",
    "language_titles",
    "material_words",
    "materials_to_buy",
    "paper_for",
    "papers",
    "record_of",
    "record_schema",
    "said_for",
    "shop_picture_names",
    "terms",
    "thing",
    "tool_words",
    "tools_to_buy",
    "with_attachment",
]
