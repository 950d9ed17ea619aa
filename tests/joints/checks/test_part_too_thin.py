from types import SimpleNamespace

import pytest

from publisher.geometry import Opening, Part
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
