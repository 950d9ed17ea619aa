"""Sketches of acts whose words and lines stand elsewhere than at what they are of are refused."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
import shapely

from publisher.basics import Box
from publisher.pages.instructions import (
    coat_sketches,
    finish_sketches,
    pack_sketches,
    part_art,
    part_sketches,
    sketch_places,
    step_acts,
)
from publisher.pages.instructions.sketch_pen import SketchPen
from tests.proof.refused import refused_by

COUNT: Callable[..., None] = SketchPen.count
LINE: Callable[..., None] = SketchPen.line
CHECK = "proof/sketch-place"


def test_a_count_under_the_next_part_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    counted = part_art.PartArt.counted

    def elsewhere(art: part_art.PartArt, pen: SketchPen) -> None:
        pen.shows(art.part.id, art.at, art.scale)
        by = 28.0 if art.cell.left < 30.0 else -28.0
        counted(replace(art, cell=Box(art.cell.left + by, *art.cell.sides[1:])), pen)

    monkeypatch.setattr(part_art.PartArt, "counted", elsewhere)
    assert CHECK in refused_by("quay")


def test_a_bracket_that_leaves_a_part_out_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    real = sketch_places._put_group
    monkeypatch.setattr(
        sketch_places, "_put_group", lambda pen, text, field, parts, around: real(pen, text, field, parts[1:], around)
    )
    assert CHECK in refused_by("quay")


def test_a_line_to_no_part_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    real = sketch_places._put_leader
    monkeypatch.setattr(
        sketch_places,
        "_put_leader",
        lambda pen, text, field, part: real(pen, text, field, shapely.box(1.0, 44.0, 4.0, 46.0)),
    )
    assert CHECK in refused_by("quay")


def test_a_template_that_no_pencil_went_round_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(part_sketches, "PENCIL_LINES", ())
    assert CHECK in refused_by("quay")


def test_faces_that_are_not_dark_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(coat_sketches, "_faces", lambda *_: shapely.Polygon())
    assert CHECK in refused_by("quay")


@pytest.mark.parametrize("over", [True, False])
def test_pages_of_another_template_are_refused(over: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of those that are taped: above them their pages, under them how many they make."""

    def count(pen: SketchPen, text: str, x: float, y: float, *rest: Any, **white: float) -> None:
        moved = text.startswith("B: page") if over else text == "1 × B" and y < 2.0
        COUNT(pen, text, x + moved * (5.0 if over else -14.0), y, *rest, **white)

    monkeypatch.setattr(pack_sketches.SketchPen, "count", count)
    assert {CHECK, "proof/sketch-words"} & refused_by("quay")


def test_another_drawing_of_what_stands_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(step_acts, "standing", lambda joined, _: joined.drawing("state:5"))
    assert "proof/step-picture" in refused_by("quay")


def test_what_stands_at_another_scale_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    place = finish_sketches.place_drawing
    monkeypatch.setattr(
        finish_sketches,
        "place_drawing",
        lambda setter, drawing, box, **ways: place(setter, drawing, replace(box, top=box.top - 4.0), **ways),
    )
    assert "proof/step-picture" in refused_by("quay")
