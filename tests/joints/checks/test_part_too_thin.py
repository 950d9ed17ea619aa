from collections.abc import Callable
from dataclasses import replace
from types import SimpleNamespace

import pytest
import shapely

from publisher.basics import polyline
from publisher.geometry import Edge, Opening, Part
from publisher.joints.checks.part_too_thin import part_too_thin

ID = "joints/part-too-thin"


def wall(make: SimpleNamespace, *windows: tuple[float, float, float, float]) -> Part:
    """A wall of 100 × 80 mm with windows (left, bottom, right, top)."""
    holes = [
        make.hole(((x0, y0), (x0, y1), (x1, y1), (x1, y0)), f"window_{i}") for i, (x0, y0, x1, y1) in enumerate(windows)
    ]
    openings = tuple(
        Opening(f"window_{i}", "window", ring, x1 - x0, y1 - y0, y0, (x0 + x1) / 2)
        for i, (ring, (x0, y0, x1, y1)) in enumerate(zip(holes, windows, strict=True))
    )
    plain = make.wall("wall", 100, 80)
    return make.part("wall", plain.outline.outer, holes=tuple(holes), openings=openings, edges=plain.edges)


def found(make: SimpleNamespace, part: Part, faces: str = "bare") -> list[tuple[float | None, float | None]]:
    subject = make.assembled(make.design(boards=(make.board(part.thickness, faces),)), part)
    return [(f.value, f.limit) for f in part_too_thin.run(subject, part_too_thin).findings]


@pytest.mark.keeps(ID)
def test_parts_and_bars_of_common_sizes_pass(make: SimpleNamespace) -> None:
    assert found(make, make.wall("w", 6, 100)) == []
    assert found(make, wall(make, (10, 10, 40, 35), (45, 10, 90, 35))) == []  # a bar of 5 mm, 25 mm long
    assert found(make, wall(make, (10, 10, 40, 70), (48, 10, 90, 70))) == []  # one of 8 mm, 60 mm long


@pytest.mark.breaks(ID)
def test_thin_parts_and_bars_are_found(make: SimpleNamespace) -> None:
    assert found(make, make.wall("w", 1, 100)) == [(pytest.approx(1.0), 6.0)]
    assert found(make, wall(make, (10, 10, 40, 35), (44, 10, 90, 35))) == [(pytest.approx(4.0), 5.0)]
    assert found(make, wall(make, (10, 10, 40, 70), (47, 10, 90, 70))) == [(pytest.approx(7.0), 8.0)]
    assert found(make, wall(make, (4, 10, 40, 30))) == [(pytest.approx(4.0), 5.0)]  # beside the edge
    assert found(make, make.wall("w", 5, 100), "paper_both") == []
    assert found(make, make.wall("w", 9, 100, thickness=10.0)) == [(pytest.approx(9.0), 12.0)]


@pytest.mark.keeps(ID)
def test_tabs_of_twelve_and_a_sound_arch_pass(make: SimpleNamespace) -> None:
    assert found(make, tabbed(make, 12.0)) == []
    assert found(make, arch(make, crown=8.0, foot=10.0)) == []


@pytest.mark.breaks(ID)
def test_short_tabs_and_thin_arches_are_found(make: SimpleNamespace) -> None:
    assert found(make, tabbed(make, 9.0)) == [(pytest.approx(9.0), 12.0)]
    assert found(make, arch(make, crown=3.0, foot=3.5)) == [(pytest.approx(3.0), 8.0), (pytest.approx(3.5), 10.0)]


def cut(make: SimpleNamespace, body: shapely.Geometry, **more: object) -> Part:
    """A part of any outline, with holes that are no openings."""
    holes = tuple(make.hole(tuple(ring.coords[-1:0:-1]), "cut") for ring in shapely.normalize(body).interiors)
    part: Part = make.part("w", polyline(shapely.orient_polygons(body).exterior.coords[:-1], True, "rim"), holes=holes)
    return replace(part, **more)  # type: ignore[arg-type]


PLATE = shapely.box(0, 0, 120, 60)
DISC, BESIDE = shapely.Point(0, 0), shapely.Point(41, 0)
BETWEEN = shapely.LineString([(0, 0), (40, 0)])


def neck(wide: float) -> shapely.Geometry:
    return shapely.union_all(
        [shapely.box(0, 0, 50, 50), shapely.box(45, 20, 85, 20 + wide), shapely.box(80, 0, 130, 50)]
    )


def tongue(wide: float, long: float = 20.0) -> shapely.Geometry:
    return shapely.union_all([shapely.box(0, 0, 50, 50), shapely.box(45, 20, 50 + long, 20 + wide)])


def bar(wide: float, long: float = 28.0) -> shapely.Geometry:
    return shapely.difference(
        shapely.difference(PLATE, shapely.box(25, 15, 55, 15 + long)), shapely.box(55 + wide, 15, 85 + wide, 15 + long)
    )


