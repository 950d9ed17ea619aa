"""Words that hints propose are tried with the whole design before they are given."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from publisher.basics import Cure, Finding, Place, Severity
from publisher.brief import read_brief
from publisher.joints import Tried, try_cures
from publisher.pipeline import work
from tests.whole.test_split import folder

NO_WORDS: Mapping[str, str] = {}
HERE = Place("spec.yaml", 3, 1)
PLAY = Cure((HERE,), "play", "0.30 mm")
NARROW = Finding("joints/slot-too-narrow", Severity.ERROR, "wall", "the slot is narrow", "more play", HERE, cure=PLAY)
WIDE = Finding("joints/slot-too-wide", Severity.ERROR, "wall", "the slot is wide", "less play", HERE)


def said(now: Tried, there: Tried | None, most: int | None = None) -> str:
    return try_cures(now, lambda _: there, most)[0].hint


def test_a_cure_that_does_and_spoils_nothing_is_given_as_it_is() -> None:
    assert said(Tried((NARROW,)), Tried()) == "more play"
    assert said(Tried((NARROW, WIDE)), Tried((WIDE,))) == "more play"


def test_a_cure_that_does_not_do_says_what_is_still_wrong() -> None:
    assert (
        said(Tried((NARROW,)), Tried((NARROW,))) == "more play; tried, and that alone does not do: the slot is narrow"
    )


def test_what_gets_worse_is_said() -> None:
    assert said(Tried((NARROW,)), Tried((WIDE,))) == "more play; but so something else is wrong: the slot is wide"
    now, there = Tried((NARROW,), (("20 x 30 in", 3),)), Tried((), (("20 x 30 in", 4), ("A3", 2)))
    assert said(now, there) == "more play; but so it takes 4 sheets of 20 x 30 in in place of 3"


def test_few_are_tried_each_once_and_what_cannot_be_written_is_given_as_it_is() -> None:
    tried: list[Cure] = []

    def attempt(cure: Cure) -> Tried:
        tried.append(cure)
        return Tried()

    other = replace(NARROW, cure=replace(PLAY, words="0.40 mm"))
    hints = [f.hint for f in try_cures(Tried((NARROW, NARROW, other, WIDE)), attempt, 1)]
    assert tried == [PLAY]
    assert hints == [
        "more play",
        "more play",
        "more play (not tried with the whole design: check with --advise)",
        "less play",
    ]
    assert said(Tried((NARROW,)), None) == "more play"


SLOTS = "play: slot_play, loosest: 0.6 mm}"


@pytest.fixture
def quay(tmp_path: Path) -> Callable[..., tuple[Finding, ...]]:
    """Make a quay whose sides are longer than the board on sale, with other words; return what is found."""

    def make(words: Mapping[str, str] = NO_WORDS, side: str = "", deck: str = "") -> tuple[Finding, ...]:
        spec = folder(tmp_path / "quay", side, deck) / "spec.yaml"
        for old, new in words.items():
            spec.write_text(spec.read_text("utf-8").replace(old, new), "utf-8")
        return work(read_brief(tmp_path / "quay")).findings

    return make


def test_a_split_is_tried(quay: Callable[..., tuple[Finding, ...]]) -> None:
    """Side and deck each have a seam that does, beside what is wrong with the other."""
    large = [f for f in quay() if f.check == "material/part-larger-than-sheets"]
    assert [f.subject for f in large] == ["side", "deck"]
    for finding in large:
        assert finding.cure is not None and finding.cure.key == "split"
        assert finding.hint.endswith("on the part")


@pytest.mark.parametrize(
    ("loosest", "worse"), [("0.6 mm", ""), ("0.1 mm", "loosest is 0.10 mm, less than the play of 0.25 mm")]
)
def test_a_play_that_is_proposed_is_tried_in_all_joins_alike_and_what_it_spoils_is_said(
    quay: Callable[..., tuple[Finding, ...]], loosest: str, worse: str
) -> None:
    split = {"side": "split: {at: 440 mm, from: left, plate: 40 mm},", "deck": "split: {at: 450 mm, plate: 60 mm},"}
    words = {
        "play: slot_play, loosest: 0.6 mm": f"play: 0 mm, loosest: {loosest}",
        "thickness: board,": "thickness: board, thickness_spread: 0.2 mm,",
    }
    found = [f for f in quay(words, **split) if f.cure]
    assert found
    for finding in found:
        assert finding.cure is not None
        assert (finding.cure.words, len(finding.cure.places)) == ("0.25 mm", 4)
        assert "in all 4 joins of this part" in finding.hint
        assert ("something else is wrong" in finding.hint) == bool(worse) and worse in finding.hint
