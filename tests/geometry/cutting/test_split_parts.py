"""Pieces of split parts: together the whole; edges, openings and marks that are left; letters at the seams."""

from collections.abc import Callable
from dataclasses import replace
from types import SimpleNamespace

import pytest
import shapely

from publisher.basics import Finding, Place, Purpose
from publisher.design import CombineStep, EdgeTreatment, OpeningPlan, PartPlan, SlotRow, SplitPlan, SurfacePlan
from publisher.geometry import PLATE, Part, area, cut_pieces, polygon
from publisher.geometry.cutting import split_parts as pieces

HERE = Place("spec.yaml", 30, 5)
WALL: dict[str, float | str] = {"width": 900.0, "height": 100.0}
Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Cut = Callable[..., tuple[Part, ...]]


def split(at: float, plate: float = 0.0, step: float = 0.0, start: str = "left") -> SplitPlan:
    return SplitPlan(at, "bottom" if start == "bottom" else "left", plate, step, HERE)


def pieces_of(part: Part, *splits: SplitPlan) -> tuple[tuple[Part, ...], tuple[Finding, ...]]:
    plan = SimpleNamespace(id=part.id, splits=splits, printed="whole")
    return cut_pieces(SimpleNamespace(parts=(plan,), folds=(), panels=()), (part,))  # type: ignore[arg-type]


def good(part: Part, *splits: SplitPlan) -> tuple[Part, ...]:
    made, found = pieces_of(part, *splits)
    assert found == ()
    return made


def test_a_part_without_a_seam_stays(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("wall_panel", WALL))
    assert good(part) == (part,)


@pytest.mark.parametrize("step", [0.0, 20.0])
@pytest.mark.parametrize(
    ("shape", "sizes", "ats"),
    [
        ("wall_panel", WALL, (300.0, 600.0)),
        ("disc", {"radius": 200.0}, (130.0, 270.0)),
        ("disc", {"radius": 90.0}, (60.0,)),
    ],
)
def test_pieces_are_the_whole(
    plan: Plan, drawn: Draw, shape: str, sizes: dict[str, float | str], ats: tuple[float, ...], step: float
) -> None:
    """Areas add up to 1e-6 mm², arcs as arcs; the pieces lie beside each other and cover the whole."""
    part = drawn(plan(shape, sizes))
    made = good(part, *(split(at, step=step) for at in reversed(ats)))
    assert sum(area(piece.outline) for piece in made) == pytest.approx(area(part.outline), abs=1e-6)
    bodies = [polygon(piece.outline) for piece in made]
    whole, sagittas = polygon(part.outline), polygon(part.outline).exterior.length * 0.005
    assert shapely.union_all(bodies, grid_size=1e-6).symmetric_difference(whole).area < sagittas
    assert sum(a.intersection(b).area for i, a in enumerate(bodies) for b in bodies[:i]) < 1e-6
    lefts = [body.bounds[0] for body in bodies]
    assert lefts == sorted(lefts)
    assert [piece.letter for piece in made] == [f"A{n}" for n in range(1, len(ats) + 2)]
    assert [piece.id for piece in made] == [f"p_{n}" for n in range(1, len(ats) + 2)]
    assert {(piece.whole, piece.count, piece.spare) for piece in made} == {("p", 2, 1)}


def test_templates_have_the_trace_allowance(plan: Plan, drawn: Draw) -> None:
    for piece in good(drawn(plan("wall_panel", WALL, trace_allowance=0.4)), split(450.0)):
        left, bottom, right, top = polygon(piece.outline).bounds
        assert polygon(piece.template).bounds == pytest.approx((left + 0.4, bottom + 0.4, right - 0.4, top - 0.4))


def test_edges_openings_and_slots_that_are_left(
    plan: Plan, drawn: Draw, opening: Callable[..., OpeningPlan], treatment: Callable[..., EdgeTreatment]
) -> None:
    door = opening("door", "door", width=30.0, height=60.0, centre=100.0)
    window = opening("window", "window", width=30.0, height=30.0, centre=800.0, sill=30.0)
    row = treatment("left", slots=(SlotRow(2, 20.0, 5.0, 0.3),), matches=("a",))
    one, two = good(drawn(plan("wall_panel", WALL, (door, window), (row,))), split(450.0))
    assert ([o.name for o in one.openings], [o.name for o in two.openings]) == (["door"], ["window"])
    assert (len(one.outline.holes), len(two.outline.holes)) == (2, 1)
    assert {e.name for e in one.edges} == {"bottom", "top", "left"}
    assert {e.name for e in two.edges} == {"bottom", "top", "right"}
    bottom = two.edge("bottom")
    assert bottom is not None and (bottom.start, bottom.end) == ((450.0, 0.0), (900.0, 0.0))


