"""How a board bends on its supports: against rows of a beam table, and on plans whose spans are plain."""

from math import cos, radians

import numpy as np
import pytest
import shapely
import shapely.affinity

from publisher.joints.bending import Bending, bendings_of, neck_out

# AISC Steel Construction Manual, table 3-23: greatest moment and deflection of a beam of length l, by load P or w on its length
#   case 7, simple beam, load at the centre: P·l/4, P·l³/48EI     case 1, uniform load: w·l²/8, 5·w·l⁴/384EI
#   case 22, cantilever, load at the end:    P·l,   P·l³/3EI      case 19, uniform load: w·l²/2, w·l⁴/8EI
TABLE = {
    "span": (1 / 4, 1 / 48, 1 / 8, 5 / 384),
    "beyond": (1.0, 1 / 3, 1 / 2, 1 / 8),
}


@pytest.mark.parametrize("way", ["span", "beyond"])
@pytest.mark.parametrize(("length", "wide", "thick"), [(60.0, 20.0, 5.0), (160.0, 75.0, 4.7625), (33.0, 40.0, 10.0)])
def test_stress_and_sag_are_those_of_the_beam_table(way: str, length: float, wide: float, thick: float) -> None:
    load, stiffness, own = 0.785, 12.0, 1.5e-6
    moment, give, moment_of_own, give_of_own = TABLE[way]
    place = Bending(way, length, wide, (0.0, 0.0))  # type: ignore[arg-type]
    modulus, inertia = wide * thick**2 / 6.0, wide * thick**3 / 12.0
    bends = moment * load * length + moment_of_own * own * wide * length**2
    gives = give * load * length**3 + give_of_own * own * wide * length**4
    assert place.stress(load, 1e6, own, thick) == pytest.approx(bends / modulus)
    assert place.sag(load, 1e6, own, thick, stiffness) == pytest.approx(gives / (stiffness * inertia))
    assert place.stress(place.carries(0.3, 1e6, own, thick), 1e6, own, thick) == pytest.approx(0.3)


def test_the_strip_that_carries_is_as_wide_as_the_load_and_half_the_span_and_no_wider_than_the_board() -> None:
    assert Bending("span", 100.0, 200.0, (0.0, 0.0)).width(25.0) == 75.0
    assert Bending("beyond", 40.0, 200.0, (0.0, 0.0)).width(25.0) == 65.0
    assert Bending("span", 100.0, 60.0, (0.0, 0.0)).width(25.0) == 60.0


DECK = shapely.box(0, 0, 200, 80)


def longest(supports: list[shapely.Geometry], way: str) -> float:
    found = bendings_of(DECK, shapely.union_all(supports), 25.0)
    return max((one.length for one in found if one.way == way), default=0.0)


WEST, EAST = shapely.box(0, 0, 5, 80), shapely.box(195, 0, 200, 80)
SOUTH, NORTH = shapely.box(0, 0, 200, 5), shapely.box(0, 75, 200, 80)


def test_on_two_sides_it_spans_the_clear_distance_and_on_all_the_shorter_one() -> None:
    assert longest([WEST, EAST], "span") == pytest.approx(190.0)
    assert longest([WEST, EAST, SOUTH, NORTH], "span") == pytest.approx(70.0)
    assert longest([WEST, EAST, shapely.box(90, 0, 95, 80)], "span") == pytest.approx(100.0)


def test_beyond_its_supports_it_overhangs() -> None:
    assert longest([shapely.box(30, 0, 35, 80), EAST], "beyond") == pytest.approx(30.0)
    assert longest([shapely.box(80, 0, 120, 80)], "beyond") == pytest.approx(80.0)
    assert longest([shapely.box(80, 0, 120, 80)], "span") == 0.0


def test_between_posts_it_spans_the_longer_way() -> None:
    posts = [shapely.box(x, y, x + 5, y + 5) for x in (0, 195) for y in (0, 75)]
    assert longest(posts, "span") == pytest.approx(200.0)
    assert longest(posts, "beyond") == 0.0


