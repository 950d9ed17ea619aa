from collections.abc import Callable
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.ring_does_not_close import panels_of, ring_does_not_close, spire_corner, triangle
from tests.joints.building.conftest import assembled

__all__ = ["assembled"]


def box(make: SimpleNamespace, last: str, corner: float = 90.0) -> object:
    return make.panels(
        "b", {"f": "w", "r": "s", "k": last, "l": "s"}, "f.bottom",
        make.join("f.right", "r.left"), make.join("r.right", "k.left"), make.join("k.right", "l.left"),
        make.join("l.right", "f.left", corner=corner),
    )  # fmt: skip


@pytest.mark.keeps("joints/ring-does-not-close")
def test_a_closed_box_passes(make: SimpleNamespace) -> None:
    subject = make.assembled(make.design(panels=(box(make, "w"),)), make.wall("w", 60, 40), make.wall("s", 30, 40))
    outcome = ring_does_not_close.run(subject, ring_does_not_close)
    assert (outcome.looked_at, outcome.findings) == (4, ())


@pytest.mark.breaks("joints/ring-does-not-close")
def test_edges_that_do_not_sum_to_zero(make: SimpleNamespace) -> None:
    parts = make.wall("w", 60, 40), make.wall("s", 30, 40), make.wall("longer", 62, 40)
    (found,) = ring_does_not_close.run(
        make.assembled(make.design(panels=(box(make, "longer"),)), *parts), ring_does_not_close
    ).findings
    assert found.severity is Severity.ERROR
    assert "l.right and f.left are 2.00 mm apart" in found.message


def test_turns_that_do_not_sum_to_a_full_turn(make: SimpleNamespace) -> None:
    subject = make.assembled(
        make.design(panels=(box(make, "w", 91.0),)), make.wall("w", 60, 40), make.wall("s", 30, 40)
    )
    (found,) = ring_does_not_close.run(subject, ring_does_not_close).findings
    assert "stand at 90.00° and not at the 91.00°" in found.message


def test_a_crate_closes_and_one_with_a_slot_a_millimetre_off_does_not(make: SimpleNamespace) -> None:
    for second, messages in ((70.0, []), (71.0, ["l2.top and s2.bottom are 1.00 mm apart"])):
        plan, parts = make.crate(second)
        outcome = ring_does_not_close.run(
            make.assembled(make.design(panels=(plan,)), *parts.values()), ring_does_not_close
        )
        assert outcome.looked_at == 4
        assert [said for f, said in zip(outcome.findings, messages, strict=True) if said not in f.message] == []


def test_the_angles_that_close_three_panels_are_said(make: SimpleNamespace) -> None:
    """Sides of 30, 40 and 50 mm: a right angle between the shorter two, and atan(4/3) = 53.13° and 36.87°."""
    plan = make.panels(
        "t", {"a": "w30", "b": "w40", "c": "w50"}, "a.bottom",
        make.join("a.right", "b.left", corner=80.0), make.join("b.right", "c.left", corner=40.0),
        make.join("c.right", "a.left", corner=60.0),
    )  # fmt: skip
    walls = [make.wall(f"w{size}", size, 40) for size in (30, 40, 50)]
    (found,) = ring_does_not_close.run(
        make.assembled(make.design(panels=(plan,)), *walls), ring_does_not_close
    ).findings
    assert "a.right – b.left 90.00°, b.right – c.left 36.87°, c.right – a.left 53.13°" in found.hint
    assert triangle(30, 40, 80) is None


def test_a_side_that_is_longer_than_the_others_together_closes_at_no_corner(make: SimpleNamespace) -> None:
    joins = [make.join(f"{a}.right", f"{b}.left", corner=60.0) for a, b in ("ab", "bc", "ca")]
    plan = make.panels("t", {"a": "w100", "b": "w40", "c": "w50"}, "a.bottom", *joins)
    walls = [make.wall(f"w{size}", size, 40) for size in (100, 40, 50)]
    (found,) = ring_does_not_close.run(
        make.assembled(make.design(panels=(plan,)), *walls), ring_does_not_close
    ).findings
    assert "40.0 mm + 50.0 mm do not reach along the longest side, 100.0 mm" in found.hint


