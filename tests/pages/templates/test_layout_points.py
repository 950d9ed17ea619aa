"""The points by which layouts lay a part at an angle stand on its template, beside its corners, and move nothing."""

from collections.abc import Callable
from math import dist

import pytest
import shapely

from publisher.basics import Pose
from publisher.geometry import Part, polygon
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.layout_points import (
    FROM_CORNER,
    LAYOUT_POINTS,
    layout_points,
    point_leaders,
    point_notes,
    point_promises,
)
from publisher.pages.type import Setter


def test_only_parts_at_an_angle_have_points(demo: Callable[..., Context]) -> None:
    stair = demo("lock-stair")
    assert set(layout_points(stair.needs.layouts)) == {"step"}
    assert layout_points(demo("quay").needs.layouts) == {}


@pytest.mark.parametrize("pose", [Pose(), Pose(100.0, 50.0, 37.0), Pose(80.0, 20.0, 90.0, True)])
def test_each_stands_beside_its_corner_clear_of_all_else(
    make_part: Callable[..., Part], setter: Setter, pose: Pose
) -> None:
    part, corners = make_part(), ((0.0, 0.0), (60.0, 40.0))
    ground = polygon(part.template, pose)
    label = shapely.Point(pose.apply((3.0, 3.0))).buffer(4.0)
    notes = point_notes(corners, part, pose, setter, (label,))
    assert tuple(note.text for note in notes) == LAYOUT_POINTS
    for note, corner in zip(notes, corners, strict=True):
        assert ground.contains(note.area(0.2)) and not label.intersects(note.area(0.2))
        assert dist((note.x, note.y), pose.apply(corner)) < FROM_CORNER
    ends = [path.points[-1] for line in point_leaders(corners, notes, pose) for path in line.paths]
    far = [
        corner
        for note, corner in zip(notes, map(pose.apply, corners), strict=True)
        if dist((note.x, note.y), corner) > 4.0
    ]
    assert len(far) >= 1 and all(min(dist(end, corner) for end in ends) == pytest.approx(0.8) for corner in far)
    drawn = [word for note in notes for word in note.drawn(setter)]
    promises = point_promises(4, corners, pose, drawn, part.id, 1)
    assert [(p.text, p.near, p.part) for p in promises] == [
        (text, pose.apply(corner), part.id) for text, corner in zip(LAYOUT_POINTS, corners, strict=True)
    ]


def test_a_part_without_room_beside_a_corner_has_neither(make_part: Callable[..., Part], setter: Setter) -> None:
    part = make_part()
    taken = (shapely.box(-5.0, -5.0, 20.0, 40.0),)
    assert point_notes(((0.0, 0.0), (60.0, 40.0)), part, Pose(), setter, taken) == ()
    assert point_notes((), part, Pose(), setter, ()) == ()
    assert point_promises(4, (), Pose(), (), part.id, 1) == ()
