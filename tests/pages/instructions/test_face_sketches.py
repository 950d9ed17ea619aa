"""What is done to faces: pressing shows a dent and no cut, drawing a pencil, scoring a cut that stops short."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import shapely

from publisher.basics import LineKind, Path, Point, Purpose, polyline
from publisher.geometry import Fold, Mark, Part
from publisher.pages.instructions import face_sketches as sketches
from publisher.pages.instructions.face_sketches import SECTION, SECTION_LOW, SECTION_TOP, WRONG_LEFT
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet.draft import Context
from publisher.pages.type import CUT, PICTURE_CUE, PICTURE_DETAIL, Setter


def lines(pen: SketchPen, style: object = None) -> list[Path]:
    return [
        path
        for thing in pen.drawn
        if isinstance(thing, Stroke) and style in (None, thing.style)
        for path in thing.paths
    ]


def crosses_out(pen: SketchPen) -> bool:
    """Tell whether two thick lines cross where the wrong way is shown."""
    cues = [shapely.LineString(path.points) for path in lines(pen, PICTURE_CUE) if len(path.points) == 2]
    far = [line for line in cues if line.bounds[0] >= WRONG_LEFT]
    return any(a.crosses(b) for i, a in enumerate(far) for b in far[:i])


def deepest(pen: SketchPen) -> float:
    """Return how deep (mm) the upper side of the ticked section goes."""
    rings = [path for path in lines(pen) if path.closed and max(y for _, y in path.points) == SECTION_TOP]
    ticked = [
        p for ring in rings if max(x for x, _ in ring.points) < WRONG_LEFT for p in ring.points if p[1] > SECTION_LOW
    ]
    return SECTION_TOP - min(y for _, y in ticked)


def test_pressing_shows_a_dent_that_does_not_go_through_and_the_knife_crossed_out(demo: Callable[..., Context]) -> None:
    for slug in ("toll-house", "bridge", "lock-stair"):
        context = demo(slug)
        pen = SketchPen(context.type, (0.0, 0.0))
        sketches.pressing_in(pen, [(part, 2) for part in context.parts[:1]])
        assert 1.0 < deepest(pen) < SECTION / 2, slug
        assert crosses_out(pen), slug


def test_the_bracket_over_the_parts_is_whole_however_many_they_are(
    setter: Setter, make_part: Callable[..., Part]
) -> None:
    """It holds for all that lies under it: where it came near the board in section it was left out but for its ends."""
    courses = tuple(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, y), (40.0, y)))) for y in (20.0, 40.0))
    tall = replace(make_part(width=40.0, height=60.0), marks=courses)
    for many in (2, 3, 4, 5):
        pen = SketchPen(setter, (0.0, 0.0))
        sketches.pressing_in(pen, [(tall, 2)] * many)
        legs = [path.points for path in lines(pen, PICTURE_DETAIL) if len(path.points) in (3, 4) and not path.closed]
        level = sum(abs(b[0] - a[0]) for one in legs for a, b in pairwise(one) if a[1] == b[1] < SECTION_LOW)
        assert level > 40.0, many  # a tool may stand before it


def test_paper_is_shown_as_the_board_has_it(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    heavy = {}
    for paper in ("bare", "kept", "peeled"):
        pen = SketchPen(context.type, (0.0, 0.0))
        sketches.pressing_in(pen, [(context.parts[0], 2)], paper)  # type: ignore[arg-type]
        heavy[paper] = [path.points for path in lines(pen, CUT) if min(y for _, y in path.points) > SECTION_LOW]
        assert ("paper" in [thing.text for thing in pen.drawn if isinstance(thing, Words)]) == (paper == "peeled")
    assert not heavy["bare"] and len(heavy["kept"]) == 1
    lowest = min(y for _, y in heavy["kept"][0])
    assert lowest < SECTION_TOP - 1.0  # it goes down with the dent, whole


def test_drawing_shows_no_section(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    pen = SketchPen(context.type, (0.0, 0.0))
    sketches.drawing_on(pen, [(context.parts[0], 2)])
    assert not crosses_out(pen)


def grooved(make_part: Callable[..., Part]) -> Part:
    line: tuple[Point, ...] = ((30.0, 0.0), (30.0, 40.0))
    mark = Mark(LineKind.FOLD, Purpose.BEND, polyline(line), "fold", "")
    return make_part(marks=(mark,), folds=(Fold(90.0, 10.0),))


def test_scoring_stops_short_and_says_the_angle(make_part: Callable[..., Part], setter: Setter) -> None:
    plain = make_part(marks=(Mark(LineKind.SCORE, Purpose.SURFACE, polyline(((30.0, 0.0), (30.0, 40.0))), "s", ""),))
    for part, angles in ((grooved(make_part), ["90°"]), (plain, [])):
        assert sketches.scored(part)
        pen = SketchPen(setter, (0.0, 0.0))
        sketches.scoring(pen, [(part, 2)])
        assert 0.3 * SECTION < deepest(pen) < 0.85 * SECTION
        assert crosses_out(pen)
        assert [thing.text for thing in pen.drawn if isinstance(thing, Words) and "°" in thing.text] == angles
    pocket = replace(plain, marks=(replace(plain.marks[0], purpose=Purpose.POCKET),))
    assert not sketches.scored(pocket) and not sketches.scored(make_part())
