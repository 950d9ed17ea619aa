"""The strip fits the gauge in one place alone: it is too thick for the gap on one side of it, and loose on the other."""

import shapely

from publisher.basics import Box
from publisher.pages.instructions import gauge_sketches as sketches
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Fill, Stroke, Words
from publisher.pages.sheet import ink_box
from publisher.pages.type import PICTURE_ADDED_CONTOUR, PICTURE_CUE, Setter


def drawn(setter: Setter, ends: str) -> SketchPen:
    pen = SketchPen(setter, (0.0, 0.0))
    sketches.gauging(pen, 2, ends)
    return pen


def test_one_strip_fits_and_the_others_are_crossed_out(setter: Setter) -> None:
    pen = drawn(setter, "4.7 to 5.3 mm")
    strokes = [thing for thing in pen.drawn if isinstance(thing, Stroke)]
    strips = [one.paths[0].points for one in strokes if one.style == PICTURE_ADDED_CONTOUR and one.paths[0].closed]
    crosses = [one.paths[0].points for one in strokes if one.style == PICTURE_CUE and len(one.paths[0].points) == 2]
    crosses = [line for line in crosses if line[0][0] != line[1][0] and line[0][1] != line[1][1]]
    assert len(strips) == 3
    states = {}
    for ring in strips:
        wrong = sum(shapely.LineString(line).crosses(shapely.Polygon(ring)) for line in crosses)
        gaps = [sketches._gap(x) - sketches.STRIP_THICK for x, _ in ring]
        states["thick" if max(gaps) < 0 else "loose" if min(gaps) > 1.0 else "fits"] = wrong
    assert states == {"thick": 2, "loose": 2, "fits": 0}


def test_what_will_do_is_said_whole_where_it_has_room_and_the_sketch_keeps_to_its_field(setter: Setter) -> None:
    for ends, said in (("4.7 to 5.3 mm (0.186 to 0.208 in)",) * 2, ("4.7 mm (9/16 in) " * 9, None)):
        pen = drawn(setter, ends)
        texts = [thing.text for thing in pen.drawn if isinstance(thing, Words)]
        assert {"?", "2"} <= {*texts} and (said is None or said in texts)
        boxes: list[Box] = [box for thing in pen.drawn if (box := ink_box(setter.faces, thing))]
        assert max(box.beyond(Box(0.0, 0.0, FIELD_WIDE, FIELD_TALL).grown(1.5)) for box in boxes) <= 0.0


def test_the_strip_is_asked_its_thickness_where_it_lies_and_between_the_lines(setter: Setter) -> None:
    """The same sign at both: what was the board's thickness is what lies across the gap."""
    pen = drawn(setter, "4.7 to 5.3 mm")
    asked = [thing for thing in pen.drawn if isinstance(thing, Words) and thing.text == "?"]
    assert len(asked) == 2
    heads = [one.paths[0].points for one in pen.drawn if isinstance(one, Fill) and one.grey == 0.0]
    for low, thick in ((35.0, 2.6), (sketches.GAUGE_LOW, sketches.STRIP_THICK)):
        assert {round(ring[0][1], 6) for ring in heads} >= {round(low, 6), round(low + thick, 6)}
