"""No word of a sketch is covered or crossed, none stands on another, whatever the parts; tools keep off them."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
import shapely

from publisher.basics import Box
from publisher.brief import read_brief
from publisher.design import work_out
from publisher.geometry import Part, make_parts
from publisher.joints import wanted_parts
from publisher.pages.instructions.alike_sketches import alike_pairs, telling_apart
from publisher.pages.instructions.face_sketches import cut_through, pressed
from publisher.pages.instructions.pack_acts import pack_acts
from publisher.pages.instructions.part_sketches import FIELD, FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.sketch_places import put_bracket, put_flag, room_for, stand_tool
from publisher.pages.instructions.step_acts import OF_PARTS, acts_after, acts_before
from publisher.pages.model import Fill, Stroke, Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context
from publisher.pages.type import Setter
from tests.random_designs.make import true_design
from tests.random_designs.tool import written

DEMOS = ("toll-house", "bridge", "lock-stair", "island", "quay")
SCALES = (1.0, 0.8)
EDGE = 0.15  # mm of a word's box that may be touched


def faults(setter: Setter, draw: Callable[[SketchPen], None], scale: float) -> list[str]:
    """Say which words of a sketch are covered, crossed, out of the field or on other words."""
    pen = SketchPen(setter, (0.0, 0.0), scale)
    draw(pen)
    field = Box(0.0, 0.0, FIELD_WIDE * scale, FIELD_TALL * scale).grown(0.5)
    boxes: dict[int, shapely.Polygon] = {}
    found: list[str] = []
    for at, thing in enumerate(pen.drawn):
        if not isinstance(thing, Words):
            continue
        weight = "bold" if "Bold" in thing.font else "regular"
        wide = setter.faces.weight(weight).width(thing.text) * thing.size
        high = setter.faces.weight(weight).cap_height * thing.size
        box = shapely.box(thing.x + EDGE, thing.y + EDGE, thing.x + wide - EDGE, thing.y + high - EDGE)
        later = (one for one in pen.drawn[at + 1 :] if isinstance(one, Fill))
        if any(shapely.Polygon(one.paths[0].points).intersection(box).area > 0.02 for one in later):
            found.append(f"“{thing.text}” is covered")
        paths = (path for one in pen.seen() if isinstance(one, Stroke) for path in one.paths)
        rings = (shapely.LineString([*p.points, p.points[0]] if p.closed else p.points) for p in paths)
        if any(ring.intersection(box).length > 0.1 for ring in rings):
            found.append(f"“{thing.text}” is crossed")
        if any(other.intersection(box).area > 0.02 for other in boxes.values()):
            found.append(f"“{thing.text}” stands on other words")
        if not shapely.box(*field.sides).contains(box):
            found.append(f"“{thing.text}” is out of the field")
        boxes[at] = box
    return found


def of_parts(parts: tuple[Part, ...]) -> Iterator[tuple[str, Callable[[SketchPen], None]]]:
    """Yield every act that can be done to some of the parts, with its sketch."""
    for act, (sketch, _) in OF_PARTS.items():
        own = wanted_parts(act, tuple((part, 3) for part in parts))
        if own and (act not in ("slit", "roll") or any(part.bending for part, _ in own)):
            yield act, lambda pen, sketch=sketch, own=own: sketch(pen, own)
    for pair in alike_pairs(parts):
        yield "alike", lambda pen, pair=pair: telling_apart(pen, pair)


@pytest.mark.parametrize("slug", DEMOS)
def test_no_word_of_a_demo_is_covered_or_crossed(slug: str, demo: Callable[..., Context]) -> None:
    context = demo(slug)
    steps = enumerate(context.design.steps, 1)
    own = [one for n, step in steps for one in (*acts_before(context, step), *acts_after(context, step, n))]
    sketches = [act.sketch.draw for act in pack_acts(context, None) if act.sketch] + [one.draw for one in own]
    drawn = [*sketches, *(draw for _, draw in of_parts(context.parts))]
    assert len(drawn) > 8
    assert not [fault for draw in drawn for scale in SCALES for fault in faults(context.type, draw, scale)]


@pytest.mark.parametrize("seed", range(10))
def test_no_word_of_a_random_design_is_covered_or_crossed(
    seed: int, tmp_path: Path, make_context: Callable[..., Context]
) -> None:
    spec = true_design(seed)
    parts, _ = make_parts(work_out(read_brief(written(tmp_path, spec.spec, spec.files))))
    setter = make_context().type
    acts = list(of_parts(parts))
    assert {"trace", "press", "cut_outlines"} <= {act for act, _ in acts}
    assert not [(act, fault) for act, draw in acts for scale in SCALES for fault in faults(setter, draw, scale)]


def test_faults_are_found(setter: Setter) -> None:
    def spoilt(pen: SketchPen) -> None:
        pen.count("2 × A", 20.0, 10.0)
        pen.pencil((20.0, 8.0))
        pen.count("2 × B", 50.0, 10.0)
        pen.line((40.0, 11.0), (60.0, 11.0))
        pen.count("2 × C", 51.0, 10.0)
        pen.words("far out", 71.0, 30.0)

    found = faults(setter, spoilt, 1.0)
    for word in ("“2 × A” is covered", "“2 × C” stands on other words", "“far out” is out of the field"):
        assert word in found

    def crossed(pen: SketchPen) -> None:
        pen.count("2 × B", 50.0, 10.0)
        pen.line((40.0, 11.0), (60.0, 11.0))

    assert faults(setter, crossed, 1.0) == ["“2 × B” is crossed"]


def test_a_tool_leans_off_words_and_stays_in_its_field(setter: Setter) -> None:
    pen = SketchPen(setter, (0.0, 0.0))
    pen.count("THIS SIDE UP", 44.0, 32.0)
    stood: list[tuple[tuple[float, float], float]] = []
    stand_tool(pen, lambda tip, lean: stood.append((tip, lean)), [(36.0, 20.0)], FIELD)
    ((tip, lean),) = stood
    assert tip == (36.0, 20.0) and lean > 0.0  # to the left, as the words are at the right


def test_a_flag_ends_on_its_part_beside_openings(setter: Setter) -> None:
    pen = SketchPen(setter, (0.0, 0.0))
    part = shapely.box(10.0, 5.0, 60.0, 35.0) - shapely.box(14.0, 8.0, 56.0, 30.0)
    pen.count("2 × A", 35.0, 31.5)
    put_flag(pen, "THIS SIDE UP", FIELD, [part])
    leader = next(thing for thing in pen.drawn if isinstance(thing, Stroke)).paths[0].points
    assert part.contains(shapely.Point(leader[-1]))
    assert not faults(setter, lambda other: other.drawn.extend(pen.drawn), 1.0)


def test_a_flag_lies_on_no_arrow_though_its_line_is_longer_beside_it(setter: Setter) -> None:
    pen = SketchPen(setter, (0.0, 0.0))
    pressed(pen, "bare")
    arrow = pen.taken[-2]
    cut_through(pen)
    pen.rule(2.0, 16.0, 68.0, 3.0)
    put_flag(pen, "THIS OUTSIDE FACE UP", FIELD, [shapely.box(60.0, 2.0, 70.0, 12.0)])
    frame = [thing.paths[0] for thing in pen.drawn if isinstance(thing, Fill)][-1]
    assert arrow.area > 8.0 and shapely.Polygon(frame.points).intersection(arrow).area == 0.0


def test_room_is_where_no_tool_is(setter: Setter) -> None:
    pen = SketchPen(setter, (0.0, 0.0))
    board = shapely.box(0.0, 0.0, 40.0, 10.0)
    pen.rule(0.0, 0.0, 28.0, 10.0)
    (x, y), radius = room_for(pen, board)
    assert 30.0 < x < 38.0 and 3.0 < y < 7.0 and 4.0 < radius <= 5.1
    assert room_for(pen, shapely.box(1.0, 1.0, 5.0, 5.0)) == ((0.0, 0.0), 0.0)


def test_words_that_hold_for_several_parts_stand_over_a_bracket_round_all_of_them(setter: Setter) -> None:
    """Over one row it is short, beside two its legs run down past all parts; no part is named alone."""
    for boxes, low in (([(5, 5, 20, 20), (30, 5, 60, 15)], 20.0), ([(5, 25, 20, 38), (30, 5, 60, 15)], 5.0)):
        pen = SketchPen(setter, (0.0, 0.0))
        parts = [shapely.box(*box) for box in boxes]
        put_flag(pen, "THIS SIDE UP", FIELD, parts, 1.0)
        first = next(thing for thing in pen.drawn if isinstance(thing, Stroke)).paths[0].points
        left, bottom, right, _ = shapely.LineString(first).bounds
        assert left < 4.0 and right > 61.0 and bottom <= low + 1.8
        assert not any(shapely.LineString(first).intersects(part) for part in parts)
        assert not faults(setter, lambda other, pen=pen: other.drawn.extend(pen.drawn), 1.0)


def test_words_that_are_wider_than_their_bracket_stand_over_its_middle(setter: Setter) -> None:
    pen = SketchPen(setter, (0.0, 0.0))
    put_bracket(pen, "THIS SIDE UP", Box(0.0, 0.0, 72.0, 52.0), (30.0, 40.0), 20.0)
    (words,) = (thing for thing in pen.drawn if isinstance(thing, Words))
    box = ink_box(setter.faces, words)
    assert box is not None and box.width > 10.0 and abs((box.left + box.right) / 2 - 35.0) < 0.5
