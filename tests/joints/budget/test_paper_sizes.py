"""The rule by which each kind of size is cut from a print at another scale, worked out by hand beside it."""

from dataclasses import replace
from types import SimpleNamespace

import pytest
import shapely

from publisher.basics import LineKind, Purpose
from publisher.design import Fact
from publisher.geometry import Mark, Opening, Part
from publisher.joints.assembled import Assembled
from publisher.joints.budget.paper_sizes import PaperSize, size_on_paper

A = 0.4  # mm: the pencil
SCALE = 0.98


def cut(size: PaperSize) -> float:
    """The size (mm) that is cut at the scale, by the record."""
    return SCALE * (size.printed + size.grown) - size.grown + size.boards * size.thickness


def traced_at(ring: shapely.Geometry) -> shapely.Geometry:
    """What is cut: the template drawn the pencil's width inside the piece, printed at the scale, and traced round."""
    template = ring.buffer(-A, join_style="mitre")
    printed = shapely.affinity.scale(template, SCALE, SCALE, origin=(0, 0))
    return printed.buffer(A, join_style="mitre")


def fact_of(subject: Assembled, name: str) -> Fact:
    fact = subject.fact(name)
    assert fact is not None, name
    return fact


def traced(part: Part) -> Part:
    return replace(part, trace_allowance=A)


def on_paper(subject: Assembled, name: str) -> PaperSize:
    size = size_on_paper(subject, fact_of(subject, name))
    assert size is not None
    return size


def test_outlines_and_openings_of_a_traced_part_against_the_traced_piece(make: SimpleNamespace) -> None:
    """w 60, opening 20 wide, both by the real detour: inside the piece, scaled, outside again."""
    hole = tuple(reversed(((20.0, 10.0), (40.0, 10.0), (40.0, 30.0), (20.0, 30.0))))
    wall = make.wall("w", 60, 40)
    opening = Opening("gate", "window", make.hole(hole, "gate.side"), 20.0, 20.0, 10.0, 30.0)
    part = traced(make.part("w", wall.outline.outer, holes=(opening.ring,), openings=(opening,), edges=wall.edges))
    subject = make.assembled(make.design(), part)
    piece = traced_at(shapely.Polygon(wall.outline.outer.points, [hole]))
    left, bottom, right, top = piece.bounds
    hole_left, hole_bottom, hole_right, hole_top = shapely.Polygon(piece.interiors[0]).bounds
    assert cut(on_paper(subject, "w.width")) == pytest.approx(right - left)
    assert cut(on_paper(subject, "w.height")) == pytest.approx(top - bottom)
    assert cut(on_paper(subject, "w.gate.width")) == pytest.approx(hole_right - hole_left)
    assert cut(on_paper(subject, "w.gate.height")) == pytest.approx(hole_top - hole_bottom)


def test_a_tread_under_the_next_layer_is_moved_alike_on_both_sides(make: SimpleNamespace) -> None:
    """The bare strip of a terrace, 20 wide, and the top of the pile, 60 wide."""
    low, high = (traced(make.rectangle(n, 0, 0, w, 60)) for n, w in (("low", 80.0), ("top", 60.0)))
    pile = make.stack("pile", ("low", 1, 0.0, (0, 0)), ("top", 1, 0.0, (0, 0)))
    subject = make.assembled(make.design(stacks=(pile,)), low, high)
    tread = on_paper(subject, "pile.base_that_stands")
    below, above = (traced_at(shapely.Polygon(p.outline.outer.points)).bounds[2] for p in (low, high))
    assert tread.printed == pytest.approx(20.0, abs=0.05)
    assert below - above == pytest.approx(
        SCALE * 20.0
    )  # both right edges lie the pencil's width outside their templates
    assert cut(tread) == pytest.approx(SCALE * tread.printed)
    alone = make.assembled(make.design(stacks=(make.stack("pile", ("top", 1, 0.0, (0, 0))),)), high)
    left, _, right, _ = traced_at(shapely.Polygon(high.outline.outer.points)).bounds
    assert cut(on_paper(alone, "pile.base_that_stands")) == pytest.approx(right - left, abs=0.05)


@pytest.mark.parametrize(
    ("joint", "printed", "boards"),
    [
        ("butt", 100.0, 0.0),  # the side walls butt on front and back: they are as long as the room
        ("mitre", 110.0, -2.0),  # the side walls are as long as the house
        ("tab_and_slot", 100.0, 0.0),
    ],
)
def test_the_room_inside_walls_is_printed_only_as_far_as_the_walls_beside_it(
    joint: str, printed: float, boards: float, make: SimpleNamespace
) -> None:
    mitre = joint == "mitre"
    side = make.wall("side", printed, 40)
    if joint == "tab_and_slot":
        side = make.wall("side", 100.0, 40)
    plan = make.panels(
        "hut", {"front": "gable", "right": "side", "back": "gable", "left": "side"}, "front.bottom",
        make.join("front.right", "right.left", joint), make.join("back.left", "right.right", joint),
        make.join("back.right", "left.left", joint), make.join("front.left", "left.right", joint),
    )  # fmt: skip
    assembled = make.assembled(make.design(panels=(plan,)), make.wall("gable", 80, 40), side)
    room = on_paper(assembled, "hut.inside_depth")
    assert room.printed + room.boards * room.thickness == pytest.approx(fact_of(assembled, "hut.inside_depth").value)
    assert room.boards == (boards if mitre else 0.0)
    if mitre:
        assert room.printed == pytest.approx(110.0)


def test_layers_are_boards_and_no_paper(make: SimpleNamespace) -> None:
    stair = make.stack("s", ("step", 6, 20.0, (0, 0)))
    subject = make.assembled(make.design(stacks=(stair,)), make.stair_layer())
    height = on_paper(subject, "s.height")
    assert (height.printed, height.boards, height.board, height.thickness) == (0.0, 6.0, "foam", 5.0)
    assert on_paper(subject, "step.thickness").boards == 1.0
    assert size_on_paper(subject, fact_of(subject, "s.mass")) is None


def test_holes_of_shapes_and_pockets_have_a_width(make: SimpleNamespace) -> None:
    """A bore is traced round from inside; the line of a pocket is pricked through and keeps its printed width."""
    rim = make.disc(radius=40.0).outline.outer
    bore = make.ring(("bore", make.arc((0.0, 0.0), 3.1, 0, 360), (0.0, 0.0), 3.1)).reversed()
    magnet = make.ring(("magnet.rim", make.arc((20.0, 0.0), 4.05, 0, 360), (20.0, 0.0), 4.05))
    mark = Mark(LineKind.SCORE, Purpose.POCKET, magnet, "magnet", "2 mm deep")
    part = traced(make.part("pier", rim, holes=(bore,), marks=(mark,)))
    subject = make.assembled(make.design(), part)
    hole, pocket = on_paper(subject, "pier.bore.width"), on_paper(subject, "pier.magnet.width")
    assert (hole.printed, hole.grown) == (pytest.approx(6.2), 0.8)
    assert (pocket.printed, pocket.grown) == (pytest.approx(8.1, abs=0.01), 0.0)
