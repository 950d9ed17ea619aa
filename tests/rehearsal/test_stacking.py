"""Layers lie where marks and acts say, and nowhere else; dots and dashes are read from a picture."""

from dataclasses import replace

import cv2
import numpy as np
import pytest
import shapely

from tests.rehearsal.acts import Act, Added, acts_of
from tests.rehearsal.notes import Note
from tests.rehearsal.pages import Line, ReadPage
from tests.rehearsal.parts import ReadPart
from tests.rehearsal.raster import DOTS, pieces_of
from tests.rehearsal.stacking import Layers, stack_up
from tests.rehearsal.standing import boards_of
from tests.rehearsal.thin_lines import Thin, thin_lines

STEP = shapely.union_all([shapely.Point(0, 0).buffer(20), shapely.box(0, 0, 60, 15)])
CROSS = Thin("cross", np.array(((0.0, 0.0), (3.0, 0.0))))
PLATE = shapely.box(0, 0, 80, 60)


def layer(letter: str, area: shapely.Polygon, *thin: Thin, count: int = 1, notes: tuple[Note, ...] = ()) -> ReadPart:
    """Return a layer of 5 mm board as if it had been read."""
    return ReadPart(letter, area, (1,), count, thickness=5.0, thin=thin, notes=notes)


def piles(parts: tuple[ReadPart, ...], *acts: Act) -> tuple[Layers, ...]:
    """Return what these acts lay."""
    return stack_up(acts, parts, boards_of(parts, 0.0))


def act(*added: tuple[int, str], number: int = 1, turn: float | None = None) -> Act:
    """Return an act that adds so many of each part, from the lowest up."""
    return Act(1, "Glue", number, tuple(Added(n, letter, 0.0, y) for y, (n, letter) in enumerate(added)), turn)


@pytest.mark.parametrize(("way", "sense"), [((0.0, 1.0), 1.0), ((0.0, -1.0), -1.0)])
def test_a_stair_winds_the_way_its_arrow_climbs(way: tuple[float, float], sense: float) -> None:
    """Four steps at 20 degrees: the fourth lies 60 degrees from the first, 15 mm above it."""
    parts = (layer("A", STEP, CROSS, count=4, notes=(Note("climbs", "climbs", 40.0, 5.0, way),)),)
    (pile,) = piles(parts, act((1, "A")), act((3, "A"), number=2, turn=20.0))
    turned = pile.stood[3].matrix @ (1.0, 0.0, 0.0, 0.0)
    assert np.degrees(np.arctan2(turned[1], turned[0])) == pytest.approx(sense * 60.0)
    assert pile.stood[3].matrix[2, 3] == pytest.approx(20.0)


@pytest.mark.parametrize(("anticlockwise", "sense"), [(True, 1.0), (False, -1.0)])
def test_a_layer_without_an_arrow_of_its_own_is_turned_as_the_picture_shows(anticlockwise: bool, sense: float) -> None:
    parts = (layer("A", STEP, CROSS, count=2),)
    turned = replace(act((1, "A"), number=2, turn=45.0), anticlockwise=anticlockwise)
    (pile,) = piles(parts, act((1, "A")), turned)
    x, y, *_ = pile.stood[1].matrix @ (1.0, 0.0, 0.0, 0.0)
    assert np.degrees(np.arctan2(y, x)) == pytest.approx(sense * 45.0)


def test_a_layer_lies_in_the_outline_that_bears_its_letter() -> None:
    """A board of 30 × 60 mm at the right end of a plate of 80 × 60 mm: one glue line parts off its seat."""
    line, name = Thin("glue", np.array(((50.0, 2.0), (50.0, 58.0)))), Note("seat", "B", 65.0, 30.0)
    parts = (layer("A", PLATE, line, notes=(name,)), layer("B", shapely.box(0, 0, 60, 30)))
    (pile,) = piles(parts, act((1, "A"), (1, "B")))
    lies = shapely.transform(parts[1].area, lambda p: p @ pile.stood[1].matrix[:2, :2].T + pile.stood[1].matrix[:2, 3])
    assert shapely.symmetric_difference(lies, shapely.box(50, 0, 80, 60)).area < 1e-6


def test_a_layer_without_a_mark_is_not_laid() -> None:
    parts = (layer("A", PLATE), layer("B", shapely.box(0, 0, 60, 30)))
    (pile,) = piles(parts, act((1, "A"), (1, "B")))
    assert (len(pile.stood), pile.left) == (1, ("nothing on part A says where part B lies",))


def test_nested_templates_lie_as_they_are_printed() -> None:
    outer, inner = shapely.Point(0, 0).buffer(40), shapely.Point(3, 2).buffer(20)
    parts = tuple(
        ReadPart(letter, area, (1,), 1, thickness=5.0, nest=("A", "B")) for letter, area in (("A", outer), ("B", inner))
    )
    (pile,) = piles(parts, act((1, "A"), (1, "B")))
    assert np.allclose(pile.stood[1].matrix[:3, 3], (0.0, 0.0, 10.0))


