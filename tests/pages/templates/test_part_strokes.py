"""A part drawn at a pose: true arcs, cut lines, waste, marks on their layers."""

from collections.abc import Callable
from dataclasses import replace
from math import dist, hypot

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Arc, Box, Layer, Line, LineKind, Path, Pose, Purpose, circle, polyline
from publisher.design import Rabbet
from publisher.geometry import Edge, Mark, Part, Region
from publisher.pages.model import Fill, Stroke, Words
from publisher.pages.templates.part_strokes import (
    HEAD,
    mark_promises,
    mark_strokes,
    outline_promise,
    outline_strokes,
    quiet_lines,
    waste_strokes,
)
from publisher.pages.type.styles import CUT, line_style
from publisher.pages.type.text import Setter
from tests.searches.profile import cases

poses = st.builds(Pose, st.floats(-300, 300), st.floats(-300, 300), st.floats(0, 359), st.booleans())


def drawn_paths(outer: Path, pose: Pose) -> tuple[Path, ...]:
    """The paths of an outline that is drawn as a template."""
    region = Region(outer)
    part = Part("p", "P", "P", "foam", 5, "", region, region, (), (), (), 1, 0, 0, "any", 0, _place())
    (stroke,) = strokes(outline_strokes(part, pose))
    return stroke.paths


def strokes(drawn: object) -> list[Stroke]:
    return [d for d in drawn if isinstance(d, Stroke)]  # type: ignore[attr-defined]


@pytest.mark.search
@cases(15, 1000)
@given(pose=poses)
def test_arcs_stay_on_their_circle_at_any_pose(pose: Pose) -> None:
    bow = Arc("bow", (15, 20), (10, 25), (10, 20), 5.0, 90.0)
    outer = Path((Line("a", (0, 0), (15, 20)), bow, Line("b", (10, 25), (0, 0))))
    (path,) = drawn_paths(outer, pose)
    arc = path.edges[1]
    assert path.closed and isinstance(arc, Arc)
    assert (arc.radius, abs(arc.sweep)) == (5.0, 90.0) and arc.ccw is not pose.mirrored
    assert all(dist(point, arc.centre) == pytest.approx(5.0, abs=1e-9) for point in (*arc.points(), arc.end))
    assert path.edges[0].length == pytest.approx(outer.edges[0].length, abs=1e-9)


def test_a_mirrored_pose_turns_the_ring_round(stair_layer: Part) -> None:
    (plain,) = drawn_paths(stair_layer.template.outer, Pose(turn=33))
    (flipped,) = drawn_paths(stair_layer.template.outer, Pose(turn=33, mirrored=True))
    assert shapely.LinearRing(plain.points).is_ccw and not shapely.LinearRing(flipped.points).is_ccw
    assert shapely.Polygon(plain.points).area == pytest.approx(shapely.Polygon(flipped.points).area)


def test_a_whole_circle_is_two_half_arcs(draw: Callable[..., Part]) -> None:
    (path,) = drawn_paths(draw("disc", radius=40).template.outer, Pose())
    assert [(e.radius, e.sweep) for e in path.edges if isinstance(e, Arc)] == [(pytest.approx(39.6), 180.0)] * 2


def test_outlines_are_one_cut_stroke_with_holes(make_part: Callable[..., Part]) -> None:
    hole = polyline(((10, 10), (10, 20), (20, 20), (20, 10)), True)
    part = make_part()
    part = replace(part, template=Region(part.template.outer, (hole,)))
    (stroke,) = outline_strokes(part, Pose(5, 6), Box(0, 0, 9, 9))
    assert isinstance(stroke, Stroke)
    assert stroke.style == CUT and stroke.layer is Layer.OUTLINES and stroke.clip == Box(0, 0, 9, 9)
    assert len(stroke.paths) == 2 and all(p.closed for p in stroke.paths)
    assert stroke.paths[1].points[0] == (15, 16)


def test_marks_go_to_the_layer_of_their_purpose_in_the_style_of_their_kind(make_part: Callable[..., Part]) -> None:
    line = ((5.0, 5.0), (20.0, 5.0))
    marks = (
        Mark(LineKind.SCORE, Purpose.SURFACE, polyline(line)),
        Mark(LineKind.REFERENCE, Purpose.LAP, polyline(line)),
        Mark(LineKind.FOLD, Purpose.LINE_UP, polyline(line)),
        Mark(LineKind.DRAW, Purpose.CENTRE, polyline(line)),
    )
    found = {(s.style, s.layer) for s in strokes(mark_strokes(make_part(marks=marks), Pose()))}
    assert found == {
        (line_style(LineKind.SCORE), Layer.SURFACE),
        (line_style(LineKind.REFERENCE), Layer.NOTES),
        (line_style(LineKind.FOLD), Layer.OUTLINES),
        (line_style(LineKind.DRAW), Layer.DIMENSIONS),
    }


