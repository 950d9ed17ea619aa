"""Sketches of acts that say less than their acts call for, or name other pages, are refused in each language."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.pages.instructions import (
    coat_sketches,
    finish_sketches,
    layout_sketches,
    pack_sketches,
    part_art,
    part_sketches,
)
from publisher.pages.instructions.sketch_pen import SketchPen
from tests.proof.refused import refused_by

WORDS: dict[str, Callable[..., None]] = {"count": SketchPen.count}


def without(*texts: str) -> Callable[..., None]:
    """Return a pen's way to set a count that leaves out these."""

    def count(pen: SketchPen, text: str, *at: Any, **white: float) -> None:
        if not any(one in text for one in texts):
            WORDS["count"](pen, text, *at, **white)

    return count


@pytest.mark.parametrize(
    ("left_out", "slug"),
    [
        ("+", "quay"),  # what is used together
        ("°", "toll-house"),  # of bevels and of their guides
        ("100 %", "quay"),
        ("page", "quay"),
        ("mm", "quay"),  # the reading, and how thick card is
        (" × ", "quay"),
    ],
)
def test_words_that_are_left_out_are_refused(left_out: str, slug: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(SketchPen, "count", without(left_out))
    assert {"proof/sketch-words", "proof/step-picture"} & refused_by(slug)


@pytest.mark.parametrize("module", [pack_sketches, layout_sketches, part_sketches])
def test_no_sketch_goes_without_the_side_that_is_up(module: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "put_bracket", lambda *_: None)
    assert "proof/sketch-words" in refused_by("quay")


def test_pots_that_are_not_numbered_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    count = WORDS["count"]
    monkeypatch.setattr(
        SketchPen, "count", lambda pen, text, *at, **white: count(pen, "3" if text == "2" else text, *at, **white)
    )
    assert coat_sketches.POT_WIDE and "proof/sketch-words" in refused_by("toll-house")


def test_what_is_glued_and_waits_is_refused_without_its_sign(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(finish_sketches, "FROM_BOTTLES", ())
    assert {"proof/sketch-words", "proof/step-picture"} <= refused_by("quay")


def test_another_letter_on_a_part_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    lettered = part_art.PartArt.lettered

    def other(art: part_art.PartArt, pen: SketchPen) -> None:
        lettered(art, pen)
        said = art.part.letter
        pen.drawn = [
            thing if getattr(thing, "text", "") != said else type(thing)(**{**_fields(thing), "text": "Z"})
            for thing in pen.drawn
        ]

    monkeypatch.setattr(part_art.PartArt, "lettered", other)
    assert "proof/sketch-letter" in refused_by("quay")


def _fields(thing: Any) -> dict[str, Any]:
    return {name: getattr(thing, name) for name in thing.__dataclass_fields__}
