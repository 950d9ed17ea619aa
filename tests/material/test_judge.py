"""The judge sees what is wrong, and nothing else. Outside data: ESICUP instances and the solutions stored with them (CC0)."""

from dataclasses import replace
from math import cos, pi, sin

import pytest

from publisher.basics import Pose
from publisher.material import Item, LayoutFault, Piece
from publisher.material.judge import flaws, insist

SCALE = 10.0  # mm to a unit of the instances, whose pieces are some 10 units wide


def read_solution(data, number, sense=1.0, scale=SCALE):
    """Return pieces, strip (mm) and items of a stored solution."""
    ids = [p["id"] for p in data["pieces"]]
    pieces = tuple(
        Piece(
            p["id"],
            (tuple((x * scale, y * scale) for x, y in p["polygon"]),),
            tuple(p["angles"]),
            p["quantity"],
        )
        for p in data["pieces"]
    )
    counts = dict.fromkeys(ids, 0)
    items = []
    for at in data["solutions"][number]["placements"]:
        counts[at["piece"]] += 1
        pose = Pose(at["x"] * scale, at["y"] * scale, sense * at["angle"])
        items.append(Item(at["piece"], counts[at["piece"]], pose))
    strip = (
        (0.0, 0.0),
        (200.0 * scale, 0.0),
        (200.0 * scale, data["strip_width"] * scale),
        (0.0, data["strip_width"] * scale),
    )
    return pieces, (strip,), tuple(items)


@pytest.mark.parametrize(
    ("name", "number"), [("dighe1", 1), ("dighe1", 2), ("fu", 0), ("fu", 1), ("shapes1", 0), ("shapes1", 1)]
)
def test_published_solutions_hold(shop, name, number) -> None:
    """Solutions that the check values call verified are accepted, dighe1's exact jigsaw among them."""
    pieces, strip, items = read_solution(shop.instance(name), number)
    assert flaws(pieces, strip, 0.0, (items,), complete=True) == ()


def test_a_published_solution_that_does_not_hold_is_rejected(shop) -> None:
    """The third solution stored with ``fu`` overlaps by 1.2e-6 of the area and reaches over the strip: seen at 100 mm a unit."""
    pieces, strip, items = read_solution(shop.instance("fu"), 2, scale=100.0)
    messages = [f.message for f in flaws(pieces, strip, 0.0, (items,), complete=True)]
    assert any("over the edge" in m for m in messages)
    assert any("closer" in m for m in messages)


def test_turning_the_wrong_way_is_seen(shop) -> None:
    """The same placements read with the opposite sense of turning overlap grossly."""
    pieces, strip, items = read_solution(shop.instance("fu"), 1, sense=-1.0)
    assert flaws(pieces, strip, 0.0, (items,), complete=True)


@pytest.fixture
def pair(shop):
    """Two squares of 10 on 40 × 10, 1 mm apart."""
    piece = Piece("p", (shop.box(10.0, 10.0),), (0.0, 90.0), 2)
    items = (Item("p", 1, Pose(0.0, 0.0)), Item("p", 2, Pose(11.0, 0.0)))
    return piece, (shop.box(40.0, 10.0),), items


def judged(pair, items=None, gap=1.0, piece=None, complete=True):
    """Return the messages about a changed pair."""
    own, container, laid = pair
    return [f.message for f in flaws((piece or own,), container, gap, (laid if items is None else items,), complete)]


def test_a_good_layout_has_no_flaw(pair) -> None:
    """Gap exactly kept; and to within a hundredth."""
    assert judged(pair) == []
    assert judged(pair, gap=1.009) == []


def test_a_gap_too_small_by_two_hundredths(pair) -> None:
    """1.02 asked, 1.00 there."""
    assert judged(pair, gap=1.02) == ["two parts on sheet 1 lie closer than the gap"]


@pytest.mark.parametrize("depth", [0.02, 5.0, 10.0])
def test_overlap_with_gap_nought(pair, depth) -> None:
    """Overlap of 0.02 mm, of half the piece, of all of it."""
    items = (pair[2][0], replace(pair[2][1], pose=Pose(10.0 - depth, 0.0)))
    assert judged(pair, items, gap=0.0) == ["two parts on sheet 1 lie closer than the gap"]
    assert judged(pair, (pair[2][0], replace(pair[2][1], pose=Pose(10.0, 0.0))), gap=0.0) == []


