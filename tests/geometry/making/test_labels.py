"""Words beside edges stand in the part, clear of cuts and of each other."""

from math import dist

import shapely

from publisher.basics import Purpose
from publisher.geometry import Edge, Mark
from publisher.geometry.making.joint_places import JointPlace
from publisher.geometry.making.labels import WORD_CLEAR, WORDS_APART, edge_words


def edge(name: str, *ends: tuple[float, float], matches: tuple[str, ...] = (), bevel: float = 0.0) -> Edge:
    return Edge(name, ends[0], ends[1], ends[0], ends[1], bevel=bevel, matches=matches)


def words(edges: tuple[Edge, ...], body: shapely.Polygon, board: float = 5.0) -> tuple[Mark, ...]:
    """The words of edges that are joined at the edge itself."""
    places = [
        JointPlace(e.name, e.nominal_start, e.nominal_end, 0.0, e.matches)
        for e in edges
        if e.matches and e.centre is None
    ]
    return edge_words(edges, places, body, board)


def test_words_find_a_free_place() -> None:
    window = shapely.box(30.0, 3.0, 70.0, 40.0)  # where the first choice would be
    body = shapely.box(0.0, 0.0, 100.0, 60.0).difference(window)
    edges = (
        edge("bottom", (0.0, 0.0), (100.0, 0.0), matches=("a", "b", "c"), bevel=45.0),
        edge("right", (100.0, 0.0), (100.0, 60.0), matches=("d",)),
        Edge("rim", (0.0, 0.0), (0.0, 0.0), (0.0, 0.0), (0.0, 0.0), matches=("x",), centre=(0.0, 0.0), radius=5.0),
    )
    marks = words(edges, body)
    said = [m for m in marks if m.text]
    bevel = "45°"
    assert [m.text for m in said] == ["a", "b", "c", "d", bevel]
    points = [shapely.Point(m.path.points[0]) for m in said]
    assert all(body.contains(p) and body.boundary.distance(p) >= WORD_CLEAR for p in points)
    places = [m.path.points[0] for m in said]
    assert min(dist(a, b) for i, a in enumerate(places) for b in places[i + 1 :]) >= WORDS_APART
    (line,) = [m for m in marks if m.purpose is Purpose.BEVEL and not m.text]
    assert shapely.LineString(line.path.points).equals_exact(shapely.LineString([(0.0, 5.0), (100.0, 5.0)]), 1e-9)


def test_a_part_without_a_free_place_still_gets_its_letters_inside() -> None:
    body = shapely.box(0.0, 0.0, 4.0, 4.0)
    (mark,) = words((edge("bottom", (0.0, 0.0), (4.0, 0.0), matches=("a",)),), body)
    assert body.contains(shapely.Point(mark.path.points[0]))


def test_letters_of_a_joint_stand_side_by_side_at_its_middle() -> None:
    body = shapely.box(0.0, 0.0, 100.0, 60.0)
    marks = words((edge("bottom", (0.0, 0.0), (100.0, 0.0), matches=("a", "b")),), body)
    assert [m.path.points[0] for m in marks] == [(46.0, 5.0), (54.0, 5.0)]


def test_letters_of_an_inset_joint_stand_where_the_mate_stands() -> None:
    """Between the slots and over the mate's end, not at the panel's edge; in the same order as on the mate."""
    slots = [shapely.box(10.0, y, 15.0, y + 20.0) for y in (5.0, 55.0)]
    body = shapely.box(0.0, 0.0, 100.0, 80.0).difference(shapely.union_all(slots))
    left = edge("left", (0.0, 80.0), (0.0, 0.0), matches=("a", "b"))
    for forward, order in ((True, (44.0, 36.0)), (False, (36.0, 44.0))):
        place = JointPlace("left", (10.0, 80.0), (10.0, 0.0), 5.0, ("a", "b"), forward)
        marks = edge_words((left,), (place,), body, 5.0)
        assert [m.text for m in marks] == ["a", "b"]
        assert [m.path.points[0][0] for m in marks] == [12.5, 12.5]
        assert tuple(m.path.points[0][1] for m in marks) == order


def test_a_short_edge_and_a_longer_inside_face_are_said_in_their_own_words() -> None:
    body = shapely.box(0.0, 0.0, 40.0, 60.0)
    (angle, _) = words((edge("bottom", (0.0, 0.0), (40.0, 0.0), bevel=30.746),), body)
    assert angle.text == "30.75°", "in tenths a ring of twelve facets stood 0.45 mm off"
    marks = words((edge("bottom", (0.0, 0.0), (40.0, 0.0), bevel=30.0),), body)
    assert [m.text for m in marks if m.text] == ["30°"]
    wide = shapely.box(0.0, 0.0, 140.0, 60.0)
    marks = words((edge("bottom", (0.0, 0.0), (140.0, 0.0), bevel=-30.0),), wide)
    assert [m.text for m in marks] == ["30° out"]


def test_a_joint_without_a_letter_takes_no_place() -> None:
    place = JointPlace("bottom", (0.0, 0.0), (100.0, 0.0), 0.0, ())
    assert edge_words((), [place], shapely.box(0.0, 0.0, 100.0, 60.0), 5.0) == ()