def test_an_opening_leaves_the_board_beside_it() -> None:
    deck = shapely.Polygon([(0, 0), (200, 0), (200, 80), (0, 80)], [[(60, 20), (60, 60), (140, 60), (140, 20)]])
    narrow = [one for one in bendings_of(deck, shapely.union_all([WEST, EAST]), 25.0) if one.way == "span"]
    assert min(one.across for one in narrow if one.length == pytest.approx(190.0)) == pytest.approx(20.0)


def test_beside_a_waist_it_spans_no_farther_than_its_supports_are_apart() -> None:
    """Behind a notch no straight way ends on both supports."""
    deck = shapely.difference(DECK, shapely.union_all([shapely.box(90, 0, 110, 30), shapely.box(90, 50, 110, 80)]))
    found = bendings_of(deck, shapely.union_all([WEST, EAST]), 25.0)
    askew = 190.0 / cos(radians(15.0))  # the first way beside square to both
    assert 190.0 <= max(one.length for one in found if one.way == "span") <= askew + 0.01


def test_what_nothing_carries_is_not_judged() -> None:
    assert bendings_of(shapely.box(0, 0, 100, 100), shapely.box(200, 0, 210, 100), 25.0) == ()


@pytest.mark.parametrize("angle", [18.317, 33.0, 89.9999, 108.317, 163.0])
def test_walls_that_run_askew_are_spanned_square_to_them(angle: float) -> None:
    turned = [shapely.affinity.rotate(one, angle, origin=(100, 40)) for one in (DECK, WEST, EAST)]
    found = bendings_of(turned[0], shapely.union_all(turned[1:]), 25.0)
    assert max(one.length for one in found if one.way == "span") == pytest.approx(190.0, abs=0.05)


def paddle(neck: float, hole: float = 0.0) -> shapely.Geometry:
    """A plate 60 mm deep and 130 long, narrow from 60 to 70 mm about its middle, with a hole along that stretch."""
    waist = shapely.box(60, 30 - neck / 2, 70, 30 + neck / 2)
    whole = shapely.union_all([shapely.box(0, 0, 60, 60), waist, shapely.box(70, 0, 130, 60)])
    return shapely.difference(whole, shapely.box(62, 30 - hole / 2, 68, 30 + hole / 2)) if hole else whole


@pytest.mark.parametrize(
    ("neck", "hole", "length", "across"),
    [
        (8.0, 0.0, 70.0, 8.0),
        (20.0, 14.0, 68.0, 6.0),
        (60.0, 50.0, 68.0, 10.0),
        (60.0, 0.0, 90.0, 60.0),
        (59.0, 0.0, 90.0, 60.0),
    ],
)
def test_what_is_held_at_one_side_bends_at_its_neck(neck: float, hole: float, length: float, across: float) -> None:
    """Held up to 40 mm: 90 mm to its end from there, 70 from where its waist begins, 68 from the hole, beside which both legs carry."""
    found = bendings_of(paddle(neck, hole), shapely.box(0, 0, 40, 60), 25.0)
    worst = max(found, key=lambda one: one.by_load(25.0, 5.0))
    assert (worst.length, worst.across) == pytest.approx((length, across), abs=0.03)
    assert worst.neck == (length < 90.0)
    assert worst.by_load(25.0, 5.0) == pytest.approx(6.0 * length / (min(across, 25.0 + length) * 25.0), rel=2e-3)


def test_nothing_is_a_neck_within_half_a_base_of_its_end() -> None:
    """A point: as far as a figure's middle can stand from its end it is as wide as a root is, for its length."""
    point = shapely.Polygon([(0, 0), (60, 30), (0, 60)])
    neck = neck_out(point, np.array([0.0, 30.0]), np.array([60.0, 30.0]), 25.0)
    assert neck is None or (neck.length >= 12.5 and neck.across == pytest.approx(neck.length, abs=0.05))
    assert neck_out(point, np.array([50.0, 30.0]), np.array([60.0, 30.0]), 25.0) is None