def test_over_the_edge(pair) -> None:
    """0.02 mm over the left edge."""
    items = (replace(pair[2][0], pose=Pose(-0.02, 0.0)), pair[2][1])
    assert judged(pair, items) == ["a part reaches over the edge of sheet 1"]


def test_numbers(pair, shop) -> None:
    """A missing copy, one too many, the same twice, an unknown part, a place that is no number."""
    one, two = pair[2]
    assert judged(pair, (one,)) == ["1 copies of part “p” instead of 2"]
    assert judged(pair, (one,), complete=False) == []
    third = replace(two, copy=3, pose=Pose(22.0, 0.0))
    assert judged(pair, (one, two, third)) == ["3 copies of part “p” instead of 2"]
    assert judged(pair, (one, replace(two, copy=1))) == ["copy 1 of part “p” lies there 2 times"]
    assert judged(pair, (one, replace(two, part="q"))) == ["part “q” is not in the list"]
    assert judged(pair, (one, replace(two, pose=Pose(float("nan"), 0.0))))[0].startswith("part “p” lies nowhere")


def test_angles_and_mirrors(pair, shop) -> None:
    """A turn that is not allowed; a mirror image that was not asked for; any turn when the piece says so."""
    one, two = pair[2]
    tilted = replace(two, pose=Pose(30.0, 1.0, 30.0))
    free = replace(pair[0], angles=())
    assert judged(pair, (one, replace(two, pose=Pose(21.0, 0.0, 90.0)))) == []
    assert "part “p” is turned as its board does not allow" in judged(pair, (one, tilted))
    wide = (pair[0], (shop.box(60.0, 60.0),), pair[2])
    assert judged(wide, (one, tilted), piece=free) == []
    mirror = replace(two, pose=Pose(21.0, 0.0, 0.0, True))
    assert judged(pair, (one, mirror)) == [
        "1 mirrored copies of part “p” instead of 0",
        "1 copies of part “p” instead of 2",
    ]
    assert judged(pair, (one, mirror), piece=replace(pair[0], mirrored=1)) == []


def test_a_piece_in_the_hole_of_another(shop) -> None:
    """Lying in a hole is no overlap; lying on the rim is."""
    frame = Piece("f", (shop.box(40.0, 40.0), shop.box(20.0, 20.0, 10.0, 10.0)), (0.0,))
    small = Piece("s", (shop.box(10.0, 10.0),), (0.0,))
    container = (shop.box(40.0, 40.0),)
    inside = (Item("f", 1, Pose()), Item("s", 1, Pose(15.0, 15.0)))
    assert flaws((frame, small), container, 1.0, (inside,), complete=True) == ()
    on_rim = (Item("f", 1, Pose()), Item("s", 1, Pose(10.5, 15.0)))
    assert flaws((frame, small), container, 1.0, (on_rim,), complete=True)


def test_a_wrong_layout_of_ours_is_a_crash(pair) -> None:
    """``insist`` raises; it never lets a wrong layout become a row."""
    with pytest.raises(LayoutFault, match="closer than the gap"):
        insist((pair[0],), pair[1], 2.0, (pair[2],), complete=True, what="layout of a test")
    insist((pair[0],), pair[1], 1.0, (pair[2],), complete=True, what="layout of a test")


def test_an_outline_of_very_many_points_is_judged_as_it_is_drawn() -> None:
    """Two discs of 20,000 points: exactly as far apart as the gap they hold, two hundredths closer they do not."""
    turns = (2 * pi * k / 20_000 for k in range(20_000))
    disc = Piece("disc", (tuple((30.0 * cos(t), 30.0 * sin(t)) for t in turns),), (), 2)
    sheet = (((0.0, 0.0), (200.0, 0.0), (200.0, 100.0), (0.0, 100.0)),)
    for apart, wrong in ((61.0, 0), (60.995, 0), (60.98, 1)):
        laid = (Item("disc", 1, Pose(40.0, 50.0)), Item("disc", 2, Pose(40.0 + apart, 50.0)))
        assert len(flaws((disc,), sheet, 1.0, (laid,), True)) == wrong
