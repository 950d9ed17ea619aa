"""Parts that lie upon themselves, and the letters of joints that no buyer can mistake."""

from dataclasses import replace

import pytest

from publisher.basics import LineKind, Place, Purpose, polyline
from publisher.geometry import Edge, Lap, Mark, Part, Region
from publisher.geometry.making.alike_ends import _relettered, end_swaps

RECTANGLE = ((0.0, 0.0), (80.0, 0.0), (80.0, 50.0), (0.0, 50.0))
SQUARE = ((0.0, 0.0), (60.0, 0.0), (60.0, 60.0), (0.0, 60.0))
SLANTED = ((0.0, 0.0), (80.0, 0.0), (100.0, 50.0), (20.0, 50.0))
TRAPEZIUM = ((0.0, 0.0), (80.0, 0.0), (60.0, 50.0), (20.0, 50.0))
NAMES = ("bottom", "right", "top", "left")


def part(
    ring: tuple[tuple[float, float], ...],
    *holes: tuple[tuple[float, float], ...],
    letters: str = "bottom right top left",
) -> Part:
    """A part of 5 mm board with its four edges, each with a letter, or those named alone."""
    ends = [*ring, ring[0]]
    edges = tuple(
        Edge(name, a, b, a, b, matches=(name[0],) if name in letters.split() else ())
        for name, a, b in zip(NAMES, ends, ends[1:], strict=False)
    )
    region = Region(polyline(ring, True), tuple(polyline(hole[::-1], True) for hole in holes))
    return Part(
        "wall", "A", "Wall", "foam", 5.0, "rectangle", region, region, (), (), edges, 1, 0, 0, "", 0.0, Place("spec.yaml")
    )  # fmt: skip


def ways(one: Part) -> list[dict[str, str]]:
    return sorted((dict(swap.edges) for swap in end_swaps(one)), key=str)


def test_a_rectangle_lies_upon_itself_turned_and_turned_over() -> None:
    assert {tuple(sorted(way.items())) for way in ways(part(RECTANGLE))} == {
        (("bottom", "bottom"), ("left", "right"), ("right", "left"), ("top", "top")),
        (("bottom", "top"), ("left", "left"), ("right", "right"), ("top", "bottom")),
        (("bottom", "top"), ("left", "right"), ("right", "left"), ("top", "bottom")),
    }


def test_a_square_lies_upon_itself_in_seven_more_ways() -> None:
    assert len(ways(part(SQUARE))) == 7


@pytest.mark.parametrize(
    ("ring", "way"),
    [
        (SLANTED, {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}),
        (TRAPEZIUM, {"left": "right", "right": "left", "top": "top", "bottom": "bottom"}),
    ],
)
def test_turned_or_turned_over_alone(ring: tuple[tuple[float, float], ...], way: dict[str, str]) -> None:
    assert ways(part(ring)) == [way]


def test_an_opening_off_the_middle_tells_the_ends_apart() -> None:
    low = ((30.0, 10.0), (50.0, 10.0), (50.0, 20.0), (30.0, 20.0))
    assert ways(part(RECTANGLE, low)) == [{"left": "right", "right": "left", "top": "top", "bottom": "bottom"}]
    aside = ((10.0, 10.0), (30.0, 10.0), (30.0, 20.0), (10.0, 20.0))
    assert ways(part(RECTANGLE, aside)) == []


def test_an_edge_that_is_worked_otherwise_is_another() -> None:
    one = part(RECTANGLE, letters="left right")
    assert {way["left"] for way in ways(one)} == {"left", "right"}
    edges = tuple(replace(edge, bevel=45.0) if edge.name == "left" else edge for edge in one.edges)
    assert {way["left"] for way in ways(replace(one, edges=edges))} == {"left"}


def test_slots_across_an_edge_go_with_it() -> None:
    def crossed(*at: float) -> Part:
        one = part(RECTANGLE, letters="top")
        laps = tuple(Lap(x, (x, 25.0), 50.0, 5.3, ("x",)) for x in at)
        return replace(one, edges=tuple(replace(e, laps=laps) if e.name == "top" else e for e in one.edges))

    (swap,) = [swap for swap in end_swaps(crossed(20.0, 60.0)) if dict(swap.edges) == {"top": "top"}]
    assert swap.laps == ((("top", 20.0), ("top", 60.0)), (("top", 60.0), ("top", 20.0)))
    assert not [swap for swap in end_swaps(crossed(20.0, 50.0)) if dict(swap.edges) == {"top": "top"}]


def test_without_letters_nothing_is_looked_for() -> None:
    assert ways(part(RECTANGLE, letters="")) == []


def test_a_part_takes_its_new_letters_once_at_each_joint() -> None:
    one = part(RECTANGLE, letters="left right")
    spots = (("left", "l", 5.0, 25.0), ("left", "x", 5.0, 33.0), ("right", "r", 75.0, 25.0), ("right", "n", 75.0, 33.0))
    marks = tuple(
        Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((x, y),)), name=edge, text=text) for edge, text, x, y in spots
    )
    seat = Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((40.0, 25.0),)), name="seat", text="E")
    made = _relettered(replace(one, marks=(*marks, seat)), {"l": "a", "x": "a", "r": "a", "n": ""})
    assert [(mark.name, mark.text) for mark in made.marks] == [("left", "a"), ("right", "a"), ("seat", "E")]
    assert [edge.matches for edge in made.edges if edge.name in ("left", "right")] == [("a",), ("a",)]
