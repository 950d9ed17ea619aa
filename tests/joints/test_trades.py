"""How it is done: which acts follow from a design, and what their sketches show, is promised; what else a page shows is refused."""

from collections.abc import Callable
from math import radians, tan

import pytest

from publisher.basics import Point
from publisher.joints.trades import TRADE, trade_pictures, trades_of
from publisher.pages.instructions import act_sketches, trade_acts
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.sheet.draft import Context
from tests.proof.refused import refused_by

Knife = Callable[..., None]
RIGHT: Knife = SketchPen.knife


def test_each_act_that_a_pack_asks_for_is_promised_with_its_art(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    names = trades_of(context.design, context.parts, context.joined)
    assert (
        names[:3] == ("tracing", "knife_off_the_card", "strokes") and "bevelling" in names and "weighing" not in names
    )
    pictures = {one.key: one for one in context.joined.pictures if one.key.startswith(TRADE)}
    assert tuple(pictures) == tuple(f"{TRADE}{name}" for name in names)
    assert all(picture.lines for picture in pictures.values())
    assert "weighing" in trades_of(*(getattr(demo("lock-stair"), name) for name in ("design", "parts", "joined")))


def test_a_bevel_is_promised_at_its_own_angle(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    (bevel,) = (one for one in trade_pictures(context.design, context.parts, context.joined) if "bevel" in one.key)
    steepest = max(abs(edge.bevel) for part in context.parts for edge in part.edges)
    (ax, ay), (bx, by) = bevel.lines[2]
    assert (ax - bx) / (ay - by) == pytest.approx(tan(radians(steepest)))


def dropped(_pen: SketchPen, _tip: Point, *_: float, **__: bool) -> None:
    """Draw no knife."""


def mirrored(pen: SketchPen, tip: Point, lean: float = 0.0, *out: float, flip: bool = False) -> None:
    """Draw a knife that leans to the other side."""
    RIGHT(pen, tip, -lean, *out, flip=not flip)


def displaced(pen: SketchPen, tip: Point, *more: float, **flip: bool) -> None:
    """Draw a knife 3 mm off."""
    RIGHT(pen, (tip[0] + 3.0, tip[1]), *more, **flip)


@pytest.mark.parametrize("wrong", [dropped, mirrored, displaced])
def test_a_tool_that_is_dropped_mirrored_or_displaced_is_refused(monkeypatch: pytest.MonkeyPatch, wrong: Knife) -> None:
    right = act_sketches.strokes

    def strokes(pen: SketchPen) -> None:
        monkeypatch.setattr(SketchPen, "knife", wrong)
        right(pen)
        monkeypatch.setattr(SketchPen, "knife", RIGHT)

    act = trade_acts.PLAIN["strokes"]
    monkeypatch.setitem(trade_acts.PLAIN, "strokes", type(act)(act.scene, act.title, act.say, strokes, act.shows))
    assert "proof/step-picture" in refused_by("lock-stair")


def test_an_arrow_that_points_the_other_way_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    right = SketchPen.arrow
    monkeypatch.setattr(SketchPen, "arrow", lambda pen, *points: right(pen, *reversed(points)))
    assert "proof/step-picture" in refused_by("toll-house")