def test_the_angle_that_closes_a_spire_is_said(make: SimpleNamespace) -> None:
    """Faces of a regular tetrahedron meet at acos(1/3) = 70.53°, those of an octahedron at acos(-1/3) = 109.47°."""
    facet = make.polygon("facet", [(0, 0), (60, 0), (30, 60 * 0.75**0.5)], ("bottom", "right", "left"))
    for names, right in (("abc", 70.5288), ("abcd", 109.4712)):
        joins = [
            make.join(f"{a}.right", f"{b}.left", corner=80.0) for a, b in zip(names, names[1:] + names[:1], strict=True)
        ]
        plan = make.panels("s", dict.fromkeys(names, "facet"), "a.bottom", *joins)
        found, *_ = ring_does_not_close.run(
            make.assembled(make.design(panels=(plan,)), facet), ring_does_not_close
        ).findings
        assert f"{len(names)} panels that taper by 60.00° close at corners of {right}°" in found.hint


@pytest.mark.parametrize(
    ("panels", "taper", "corner"), [(3, 60, 70.5288), (5, 60, 138.1897), (4, 1e-6, 90.0), (6, 60, None)]
)
def test_corners_of_spires_are_those_of_the_regular_solids(panels: int, taper: float, corner: float | None) -> None:
    """Tetrahedron, icosahedron, a square tube; six even triangles lie flat."""
    assert spire_corner(panels, taper) == (corner if corner is None else pytest.approx(corner, abs=1e-4))


@pytest.mark.parametrize(
    ("corner", "taper", "panels"),
    [(120.0, 0.0, 6), (135.0, 0.0, 8), (70.5288, 60, 3), (138.1897, 60, 5), (100.0, 0.0, None), (120.0, None, None)],
)
def test_a_corner_closes_in_one_number_of_panels(corner: float, taper: float | None, panels: int | None) -> None:
    """Prisms of 6 and 8 walls, a tetrahedron and the cap of an icosahedron; no prism has corners of 100°."""
    assert panels_of(corner, taper) == panels


FLOORED = """
sizes: {board: 5 mm}
parts:
  side: {name: Side, board: foam, shape: wall_panel, with: {width: 120 mm, height: 60 mm}}
  end: {name: End, board: foam, shape: wall_panel, with: {width: 80 mm, height: 60 mm}}
  floor: {name: Floor, board: foam, shape: wall_panel, with: {width: 120 mm, height: 80 mm}}
assembly:
  box:
    panels: {front: side, back: side, left: end, right: end, floor: floor}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, right.left], joint: butt, runs_through: front}
      - {edges: [right.right, back.left], joint: butt, runs_through: back}
      - {edges: [back.right, left.left], joint: butt, runs_through: back}
      - {edges: [left.right, front.left], joint: butt, runs_through: front}
      - {edges: [front.bottom, floor.bottom], joint: butt, runs_through: front, inset: 5 mm}
      - {edges: [back.bottom, floor.top], joint: butt, runs_through: back, inset: 5 mm}
      - {edges: [floor.LEFT, left.bottom], joint: butt, runs_through: left, inset: 5 mm}
      - {edges: [floor.RIGHT, right.bottom], joint: butt, runs_through: right, inset: 5 mm}
"""


def test_a_floor_with_two_edges_exchanged_is_cured_by_their_exchange(assembled: Callable) -> None:
    subject = assembled(FLOORED.replace("LEFT", "left").replace("RIGHT", "right"))
    findings = ring_does_not_close.run(subject, ring_does_not_close).findings
    said = "[front.bottom, floor.top] and [back.bottom, floor.bottom]"
    assert {found.hint for found in findings} == {
        f"two edges of floor look exchanged: with edges: {said} all joins meet"
    }
    cured = FLOORED.replace("LEFT", "left").replace("RIGHT", "right")
    cured = (
        cured.replace("floor.bottom]", "floor.TOP]")
        .replace("floor.top]", "floor.bottom]")
        .replace("floor.TOP]", "floor.top]")
    )
    assert ring_does_not_close.run(assembled(cured), ring_does_not_close).findings == ()