def test_of_nested_templates_the_outermost_comes_first_whatever_the_picture_seems_to_show() -> None:
    rings = {letter: shapely.Point(0, 0).buffer(radius) for letter, radius in (("A", 40), ("B", 30), ("C", 20))}
    parts = tuple(
        ReadPart(letter, ring, (1,), 1, thickness=5.0, nest=("A", "B", "C")) for letter, ring in rings.items()
    )
    (pile,) = piles(parts, act((1, "A"), (1, "C"), (1, "B")))
    assert [one.board.letter for one in pile.stood] == ["A", "B", "C"]


def words(text: str, x: float, y: float, em: float) -> Line:
    """Return bold words of a page."""
    return Line(text, x, y, 10.0, em, bold=True)


def test_acts_are_read_in_the_order_of_their_numbers_and_other_pictures_are_none() -> None:
    page = ReadPage(
        9,
        (
            words("Steps 8 to 9", 11, 278, 4.6),
            words("Cut", 24, 264, 4.6),
            words("20 × A", 150, 240, 3.2),  # of a sketch of cutting
            words("Wind up", 24, 150, 4.6),
            words("1", 24, 120, 4.6),
            words("2", 114, 120, 4.6),
            words("1 × A", 150, 110, 2.7),
            words("0°", 170, 100, 2.7),
            words("17 × A", 70, 112, 2.7),
            words("1 × B", 72, 90, 2.7),
            words("20°", 90, 115, 2.7),
        ),
    )
    first, second = acts_of((page,))
    assert [(one.count, one.letter) for one in first.added] == [(1, "B"), (17, "A")]
    assert (first.turn, second.turn, second.counts["A"]) == (20.0, 0.0, 1)


def test_dotted_lines_and_glue_lines_are_told_from_each_other() -> None:
    """Dots 0.25 mm long at a pitch of 1 mm, and dashes of 6 mm with two dots between, drawn as the legend shows them."""
    ink = np.zeros((round(40 * DOTS), round(80 * DOTS)), dtype=np.uint8)

    def drawn(x: float, y: float, long: float) -> None:
        a, b = (round(v * DOTS) for v in (x, y))
        cv2.rectangle(ink, (a, b), (a + round(long * DOTS) - 1, b + 5), 255, -1)

    for n in range(30):
        drawn(10.0 + n, 10.0, 0.25)
    for n in range(5):
        for off, long in ((0.0, 6.0), (6.75, 0.25), (7.75, 0.25)):
            drawn(10.0 + 8.75 * n + off, 20.0, long)
    found = list(thin_lines(pieces_of(ink)))
    assert [one.kind for one in found] == ["dots", "glue"]
    assert np.allclose(sorted(found[1].points[:, 0]), (10.0, 10.0 + 4 * 8.75 + 6.0), atol=0.1)
    assert np.allclose(found[1].points[:, 1], 40.0 - 20.125, atol=0.05)


def test_a_dotted_line_goes_on_under_the_lines_that_cross_it() -> None:
    """Every third dot lies on a line of a pattern; where the dots are just missing, what is left are bits too short for a line."""
    for crossed, kinds in ((True, ["dots"]), (False, [])):
        ink = np.zeros((round(60 * DOTS), round(40 * DOTS)), dtype=np.uint8)
        for n in range(30):
            x, y = round(20 * DOTS), round((10 + n) * DOTS)
            if n % 3:
                ink[y : y + 6, x : x + 6] = 255
            elif crossed:
                ink[y : y + 4, round(8 * DOTS) : round(30 * DOTS)] = 255
        assert [one.kind for one in thin_lines(pieces_of(ink)) if one.kind == "dots"] == kinds


def test_short_sides_of_a_seat_are_read_by_the_corners_of_its_long_ones() -> None:
    """Dashes of 5.5 mm go round the corners of a seat of 22 × 4.75 mm by a millimetre or two."""
    ink = np.zeros((round(30 * DOTS), round(50 * DOTS)), dtype=np.uint8)
    for left, bottom, right, top in (
        (10.0, 10.0, 15.5, 10.25), (10.0, 10.0, 10.25, 10.8), (10.0, 14.5, 15.5, 14.75), (10.0, 13.2, 10.25, 14.75),
        (26.5, 10.0, 32.0, 10.25), (31.75, 10.0, 32.0, 11.7), (26.5, 14.5, 32.0, 14.75),
    ):  # fmt: skip
        a, b, c, d = (round(v * DOTS) for v in (left, bottom, right, top))
        ink[b:d, a:c] = 255
    upright = [
        one.points for one in thin_lines(pieces_of(ink)) if one.kind == "glue" and np.ptp(one.points[:, 0]) < 1.0
    ]
    assert sorted(round(float(points[:, 0].mean()), 1) for points in upright) == pytest.approx([10.1, 31.9], abs=0.1)