THIN: dict[str, tuple[Callable[[float], shapely.Geometry], float, float]] = {
    "bar between two cuts": (bar, 5.0, 5.0),
    "long bar": (lambda wide: bar(wide, 40.0), 8.0, 8.0),
    "rim": (lambda wide: shapely.difference(PLATE, shapely.box(30, 60 - wide - 25, 55, 60 - wide)), 5.0, 5.0),
    "corner of a cut near the rim": (
        lambda wide: shapely.difference(PLATE, shapely.Polygon([(60, wide), (80, 30), (60, 50), (40, 30)])), 5.0, 5.0
    ),
    "neck": (neck, 5.0, 5.0),
    "tongue": (tongue, 5.0, 5.0),
    "ring": (lambda wide: shapely.difference(DISC.buffer(50, 64), DISC.buffer(50 - wide, 64)), 8.0, 8.0),
    "frame": (lambda wide: shapely.difference(PLATE, shapely.box(wide, wide, 120 - wide, 60 - wide)), 8.0, 8.0),
    "whole strip that turns a corner": (
        lambda wide: shapely.union_all([shapely.box(0, 0, 90, wide), shapely.box(0, 0, wide, 90)]), 8.0, 6.0
    ),
    "two discs that hang together": (
        lambda wide: shapely.union_all([DISC.buffer(20), BETWEEN.buffer(wide / 2, cap_style="flat"), BESIDE.buffer(20)]),
        5.0, 5.0,
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", THIN)
@pytest.mark.breaks(ID)
def test_whatever_leaves_little_board_is_found(make: SimpleNamespace, name: str) -> None:
    """The least width of the finished outline with all that is cut out of it, by any way of making it."""
    outline, _, limit = THIN[name]
    for wide in (1.5, 3.7):
        ((value, against),) = found(make, cut(make, outline(wide)))
        assert value == pytest.approx(wide, rel=0.2 if "whole" in name else 0.005)
        assert against in (limit, 8.0)


@pytest.mark.parametrize("name", THIN)
@pytest.mark.keeps(ID)
def test_what_is_just_wide_enough_passes(make: SimpleNamespace, name: str) -> None:
    outline, wide, _ = THIN[name]
    assert found(make, cut(make, outline(wide))) == []


@pytest.mark.keeps(ID)
def test_corners_points_and_stubs_are_not_thin(make: SimpleNamespace) -> None:
    """Points have a rule of their own; a stub that is no longer than wide does not break off."""
    for body in (
        shapely.Polygon([(0, 0), (60, 0), (30.5, 90), (29.5, 90)]),  # a facet of a spire
        shapely.difference(PLATE, shapely.Polygon([(0, 0), (30, 0), (0, 20)])),
        shapely.union_all([PLATE, shapely.box(40, 60, 43, 62)]),
        shapely.union_all([PLATE, shapely.Polygon([(120, 0), (150, 0), (120, 20)])]),
        DISC.buffer(12, 4),
    ):
        assert found(make, cut(make, body)) == []


@pytest.mark.breaks(ID)
def test_card_and_paper_have_limits_of_their_own(make: SimpleNamespace) -> None:
    def in_board(wide: float, material: str) -> list[float | None]:
        part = cut(make, bar(wide), thickness=1.0)
        board = replace(make.board(1.0), material=material)
        findings = part_too_thin.run(make.assembled(make.design(boards=(board,)), part), part_too_thin).findings
        return [found.limit for found in findings]

    assert [in_board(wide, "card") for wide in (2.0, 1.9)] == [[], [2.0]]
    assert in_board(0.5, "paper") == []


def with_sill(make: SimpleNamespace, sill: float) -> list[float | None]:
    """A wall with a door over a sill, along which a floor is glued."""
    body = shapely.difference(PLATE, shapely.box(40, sill, 80, 50))
    wall = cut(make, body, edges=(Edge("bottom", (0, 0), (120, 0), (0, 0), (120, 0)),))
    floor = make.wall("floor", 120, 60)
    join = make.join("wall.bottom", "floor.bottom", "butt")
    plan = make.panels("box", {"wall": "w", "floor": "floor"}, "wall.bottom", join)
    subject = make.assembled(make.design(panels=(plan,)), wall, floor)
    return [f.value for f in part_too_thin.run(subject, part_too_thin).findings]


@pytest.mark.keeps(ID)
def test_a_glued_board_backs_a_bar(make: SimpleNamespace) -> None:
    assert with_sill(make, 5.0) == []


@pytest.mark.breaks(ID)
def test_a_bar_that_stands_free_of_the_glued_board_is_found(make: SimpleNamespace) -> None:
    assert with_sill(make, 7.5) == [pytest.approx(7.5)]  # a third of it stands free


def tabbed(make: SimpleNamespace, long: float) -> Part:
    corners = [(0, 0), (60, 0), (60, 10), (65, 10), (65, 10 + long), (60, 10 + long), (60, 40), (0, 40)]
    names = ("bottom", "right", "right.tab", "right.tab", "right.tab", "right", "top", "left")
    part: Part = make.polygon("w", corners, names)
    return part


def arch(make: SimpleNamespace, crown: float, foot: float) -> Part:
    """A square-headed opening 40 × 40, ``foot`` beside it and ``crown`` over it."""
    far, high = foot + 40, 40 + crown
    corners = [(0, 0), (foot, 0), (foot, 40), (far, 40), (far, 0), (far + 20, 0), (far + 20, high), (0, high)]
    part: Part = make.polygon("arch", corners, ("bottom", "jamb", "intrados", "jamb", "bottom", "right", "top", "left"))
    return part