def test_both_sides_of_a_seam_carry_one_letter_and_name_each_other(
    plan: Plan, drawn: Draw, treatment: Callable[..., EdgeTreatment]
) -> None:
    """The letter is not one that a join has."""
    part = drawn(
        plan("wall_panel", WALL, (), (treatment("left", 5.0, matches=("a",)), treatment("right", matches=("b",))))
    )
    one, two, three = good(part, split(300.0), split(600.0, step=20.0))
    said = [
        [(m.text, m.name) for m in piece.marks if m.purpose in (Purpose.MATCH, Purpose.NAME)]
        for piece in (one, two, three)
    ]
    assert sorted(said[0]) == [("a", "left"), ("c", "seam"), ("glue to A2", "seam")]
    assert sorted(said[1]) == [("c", "seam"), ("d", "seam"), ("glue to A1", "seam"), ("glue to A3", "seam")]
    assert sorted(said[2]) == [("b", "right"), ("d", "seam"), ("glue to A2", "seam")]
    heights = [m.path.points[0][1] for piece in (one, two) for m in piece.marks if m.text == "c"]
    assert heights[0] == heights[1]
    for piece in (one, two, three):
        body = polygon(piece.template)
        assert all(body.contains(shapely.Point(m.path.points[0])) for m in piece.marks if m.name == "seam")


def test_a_pattern_is_cut_at_the_seam(plan: Plan, drawn: Draw, surface: Callable[..., SurfacePlan]) -> None:
    """No line is lost, and none reaches into the other piece."""
    part = drawn(plan("wall_panel", WALL, surface=surface("brick", length=40.0, height=20.0)))
    made = good(part, split(450.0))

    def lines(parts: tuple[Part, ...]) -> list[float]:
        return [
            shapely.LineString(m.path.points).length for p in parts for m in p.marks if m.purpose is Purpose.SURFACE
        ]

    assert sum(lines(made)) == pytest.approx(sum(lines((part,))), rel=1e-9)
    for piece in made:
        grown = polygon(piece.template).buffer(1e-6)
        assert all(grown.covers(shapely.LineString(m.path.points)) for m in piece.marks if m.purpose is Purpose.SURFACE)


@pytest.mark.keeps("geometry/split-place", "geometry/split-outside")
def test_a_grid_of_seams(plan: Plan, drawn: Draw) -> None:
    """Seams both ways: four pieces, each glued to two others; the first seam's plate runs through, the others end at it."""
    part = drawn(plan("wall_panel", {"width": 900.0, "height": 900.0}))
    made = good(part, split(450.0, 60.0), split(450.0, 40.0, start="bottom"))
    parts, plates = [p for p in made if p.shape != PLATE], [p for p in made if p.shape == PLATE]
    assert [p.letter for p in made] == ["A1", "A2", "A3", "A4", "A5", "A6", "A7"]
    assert sorted(m.text for m in parts[0].marks if m.purpose is Purpose.NAME) == ["glue to A2", "glue to A3"]
    sizes = [polygon(plate.outline).bounds[2:] for plate in plates]
    assert sizes == [pytest.approx((60.0, 890.0)), pytest.approx((415.0, 40.0)), pytest.approx((415.0, 40.0))]
    assert plates[0].name == "Plate behind A1, A2, A3 and A4"
    assert sum(area(p.outline) for p in parts) == pytest.approx(810_000.0, abs=1e-6)


@pytest.mark.breaks("geometry/split-place")
def test_seams_that_cannot_be(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("wall_panel", WALL))
    for splits, check in (
        ((split(950.0),), "geometry/split-outside"),
        ((split(5.0),), "geometry/split-place"),
        ((split(300.0), split(305.0)), "geometry/split-place"),
    ):
        made, (finding,) = pieces_of(part, *splits)
        assert made == () and finding.check == check


def test_an_edge_in_two_copies_keeps_its_name(plan: Plan, drawn: Draw) -> None:
    """A combined shape's second edge may be the only one on a piece; its run has the edge's name there too."""
    step = CombineStep("repeat", HERE, called="repeat1", count=2, pitch=300.0, along="bottom")
    part = drawn(replace(plan("wall_panel", {"width": 300.0, "height": 80.0}), combine=(step,)))
    for piece in good(part, split(300.0)):
        names = {run.name for run in piece.outline.outer.edges}
        assert {edge.name for edge in piece.edges} <= names


def test_each_piece_says_what_is_cut_at_its_edges(
    plan: Plan, drawn: Draw, treatment: Callable[..., EdgeTreatment]
) -> None:
    """A bevelled edge that is cut in two keeps its angle, its words and its dotted line on both pieces."""
    made = good(drawn(plan("wall_panel", WALL, (), (treatment("top", bevel=30.0),))), split(450.0))
    for piece in made:
        edge = piece.edge("top")
        assert edge is not None and edge.bevel == 30.0
        bevels = [m for m in piece.marks if m.purpose is Purpose.BEVEL]
        assert [m.text == "30°" for m in bevels if m.text] == [True]
        (line,) = [m for m in bevels if not m.text]
        assert shapely.LineString(line.path.points).length == pytest.approx(450.0)
        assert polygon(piece.template).contains(shapely.Point(next(m.path.points[0] for m in bevels if m.text)))


def test_trouble_in_the_library_is_a_finding(plan: Plan, drawn: Draw, monkeypatch: pytest.MonkeyPatch) -> None:
    def trouble(*_: object) -> None:
        raise shapely.errors.GEOSException("side location conflict")

    monkeypatch.setattr(pieces, "cut_in_two", trouble)
    made, (finding,) = pieces_of(drawn(plan("wall_panel", WALL)), split(450.0))
    assert made == () and (finding.check, finding.place) == ("geometry/could-not-be-drawn", HERE)
