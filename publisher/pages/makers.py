"""Who makes which pages of a file, in their order: every kind of page of a pack, and of what is given beside it, is listed here."""

from collections.abc import Callable

from publisher.basics import FileKind, Promises, record
from publisher.pages.front import (
    ONE_PART,
    SHOP_KIND,
    about_drafts,
    caution_drafts,
    cover_drafts,
    cut_list_drafts,
    one_part_drafts,
    print_check_drafts,
    shop_drafts,
)
from publisher.pages.instructions import phone_drafts, step_drafts, trade_act_drafts
from publisher.pages.record import pictured_alone, printed_alone, shown_alone, told_alone
from publisher.pages.sheet import Context, PageDraft
from publisher.pages.tiles import true_page_drafts


@record
class PageMaker:
    """Who makes pages, and of which kinds: (kind, what bookmarks call it), in the order in which they stand in the pack; which of
    these are of use only when they print true."""

    drafts: Callable[[Context], tuple[PageDraft, ...]]
    kinds: tuple[tuple[str, str], ...]
    true_size: tuple[str, ...] = ()


COVER = "cover"
PAGES: tuple[PageMaker, ...] = (  # every kind of page, in the order of the pack: a new kind of page is a line here
    PageMaker(cover_drafts, ((COVER, "Cover"),)),
    PageMaker(print_check_drafts, (("print_check", "Print check"),), ("print_check",)),
    PageMaker(about_drafts, (("about", "What it takes"),)),
    PageMaker(cut_list_drafts, (("cut_list", "Buy and cut"),)),
    PageMaker(caution_drafts, (("cautions", "Before you cut"),)),
    PageMaker(trade_act_drafts, (("acts", "How it is done"),)),
    PageMaker(
        true_page_drafts,
        (("templates", "Templates"), ("overview", "Map of the tiles"), ("tiles", "Tiles")),
        ("templates", "tiles"),
    ),
    PageMaker(step_drafts, (("steps", "Instructions"),)),
)

TEST_PAGE: tuple[PageMaker, ...] = (  # those of the free test page
    PageMaker(print_check_drafts, (("print_check", "Print check"),), ("print_check",)),
    PageMaker(one_part_drafts, ((ONE_PART, "One part to try"),), (ONE_PART,)),
)
PHONE_COPY: tuple[PageMaker, ...] = (  # those of the instructions for a phone
    PageMaker(
        phone_drafts,
        (
            ("start", "Phone copy"),
            ("cautions", "Before you cut"),
            ("before", "With the printed pack"),
            ("steps", "Instructions"),
            ("licence", "What you may do"),
        ),
    ),
)
SHOP: tuple[PageMaker, ...] = (PageMaker(shop_drafts, ((SHOP_KIND, "Pictures for a shop"),)),)
GIVEN_BESIDE: dict[FileKind, tuple[PageMaker, ...]] = {"test_page": TEST_PAGE, "phone": PHONE_COPY, "shop": SHOP}
"""Who makes the pages of what is given beside a pack."""

TITLES: dict[FileKind, str] = {
    "pack": "",
    "test_page": "free test page",
    "phone": "phone copy",
    "shop": "shop pictures",
}
"""What the title of a file says that is not the pack."""

PROMISED: dict[FileKind, Callable[[Promises], Promises]] = {
    "pack": printed_alone,
    "test_page": shown_alone,
    "phone": told_alone,
    "shop": pictured_alone,
}
"""What a file promises of all that was worked out."""

ON_SCREEN: tuple[FileKind, ...] = ("phone", "shop")
"""What is looked at, and never printed."""


def makers_of(purpose: FileKind) -> tuple[PageMaker, ...]:
    """Return who makes the pages of a file, in their order."""
    return PAGES if purpose == "pack" else GIVEN_BESIDE[purpose]


def drafts_of(context: Context) -> tuple[PageDraft, ...]:
    """Ask every maker for its pages and put them in order; inside a kind the makers' own order stays."""
    found: list[PageDraft] = []
    for maker in makers_of(context.purpose):
        rank = {kind: place for place, (kind, _) in enumerate(maker.kinds)}
        found += sorted(maker.drafts(context), key=lambda draft: rank[draft.kind])
    return tuple(found)


def is_true(purpose: FileKind, draft: PageDraft) -> bool:
    """Tell whether a page is of use only when it prints true."""
    return any(draft.kind in maker.true_size for maker in makers_of(purpose))
