"""What the sketches of steps show beside their parts is promised by what the acts are, and a page that shows it otherwise is refused."""

from collections.abc import Callable

import pytest

from publisher.basics import Point
from publisher.joints.act_scenes import GAUGED, act_scenes
from publisher.pages.instructions import (
    apart_sketches,
    coat_sketches,
    face_sketches,
    gauge_sketches,
    part_sketches,
    step_acts,
)
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Stroke
from publisher.pages.sheet.draft import Context
from publisher.pages.type import PICTURE_CUE
from tests.proof.refused import refused_by

RIGHT: dict[str, Callable[..., None]] = {
    name: getattr(SketchPen, name) for name in ("knife", "pencil", "clock", "brush")
}


def scenes(context: Context) -> dict[str, set[str]]:
    """Return the scenes of each act of a design."""
    found: dict[str, set[str]] = {}
    for one in act_scenes(context.design, context.parts, context.joined):
        if one.key.startswith("act:"):  # the pack's own
            continue
        _, _, _, act, _, name = one.key.split(":")
        assert one.among and (one.lines or one.heads), one.key
        found.setdefault(act, set()).add(name)
    return found


def test_scenes_follow_from_the_acts(demo: Callable[..., Context]) -> None:
    stair, house, bridge = (scenes(demo(slug)) for slug in ("lock-stair", "toll-house", "bridge"))
    assert house["trace"] == {"pencil", "pricking"} and house["bevel"] == {"bevelling"}
    assert {"edge_grooved", "pressed_grooved", "cut_through", "stick"} <= stair["press"]
    assert any(name.startswith("rolled_") for name in bridge["roll"])
    assert "clock" in stair["wait"] and {"brush", "pot", "painted_dark", "painted_raised"} <= house["paint"]
    assert house["apart"] == bridge["apart"] == {"taken_apart"} and "sealed" in house["seal"]


def test_the_gauge_is_promised_where_a_board_is_measured_in_it(demo: Callable[..., Context]) -> None:
    """Of a stack a pile of scraps is pressed instead."""
    for slug, wanted in (("toll-house", 3), ("lock-stair", 0)):
        context = demo(slug)
        keys = [one.key for one in act_scenes(context.design, context.parts, context.joined)]
        assert sum(key.startswith(GAUGED) for key in keys) == wanted


def test_a_gauge_in_which_all_fits_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(gauge_sketches, "TRIED", (30.0, 40.0))
    assert "proof/step-picture" in refused_by("toll-house")


def test_a_coat_on_one_face_alone_and_parts_that_stay_together_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    sealed = coat_sketches.sealed

    def one_face(pen: SketchPen) -> None:
        sealed(pen)
        pen.drawn = [thing for thing in pen.drawn if not (isinstance(thing, Stroke) and thing.style == PICTURE_CUE)]

    monkeypatch.setattr(coat_sketches, "sealed", one_face)
    assert "proof/step-picture" in refused_by("toll-house")
    monkeypatch.undo()
    monkeypatch.setattr(apart_sketches, "part_cells", lambda *_: ())
    assert "proof/done" in refused_by("toll-house")


def test_a_clock_is_promised_with_how_long_to_wait(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    waits = [step.wait for step in context.design.steps if step.wait]
    clocks = [one for one in context.joined.pictures if one.key.endswith(":wait:scene:clock")]
    assert [one.labels[0][0] for one in clocks] == waits


def test_a_tool_that_is_drawn_elsewhere_than_it_is_said_to_stand_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    def knife(pen: SketchPen, tip: Point, lean: float = 0.0, *out: float, flip: bool = False) -> None:
        pen.scene("knife", tip, lean, mirrored=flip)
        at = len(pen.parts)
        RIGHT["knife"](pen, (tip[0] + 4.0, tip[1]), lean, *out, flip=flip)
        del pen.parts[at:]

    monkeypatch.setattr(SketchPen, "knife", knife)
    assert "proof/step-picture" in refused_by("toll-house")


def test_a_tool_that_stands_beside_its_work_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    def pencil(pen: SketchPen, tip: Point, *more: float) -> None:
        RIGHT["pencil"](pen, (tip[0], tip[1] + 6.0), *more)

    monkeypatch.setattr(SketchPen, "pencil", pencil)
    assert "proof/tool" in refused_by("toll-house")


def test_pins_that_are_left_in_their_card_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is promised is the line that is drawn once card and pins are gone."""
    monkeypatch.setattr(part_sketches, "pricking", lambda pen: pen.pin((20.0, 20.0), 14.0, 6.5))
    assert "proof/step-picture" in refused_by("toll-house")


@pytest.mark.parametrize("name", ["clock", "brush"])
def test_what_is_left_out_is_refused(monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    monkeypatch.setattr(SketchPen, name, lambda *_, **__: None)
    assert "proof/step-picture" in refused_by("lock-stair" if name == "clock" else "toll-house")


def test_a_section_that_is_mirrored_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    left, right, dents, at = face_sketches.PRESSED["grooved"]
    monkeypatch.setitem(face_sketches.PRESSED, "grooved", (left, right, dents, left + right - at + 6.0))
    assert "proof/step-picture" in refused_by("lock-stair")


def test_a_piece_that_is_turned_over_is_refused_without_the_sign_of_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(step_acts, "put_turn_over", lambda *_: None)
    assert "proof/step-picture" in refused_by("bridge")
