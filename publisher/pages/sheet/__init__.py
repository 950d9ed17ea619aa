"""The sheet of paper: sizes and limits, frame, header and footer, page code, rulers, pictures in boxes.

Comes in: a paper. Goes out: drafts of pages, and what stands on every page.
Never: know a part.
"""

from publisher.pages.sheet.act_tools import tools_of_acts
from publisher.pages.sheet.bank_card import CARD_HEIGHT, CARD_INCHES, CARD_WIDTH, card
from publisher.pages.sheet.caution_words import (
    Caution,
    cautions_for,
    material_words,
    short_name,
    table_words,
    thing,
    thing_name,
    tool_words,
)
from publisher.pages.sheet.clearing import LEAST_WHITE, cleared
from publisher.pages.sheet.code import pack_id
from publisher.pages.sheet.draft import Body, Context, Numbers, PageDraft, TruePage
from publisher.pages.sheet.editions import OTHER, Edition, edition_called, needs_in
from publisher.pages.sheet.fiducials import MARK_ARM
from publisher.pages.sheet.filling import share_out
from publisher.pages.sheet.frame import (
    CODE,
    FOOTER,
    LEAST_SQUARE,
    PAGE_SQUARE,
    PAPER_TOO_SMALL,
    QUIET_MM,
    Corner,
    Frame,
    columns,
    kept_boxes,
    make_frame,
)
from publisher.pages.sheet.page_checks import CHECKS, Composed, PageFault, ink_box, own_faults, words_box
from publisher.pages.sheet.page_furniture import SHOWN_DIGITS, TITLE_TOO_LONG, furniture, heading_of, title_fits
from publisher.pages.sheet.page_limit import MOST_COMPOSED, TOO_MANY_PAGES, too_many_pages
from publisher.pages.sheet.paper_table import UNKNOWN_PAPER, paper_for, papers
from publisher.pages.sheet.pictures import (
    COARSE_PHOTO,
    FIGURE,
    coarse_photo,
    described,
    drawing_pose,
    drawn_size,
    photo_size,
    place_drawing,
    place_photo,
)
from publisher.pages.sheet.rulers import MILLIMETRES, SIXTEENTHS, base_line, graduation
from publisher.pages.sheet.saying import (
    NOT_TRANSLATED,
    page_words,
    said_body,
    said_draft,
    said_for,
    said_promises,
    tongue_of,
    untranslated,
)
from publisher.pages.sheet.screen import phone_frame, room, screen_furniture
from publisher.pages.sheet.set_apart import set_apart
from publisher.pages.sheet.shop_frame import SHOP_LONG, SHOP_SHORT, shop_frame
from publisher.pages.sheet.square_limits import square_limits
from publisher.pages.sheet.terms import terms
from publisher.pages.sheet.thinning import A4, MOST_ON_A4, operators, thinned
