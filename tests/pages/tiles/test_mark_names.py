"""The name of a match mark finds a place near it that crosses nothing, and is tied to it where it stands farther off."""

from math import dist
from random import Random

import pytest
import shapely

from publisher.basics import Box, Point
from publisher.pages.model import Stroke, Words
from publisher.pages.tiles.mark_names import NAME_FARTHEST, TIED_FROM, Marked, NameRoom, placed_name
from publisher.pages.tiles.seams import MARK_RADIUS
from publisher.pages.type.rectangles import as_polygon
from publisher.pages.type.text import Setter

WINDOW = Box(0.0, 0.0, 60.0, 60.0)
AT = (30.0, 30.0)
NOTHING = shapely.GeometryCollection()


def room(cuts: shapely.Geometry = NOTHING, marks: tuple[Point, ...] = (AT,), window: Box = WINDOW) -> NameRoom:
    return NameRoom(cuts, cuts, window, marks)


def boxes(*marks: Point) -> list[Box]:
    return [Box(*at, *at).grown(MARK_RADIUS) for at in marks]


@pytest.mark.parametrize("upright", [True, False])
@pytest.mark.parametrize("first", [True, False])
def test_a_name_stands_beside_its_mark_on_its_own_side(setter: Setter, upright: bool, first: bool) -> None:
    drawn, box = placed_name(setter, Marked(AT, "B1-2·a", upright, first), room(), boxes(AT))
    (words,) = drawn
    assert isinstance(words, Words) and words.text == "B1-2·a" and words.turn == 0.0
    left_or_upper = box.right < AT[0] if upright else box.bottom > AT[1]
    assert left_or_upper is first
    assert as_polygon(box).distance(shapely.Point(AT)) < MARK_RADIUS + 2.0


def test_a_name_without_room_stands_farther_off_upright_or_on_the_other_side(setter: Setter) -> None:
    seam = shapely.LineString([(30.0, 0.0), (30.0, 60.0)])
    mark = Marked(AT, "B1-2·a", True, True)
    strip = shapely.union(
        shapely.box(0, 0, 22, 60), shapely.box(27.5, 0, 29, 60)
    )  # between them no level name has room
    drawn, box = placed_name(setter, mark, room(shapely.union(seam, strip)), boxes(AT))
    assert isinstance(drawn[0], Words) and drawn[0].turn == 90.0 and box.left > 22.0 and box.right < 27.5
    drawn, box = placed_name(setter, mark, room(shapely.union(seam, shapely.box(0.0, 0.0, 29.0, 60.0))), boxes(AT))
    assert box.left > 30.0
    hedge = shapely.Point(AT).buffer(MARK_RADIUS + TIED_FROM + 1.5)
    drawn, box = placed_name(setter, mark, room(shapely.union(seam, hedge)), boxes(AT))
    line = next(thing for thing in drawn if isinstance(thing, Stroke)).paths[0].points
    assert dist(line[0], AT) < MARK_RADIUS + 0.5
    assert as_polygon(box).distance(shapely.Point(line[-1])) < 0.5


def test_names_of_marks_close_together_are_not_mistaken_and_meet_nothing(setter: Setter) -> None:
    dice = Random(7)
    for _ in range(40):
        other = (AT[0], AT[1] + dice.uniform(2 * MARK_RADIUS + 0.5, 12.0))
        cuts = shapely.union_all(
            [
                shapely.LineString([(30.0, 0.0), (30.0, 60.0)]),
                *(
                    shapely.LineString([(dice.uniform(15, 45), dice.uniform(15, 45)) for _ in range(2)])
                    for _ in range(4)
                ),
            ]
        )
        taken = boxes(AT, other)
        for at, name in ((AT, "AA.1 2-3·a"), (other, "AA.1 2-3·b")):
            drawn, box = placed_name(setter, Marked(at, name, True, True), room(cuts, (AT, other)), taken)
            words = as_polygon(box)
            assert box.beyond(WINDOW) <= 0.0 and not cuts.intersects(words)
            assert not any(as_polygon(one).intersects(words) for one in taken)
            assert words.distance(shapely.Point(at)) <= NAME_FARTHEST
            assert words.distance(shapely.Point(at)) < words.distance(shapely.Point(other if at == AT else AT))
            tied = [thing for thing in drawn if isinstance(thing, Stroke)]
            assert bool(tied) is (words.distance(shapely.Point(at)) >= MARK_RADIUS + TIED_FROM)
            taken.append(box)
