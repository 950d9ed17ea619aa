"""What all shapes share: registered sizes, edges from paths, the choice of one size out of two."""

import pytest

from publisher.basics import Arc, Line, Path, Place
from publisher.design import LONGEST_MM, Parameter
from publisher.geometry.registry.entry import angle, choice, count, edges_of, just_one, length, nothing_to_check
from publisher.geometry.registry.given_parameters import Values

HERE = Place("spec.yaml", 7, 3)
BOTTOM = Line("bottom", (0.0, 0.0), (50.0, 0.0))
RIM = (
    Arc("rim", (50.0, 0.0), (0.0, 50.0), (0.0, 0.0), 50.0, 90.0),
    Arc("rim", (0.0, 50.0), (-50.0, 0.0), (0.0, 0.0), 50.0, 90.0),
)


def values(**given: float) -> Values:
    infos = (length("rise", "height", "from the pitch"), angle("pitch", "slope", 5.0, 85.0, "from the rise"))
    named = tuple(
        Parameter(name, value, str(value), Place("spec.yaml", 10 + i, 5))
        for i, (name, value) in enumerate(given.items())
    )
    return Values("roof", HERE, named, infos)


def test_sizes_register_with_kind_and_range() -> None:
    told = [
        length("width", "w"), angle("sweep", "s", 1.0, 359.0), count("steps", "n", 2, 40, 8), choice("face", "f", ("in", "out")),
    ]  # fmt: skip
    assert [(p.kind, p.default) for p in told] == [("length", None), ("angle", None), ("count", 8), ("choice", "in")]
    assert [(p.least, p.most) for p in told[:3]] == [(1.0, LONGEST_MM), (1.0, 359.0), (2, 40)]
    assert told[3].choices == ("in", "out")
    assert choice("face", "f", ("in", "out"), "out").default == "out"


def test_an_edge_runs_from_the_start_of_its_first_piece_to_the_end_of_its_last() -> None:
    bottom, rim = edges_of(Path((BOTTOM, *RIM)), ("bottom", "rim"), inside=("rim",), bevels={"rim": 30.0})
    assert (bottom.start, bottom.end, bottom.face, bottom.bevel) == ((0.0, 0.0), (50.0, 0.0), "outside", 0.0)
    assert (rim.start, rim.end, rim.face, rim.bevel) == ((50.0, 0.0), (-50.0, 0.0), "inside", 30.0)
    assert (bottom.centre, bottom.radius) == (None, 0.0)
    assert (rim.centre, rim.radius) == ((0.0, 0.0), 50.0)
    assert (rim.nominal_start, rim.nominal_end) == (rim.start, rim.end)


def test_edges_come_in_the_order_of_their_names() -> None:
    assert [edge.name for edge in edges_of(Path((BOTTOM, *RIM)), ("rim", "bottom"))] == ["rim", "bottom"]


@pytest.mark.parametrize("given", [{"rise": 40.0}, {"pitch": 45.0}])
def test_one_of_two_sizes_is_enough(given: dict[str, float]) -> None:
    assert list(just_one(values(**given), "rise", "pitch")) == []


@pytest.mark.parametrize(
    ("given", "line", "words"),
    [
        ({"rise": 40.0, "pitch": 45.0}, 10, "rise and pitch are both given"),
        ({}, 7, "neither rise nor pitch is given"),
    ],
)
def test_both_or_neither_is_a_finding_at_its_place(given: dict[str, float], line: int, words: str) -> None:
    (finding,) = just_one(values(**given), "rise", "pitch")
    assert words in finding.message
    assert finding.place is not None
    assert finding.place.line == line
    assert "just one of them" in finding.hint


def test_a_shape_whose_ranges_say_all_has_nothing_to_check() -> None:
    assert nothing_to_check(values()) == ()