def test_an_arrow_ends_in_one_small_head_at_its_tip(stair_layer: Part) -> None:
    drawn = mark_strokes(stair_layer, Pose(mirrored=True))
    heads = [p for d in drawn if isinstance(d, Fill) for p in d.paths]
    assert len(heads) == 1
    mark = next(m for m in stair_layer.marks if m.purpose is Purpose.CLIMB)
    tip = Pose(mirrored=True).apply(mark.path.points[-2])  # geometry draws barb, tip, barb
    assert dist(heads[0].points[0], tip) < 1e-9
    assert 0 < shapely.Polygon(heads[0].points).area < HEAD**2


def test_surface_lines_stop_at_quiet_boxes_and_others_do_not(make_part: Callable[..., Part]) -> None:
    line = ((0.0, 10.0), (60.0, 10.0))
    box = Box(20, 5, 40, 15)
    for purpose, wanted in ((Purpose.SURFACE, 40.0), (Purpose.LAP, 60.0)):
        part = make_part(marks=(Mark(LineKind.DRAW, purpose, polyline(line)),))
        paths = [p for s in strokes(mark_strokes(part, Pose(), quiet=[box])) for p in s.paths]
        assert sum(dist(*p.points) for p in paths) == pytest.approx(wanted)


def test_marks_outside_the_window_are_left_out(make_part: Callable[..., Part]) -> None:
    part = make_part(marks=(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((50.0, 1.0), (50.0, 9.0)))),))
    assert mark_strokes(part, Pose(), Box(0, 0, 40, 40)) == ()
    assert mark_strokes(part, Pose(), Box(0, 0, 55, 40)) != ()


def test_a_round_mark_is_drawn_with_its_arcs(make_part: Callable[..., Part]) -> None:
    part = make_part(marks=(Mark(LineKind.REFERENCE, Purpose.BASE, circle((1, 2), 12.5)),))
    (stroke,) = strokes(mark_strokes(part, Pose(30, 20)))
    assert stroke.paths == (circle((31, 22), 12.5),)


def window_part(make_part: Callable[..., Part], side: float) -> Part:
    hole = polyline(((10, 8), (10, 8 + side), (10 + side, 8 + side), (10 + side, 8)), True)
    part = make_part()
    return replace(part, template=Region(part.template.outer, (hole,)))


def test_waste_is_hatched_inside_the_opening_round_the_word(make_part: Callable[..., Part], setter: Setter) -> None:
    pose = Pose(100, 50, 30)
    part = window_part(make_part, 24)
    drawn = waste_strokes(part, pose, setter)
    words = [d for d in drawn if isinstance(d, Words)]
    assert [w.text for w in words] == ["remove"]
    hole = shapely.Polygon(pose.apply_all(part.template.holes[0].points))
    lines = shapely.MultiLineString([p.points for s in strokes(drawn) for p in s.paths])
    assert len(lines.geoms) > 4
    assert hole.buffer(-0.7).covers(lines)
    word = shapely.box(words[0].x, words[0].y, words[0].x + setter.width("remove", _style(words[0])), words[0].y + 1.5)
    assert word.distance(lines) > 0.5


def _style(word: Words) -> object:
    from publisher.pages.type.styles import LEAST, NOTE

    return NOTE if word.size == NOTE.size else LEAST


def test_a_slot_is_hatched_without_the_word_and_a_slit_is_not(make_part: Callable[..., Part], setter: Setter) -> None:
    (hatching,) = waste_strokes(window_part(make_part, 5.3), Pose(), setter)
    assert strokes((hatching,))[0].style.name == "hatch"
    assert waste_strokes(window_part(make_part, 3.0), Pose(), setter) == ()


def test_of_a_rabbet_the_strip_whose_foam_goes_is_hatched_without_the_word(
    make_part: Callable[..., Part], setter: Setter
) -> None:
    pose = Pose(100, 50, 30)
    plain = window_part(make_part, 3.0)
    edge = Edge("bottom", (0, 0), (60, 0), (0, 0), (60, 0), rabbet=Rabbet(5.0, 0.3))
    drawn = waste_strokes(replace(plain, edges=(edge,)), pose, setter)
    assert not [d for d in drawn if isinstance(d, Words)]
    lines = shapely.MultiLineString([p.points for s in strokes(drawn) for p in s.paths])
    strip = shapely.Polygon(pose.apply_all(((0, 0), (60, 0), (60, 5), (0, 5))))
    assert len(lines.geoms) > 4
    assert strip.covers(lines)
    assert lines.intersection(strip.buffer(-2)).length > 0


def test_a_tile_hatches_what_its_window_shows(make_part: Callable[..., Part], setter: Setter) -> None:
    left = waste_strokes(window_part(make_part, 24), Pose(), setter, Box(0, 0, 14, 40))
    assert not [d for d in left if isinstance(d, Words)]  # too narrow for the word
    right = waste_strokes(window_part(make_part, 24), Pose(), setter, Box(14, 0, 60, 40))
    assert [d.text for d in right if isinstance(d, Words)] == ["remove"]
    for drawn, low, high in ((left, 10, 14), (right, 14, 34)):
        xs = [p[0] for s in strokes(drawn) for q in s.paths for p in q.points]
        assert low <= min(xs) and max(xs) <= high


