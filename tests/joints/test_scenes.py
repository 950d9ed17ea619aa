"""The table of art that is the same in every pack is what the pen draws; a run with ``--update-golden`` writes it anew, and fails."""

import json
from collections.abc import Callable
from functools import partial
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from publisher import joints
from publisher.basics import Box
from publisher.joints.scenes import TABLE, scene_names, scene_promise
from publisher.pages.front import how_to
from publisher.pages.instructions import (
    act_sketches,
    apart_sketches,
    bend_sketches,
    coat_sketches,
    face_sketches,
    finish_sketches,
    gauge_sketches,
    layout_sketches,
    pack_sketches,
    part_sketches,
)
from publisher.pages.instructions.act_cells import glue_sign
from publisher.pages.instructions.act_sketches import TALL, WIDE
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.sketch_places import turned_round
from publisher.pages.model import Drawn, Fill, Stroke, Words
from publisher.pages.sheet import ink_box
from publisher.pages.type import HATCH, TICK, Faces, Setter, face

FINE = (HATCH, TICK)


def clock(pen: SketchPen) -> None:
    """Draw a clock without how long to wait."""
    pen.clock(0.0, 0.0, "")
    pen.drawn = [thing for thing in pen.drawn if not isinstance(thing, Words)]


def how(make: Callable[[Setter, Box], tuple[Drawn, ...]], tall: float) -> Callable[[SketchPen], None]:
    """Return what draws the sketch of a section of cautions."""

    def draw(pen: SketchPen) -> None:
        pen.drawn += make(pen.setter, Box(0.0, 0.0, how_to.SKETCH, tall))

    return draw


WHOLE: dict[str, Callable[[SketchPen], None]] = {
    name: getattr(act_sketches, name)
    for name in (
        *("corners", "knife_off_the_card", "peeling", "pinning", "pushing", "sanding", "strokes", "tracing", "turning"),
        *("weighing", "slitting"),
    )
} | {
    "covering": partial(act_sketches.slitting, covered=True, slit=False),
    "covering_and_slitting": partial(act_sketches.slitting, covered=True),
    "how_bevel": how(how_to.bevelled_edge, how_to.BEVEL_TALL),
    "how_template": how(how_to.corner_of_card, how_to.TEMPLATE_TALL),
    "with_glue": partial(glue_sign, glued=True),
    "without_glue": partial(glue_sign, glued=False),
}
"""Scenes that are a sketch by themselves."""

FIELD = (FIELD_WIDE, FIELD_TALL)
LONG = 9.0  # mm of a pencil and of a stick that all of them show
PARTS_OF_ONE: dict[str, Callable[[SketchPen], None]] = {
    "bottle": lambda pen: pen.bottle(0.0, 0.0),
    "brush": lambda pen: pen.brush((0.0, 0.0), 0.0),
    "can": lambda pen: pen.can(0.0, 0.0),
    "cards_glued": pack_sketches.cards_glued,
    "clock": clock,
    "coming_down_paper": lambda pen: bend_sketches.coming_down(pen, "paper"),
    "coming_down_tape": lambda pen: bend_sketches.coming_down(pen, "tape"),
    "coupon_slot": partial(layout_sketches.coupon_tried, coupon="slot"),
    "coupon_step": partial(layout_sketches.coupon_tried, coupon="step"),
    "cut_through": face_sketches.cut_through,
    "edge_grooved": face_sketches.edge_grooved,
    "gauge_tried": lambda pen: [gauge_sketches.gauge_tried(pen)].clear(),
    "layout_shown": layout_sketches.layout_shown,
    "knife": lambda pen: pen.knife((0.0, 0.0)),
    "painted_dark": coat_sketches.painted_dark,
    "painted_raised": coat_sketches.painted_raised,
    "pencil": lambda pen: pen.pencil((0.0, 0.0), 0.0, LONG),
    "pin_out": lambda pen: pen.pin((0.0, 0.0), 0.0, finish_sketches.PIN_OUT),
    "pot": lambda pen: pen.pot(0.0, 0.0),
    "pressed_down": lambda pen: pen.arrow((0.0, 16.0), (0.0, 9.0)),
    "taped_corner": lambda pen: pen.tape(*finish_sketches.TAPE_AT_CORNER),
    **{f"pressed_{what}": partial(face_sketches.pressed, what=what) for what in face_sketches.PRESSED},
    "printed_first": pack_sketches.printed_first,
    "printed_then": pack_sketches.printed_then,
    "pricking": part_sketches.pricking,
    **{
        f"rolled_{cover or 'bare'}_{slits or 'whole'}": partial(bend_sketches.rolled, cover=cover, slits=slits)
        for cover in ("", "inside", "outside")
        for slits in ("", "inside", "outside")
    },
    "scored_grooved": partial(face_sketches.scored_section, grooved=True),
    "scored_plain": partial(face_sketches.scored_section, grooved=False),
    "sealed": coat_sketches.sealed,
    "slit_through": bend_sketches.crossed_through,
    "strip_cut": gauge_sketches.strip_cut,
    "strip_stood": lambda pen: [gauge_sketches.strip_stood(pen)].clear(),
    "stick": lambda pen: pen.stick((0.0, 0.0), 0.0, LONG),
    "turned_over": lambda pen: turned_round(pen, (0.0, 0.0)),
    "taken_apart": apart_sketches.taken_apart,
}
"""Scenes that are shown among other things."""


