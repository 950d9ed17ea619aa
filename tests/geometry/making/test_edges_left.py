"""Which named edges are left after a boolean."""

from publisher.basics import Line, Path
from publisher.geometry.making.edges_left import surviving_edges
from publisher.geometry.model import Edge
from publisher.geometry.registry import Shape


def edge(name: str, start: tuple[float, float], end: tuple[float, float]) -> Edge:
    return Edge(name, start, end, start, end)


def chain(*corners: tuple[float, float, str]) -> Path:
    ends = (*corners[1:], corners[0])
    return Path(tuple(Line(name, (x, y), end[:2]) for (x, y, name), end in zip(corners, ends, strict=True)))


OWN = Shape(Path(()), (edge("bottom", (0.0, 0.0), (10.0, 0.0)), edge("right", (10.0, 0.0), (10.0, 8.0))))


def test_a_gap_in_the_middle_and_a_shorter_end() -> None:
    outer = chain(
        (1.0, 0.0, "bottom"), (4.0, 0.0, "cut"), (4.0, 2.0, "cut"), (6.0, 2.0, "cut"), (6.0, 0.0, "bottom"),
        (10.0, 0.0, "right"), (10.0, 8.0, "top"), (1.0, 8.0, "left"),
    )  # fmt: skip
    _, edges = surviving_edges(outer, [OWN])
    bottom, right = edges
    assert (bottom.name, bottom.start, bottom.end) == ("bottom", (1.0, 0.0), (10.0, 0.0))
    assert (right.nominal_start, right.nominal_end) == ((10.0, 0.0), (10.0, 8.0))


def test_an_edge_that_is_gone_and_the_only_copy_of_its_name() -> None:
    copy = Shape(Path(()), (edge("right_2", (30.0, 0.0), (30.0, 8.0)),))
    outer = chain((0.0, 0.0, "bottom"), (30.0, 0.0, "right_2"), (30.0, 8.0, "top"), (0.0, 8.0, "left"))
    named, edges = surviving_edges(outer, [OWN, copy])
    assert [(e.name, e.start) for e in edges] == [("bottom", (0.0, 0.0)), ("right", (30.0, 0.0))]
    assert edges[0].end == (30.0, 0.0)  # it goes on in line
    assert [edge.name for edge in named.edges] == ["bottom", "right", "top", "left"]


def test_two_copies_keep_their_names() -> None:
    copies = [Shape(Path(()), (edge(f"right_{k}", (30.0 * k, 0.0), (30.0 * k, 8.0)),)) for k in (2, 3)]
    outer = chain(
        (0.0, 0.0, "bottom"), (60.0, 0.0, "right_2"), (60.0, 8.0, "x"), (90.0, 0.0, "right_3"), (90.0, 8.0, "x")
    )
    _, edges = surviving_edges(outer, [OWN, *copies])
    assert [e.name for e in edges] == ["bottom", "right_2", "right_3"]
