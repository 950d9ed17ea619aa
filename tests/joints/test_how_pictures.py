"""Sketches of how a template is used and a bevel is cut are those of the table, words and lines, in each pack that needs them."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.joints import HOW_BEVEL, HOW_TEMPLATE
from publisher.joints.how_pictures import how_pictures
from publisher.pages.front import how_to
from tests.proof.refused import refused_by, worked_out


@pytest.mark.parametrize(
    ("slug", "keys"),
    [("toll-house", [HOW_TEMPLATE, HOW_BEVEL]), ("quay", [HOW_TEMPLATE]), ("lock-stair", [HOW_TEMPLATE])],
)
def test_a_design_calls_for_those_of_its_pieces(slug: str, keys: list[str]) -> None:
    worked = worked_out(slug)
    assert worked.design is not None
    assert [promise.key for promise in how_pictures(worked.design, worked.pieces)] == keys


def test_pieces_that_are_measured_out_call_for_none(make: SimpleNamespace) -> None:
    wall = replace(make.wall("wall", 120, 50), printed="sizes")
    assert how_pictures(make.design(), (wall,)) == ()


def test_another_number_in_the_sketch_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    real = how_to._pointed
    monkeypatch.setattr(how_to, "_pointed", lambda setter, text, *ends: real(setter, text.replace("2 p", "1 p"), *ends))
    assert "proof/step-picture" in refused_by("quay")


def test_a_pencil_line_elsewhere_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(how_to, "SKETCH_AWAY", -2.4)
    assert "proof/step-picture" in refused_by("quay")


def test_a_sketch_that_is_left_out_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(how_to, "bevelled_edge", lambda *_: ())
    assert "proof/step-picture" in refused_by("toll-house")