def test_the_table_is_what_is_drawn(request: pytest.FixtureRequest) -> None:
    setter = Setter(Faces(face("regular"), face("bold")))
    drawn = {name: row_of(setter, make, (WIDE, TALL)) for name, make in WHOLE.items()}
    drawn |= {name: row_of(setter, make, FIELD, True) for name, make in PARTS_OF_ONE.items()}
    text = json.dumps(drawn, indent=None, sort_keys=True, ensure_ascii=False).replace("}, ", "},\n ") + "\n"
    table = Path(joints.__file__).parent / TABLE
    if request.config.getoption("--update-golden"):
        table.write_text(text, "utf-8")
        pytest.fail(f"{table.name} was written anew: look at the sketches, then run without --update-golden")
    assert table.read_text("utf-8") == text


def row_of(
    setter: Setter, make: Callable[[SketchPen], None], size: tuple[float, float], among: bool = False
) -> dict[str, Any]:
    """Return a scene as its row of the table: what is seen of its lines, and where the middles of its words stand (mm)."""
    pen = SketchPen(setter, (0.0, 0.0))
    make(pen)
    lines, fine, heads, labels = [], [], [], []
    for thing in pen.seen():
        if isinstance(thing, Stroke):
            kept = fine if thing.style in FINE else lines
            kept += [_points(path.points, path.closed) for path in thing.paths]
        elif isinstance(thing, Fill):
            heads += [_points(path.points, False) for path in thing.paths if len(path.points) == 3]
        elif isinstance(thing, Words) and (box := ink_box(setter.faces, thing)) is not None:
            labels.append([thing.text, _mm((box.left + box.right) / 2), _mm((box.bottom + box.top) / 2)])
    found = {"lines": lines, "fine": [] if among else fine, "heads": heads, "labels": labels}
    return {"among": among, "size": list(size), **{kind: sorted(rows) for kind, rows in found.items()}}


def _points(points: tuple[tuple[float, float], ...], closed: bool) -> list[list[float]]:
    line = [[_mm(x), _mm(y)] for x, y in (*points, *(points[:1] if closed else ()))]
    return [line[0], *(b for a, b in pairwise(line) if a != b)]


def _mm(length: float) -> float:
    return round(length, 2) + 0.0


def test_every_scene_is_promised_under_its_key() -> None:
    assert {*WHOLE, *PARTS_OF_ONE} == set(scene_names())
    promise = scene_promise("trade:strokes", "strokes")
    assert (promise.key, promise.drawing, promise.width) == ("trade:strokes", "scene:strokes", WIDE)
    assert len(promise.lines) > 5 and tuple(text for text, _ in promise.labels) == ("1", "2", "3")
