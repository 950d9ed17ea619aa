"""The boxes of letters stand where the letters leave ink, however their run is turned, and those that cannot be seen are left out."""

from dataclasses import replace

import pytest
import shapely

from publisher.basics import Box
from publisher.proof.measuring.letters import letters_of
from publisher.proof.reading.model import Clip, PageRead, TextRun

SHEET = Box(0.0, 0.0, 210.0, 297.0)
RUN = TextRun(
    1, "ab", 20.0, 30.0, 24.0, 30.0, 4.0, 2.0, "Body", 0.0, False, Clip(SHEET), True,
    frame=(4.0, 0.0, 0.0, 4.0, 20.0, 30.0), letters=((0.0, (0.1, 0.0, 0.4, 0.5)), (0.5, (0.1, -0.2, 0.4, 0.7))),
)  # fmt: skip


def page(*runs: TextRun) -> PageRead:
    return PageRead(1, 210.0, 297.0, SHEET, SHEET, 0, 1.0, (), runs, (), (), 0, (), ())


def test_each_letter_stands_at_its_place_along_the_baseline() -> None:
    found = letters_of(page(RUN), ("",))
    assert [area.bounds for area in found.areas] == [
        pytest.approx((20.4, 30.0, 21.6, 32.0)),
        pytest.approx((22.4, 29.2, 23.6, 32.8)),
    ]
    assert found.owner.tolist() == [0, 0]
    assert found.tree.query(shapely.Point(23.0, 30.0)).tolist() == [1]


def test_a_run_that_reads_upwards_has_its_letters_above_each_other() -> None:
    found = letters_of(page(replace(RUN, frame=(0.0, 4.0, -4.0, 0.0, 20.0, 30.0))), ("",))
    assert [area.bounds for area in found.areas] == [
        pytest.approx((18.0, 30.4, 20.0, 31.6)),
        pytest.approx((17.2, 32.4, 20.8, 33.6)),
    ]


def test_words_that_cannot_be_seen_and_a_page_without_words_have_no_letters() -> None:
    found = letters_of(page(RUN, RUN, replace(RUN, visible=False)), ("is covered", "", ""))
    assert (len(found.runs), found.owner.tolist()) == (1, [0, 0])
    assert not len(letters_of(page(), ()).areas)