def test_hatching_meets_across_a_seam(make_part: Callable[..., Part], setter: Setter) -> None:
    rows = []
    for window in (Box(0, 0, 16, 40), Box(16, 0, 60, 40)):
        drawn = waste_strokes(window_part(make_part, 24), Pose(), setter, window)
        rows.append(
            {round((p[0][0] - p[0][1]) % (4 * 2**0.5), 6) for s in strokes(drawn) for q in s.paths for p in [q.points]}
        )
    assert len(rows[0] | rows[1]) == 1


def test_quiet_lines_leave_out_surface(make_part: Callable[..., Part]) -> None:
    line = ((0.0, 10.0), (60.0, 10.0))
    assert quiet_lines(make_part(marks=(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(line)),)), Pose()).is_empty
    assert quiet_lines(
        make_part(marks=(Mark(LineKind.GLUE, Purpose.LAP, polyline(line)),)), Pose()
    ).length == pytest.approx(60)


@pytest.mark.search
@cases(10, 500)
@given(pose=poses)
def test_the_promise_names_the_same_place_as_the_drawing(pose: Pose) -> None:
    ring = polyline(((0, 0), (30, 0), (30, 12), (8, 20)), True)
    region = Region(ring)
    part = Part("p", "P", "P", "foam", 5, "", region, region, (), (), (), 1, 0, 0, "any", 0, _place())
    promise = outline_promise(3, part, 1, pose)
    (stroke,) = outline_strokes(part, pose)
    assert isinstance(stroke, Stroke)
    for kept, path in zip(promise.rings, stroke.paths, strict=True):
        for a, b in zip(kept, path.points, strict=True):
            assert hypot(*(p - q for p, q in zip(promise.pose.apply(a), b, strict=True))) < 1e-9
    assert (promise.page, promise.part, promise.letter, promise.copy) == (3, "p", "P", 1)


def _place() -> object:
    from publisher.basics import Place

    return Place("spec.yaml")


def test_marks_are_promised_as_drawn_and_only_those_that_a_hand_follows(make_part: Callable[..., Part]) -> None:
    marks = (
        Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, 5.0), (100.0, 5.0)))),
        Mark(LineKind.FOLD, Purpose.BEND, polyline(((20.0, 0.0), (20.0, 10.0), (30.0, 10.0)), closed=True)),
        Mark(LineKind.REFERENCE, Purpose.LINE_UP, polyline(((0.0, 8.0), (100.0, 8.0)))),
    )
    part, pose, window = make_part(marks=marks), Pose(10.0, 20.0), Box(0.0, 0.0, 90.0, 90.0)
    drawn = mark_strokes(part, pose, window, (Box(40.0, 20.0, 50.0, 30.0),))
    found = {p.kind: p for p in mark_promises(3, part, 2, drawn, window)}
    assert set(found) == {"draw", "fold"}
    style = line_style(LineKind.FOLD)
    assert (found["fold"].width, found["fold"].dash, found["fold"].window) == (style.width, style.dash, window)
    assert found["fold"].lines == (((30.0, 20.0), (30.0, 30.0), (40.0, 30.0), (30.0, 20.0)),)
    ends = sorted(x for line in found["draw"].lines for x, _ in line)
    assert ends == [10.0, 40.0, 50.0, 110.0]  # interrupted where words stand
    assert {(p.page, p.part, p.copy) for p in found.values()} == {(3, part.id, 2)}


def test_no_glue_line_is_drawn_along_the_cut_line(make_part: Callable[..., Part]) -> None:
    strip = polyline(((-0.4, -0.4), (60.4, -0.4), (60.4, 5.0), (-0.4, 5.0)), True)
    inner = polyline(((20.0, 10.0), (40.0, 10.0)))
    part = make_part(marks=tuple(Mark(LineKind.GLUE, Purpose.LAP, path, "lap", "") for path in (strip, inner)))
    (stroke,) = mark_strokes(part, Pose(5.0, 6.0))
    assert isinstance(stroke, Stroke)
    cut = shapely.Polygon(Pose(5.0, 6.0).apply_all(part.template.outer.points)).exterior
    lines = [shapely.LineString(path.travelled) for path in stroke.paths]
    assert all(line.distance(cut) >= 0.99 for line in lines)
    assert sorted(round(line.length) for line in lines) == [20, 58]


def test_the_end_of_a_dotted_line_that_a_window_cuts_off_is_no_dot(make_part: Callable[..., Part]) -> None:
    """The last 0.4 mm of a centre cross stood at the rim of a glue area; of a drawn line, which a hand follows, all is shown."""
    for kind, shown in ((LineKind.REFERENCE, False), (LineKind.DRAW, True)):
        part = make_part(marks=(Mark(kind, Purpose.CENTRE, polyline(((10.0, 10.0), (16.0, 10.0)))),))
        assert bool(mark_strokes(part, Pose(), Box(15.6, 0, 40, 40))) == shown
        assert mark_strokes(part, Pose(), Box(12.0, 0, 40, 40)) and mark_strokes(part, Pose(), Box(0, 0, 40, 40))
