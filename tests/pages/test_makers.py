"""Who makes which pages: each kind once, in the order of the file."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import FileKind
from publisher.pages.makers import GIVEN_BESIDE, PAGES, drafts_of, is_true, makers_of
from publisher.pages.sheet.draft import Context


@pytest.mark.parametrize("purpose", ["pack", *GIVEN_BESIDE])
def test_a_kind_of_page_has_one_maker_and_one_name(purpose: FileKind) -> None:
    kinds = [kind for maker in makers_of(purpose) for kind, _ in maker.kinds]
    assert kinds and len(set(kinds)) == len(kinds)
    assert all(set(maker.true_size) <= {kind for kind, _ in maker.kinds} for maker in makers_of(purpose))


def test_drafts_stand_in_the_order_of_the_kinds(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    drafts = drafts_of(context)
    rank = [kind for maker in PAGES for kind, _ in maker.kinds]
    places = [rank.index(draft.kind) for draft in drafts]
    assert places == sorted(places) and {"cover", "print_check", "tiles", "steps"} <= {draft.kind for draft in drafts}
    true = {draft.kind for draft in drafts if is_true("pack", draft)}
    assert true == {"print_check", "tiles"}


def test_what_is_given_beside_a_pack_has_pages_of_its_own(demo: Callable[..., Context]) -> None:
    kinds = {draft.kind for draft in drafts_of(replace(demo("quay"), purpose="test_page"))}
    assert "print_check" in kinds and not kinds & {"cover", "steps", "cut_list"}
