"""Sizes of papers as proof knows them: every paper that pages are made for, each of another source than the pages' table."""

import pytest

from publisher.basics import PaperPromise
from publisher.pages import Paper, papers
from publisher.proof.checks.papers import size_of


@pytest.mark.parametrize("paper", papers(), ids=lambda paper: paper.name)
def test_every_paper_of_the_table_is_known_by_its_name(paper: Paper) -> None:
    known = size_of(PaperPromise(paper.name))
    assert known is not None
    assert (known.width, known.height) == pytest.approx((paper.width, paper.height))
    assert all(word in paper.title.lower() for word in known.called)


def test_a_sheet_of_the_designers_own_is_turned_upright_with_its_margins() -> None:
    sheet = size_of(PaperPromise("roll", 610.0, 300.0, (5.0, 6.0, 7.0, 8.0)))
    assert sheet is not None
    assert (sheet.width, sheet.height, sheet.long_edge, sheet.short_edge) == (300.0, 610.0, 8.0, 7.0)


def test_a_name_that_nobody_knows_has_no_size() -> None:
    assert size_of(PaperPromise("b9")) is None
