"""Panels in pictures: how far they stand apart, how much of a face shows, where letters stand."""

from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.joints.drawings.letter_spots import EXPLODED_ROOM, shown
from publisher.joints.drawings.panel_solids import Solids, solids_of
from publisher.joints.drawings.panel_views import (
    EXPLODED_APART,
    SPREADS,
    apart,
    exploded_view,
    whole_view,
)
from publisher.joints.drawings.view import PANEL_VIEW
from publisher.joints.panels.place import PanelAssembly, place_panels


@pytest.fixture
def box(make: SimpleNamespace) -> PanelAssembly:
    """An open box of 120 × 80, 50 high."""
    plan = make.panels(
        "box", {"front": "long", "right": "short", "back": "long", "left": "short"}, "front.bottom",
        make.join("front.right", "right.left"), make.join("right.right", "back.left"), make.join("back.right", "left.left"),
    )  # fmt: skip
    return place_panels(plan, {"long": make.wall("long", 120, 50), "short": make.wall("short", 80, 50)})


def faces(*levels: tuple[float, float, float, float, float]) -> Solids:
    """Level faces (left, bottom, right, top, depth), as solids."""
    areas: list[shapely.Geometry] = [shapely.box(*face[:4]) for face in levels]
    planes = [np.array([0.0, 0.0, face[4]]) for face in levels]
    return Solids(areas, planes, [], [], list(range(len(levels))))


def test_walls_move_out_along_their_normals(box: PanelAssembly) -> None:
    """By 0.3 of the mean of length, width and height of the whole; those that look away, twice as far when asked."""
    away = EXPLODED_APART * (120 + 80 + 50) / 3
    moved = {p.name: f.origin - p.frame.origin for p, (_, f) in zip(box.panels, apart(box, 2.0, 1.0), strict=True)}
    for panel in box.panels:
        behind = panel.name in ("back", "left")
        assert moved[panel.name] == pytest.approx((2.0 if behind else 1.0) * away * panel.frame.outward, abs=1e-6)


def test_a_face_alone_shows_all_of_it() -> None:
    assert shown(faces((0, 0, 100, 100, 0)), 0) == 1.0


@pytest.mark.parametrize(("depth", "share"), [(5.0, 0.5), (-5.0, 1.0)])
def test_what_lies_before_a_face_hides_it_and_what_lies_behind_does_not(depth: float, share: float) -> None:
    assert shown(faces((0, 0, 100, 100, 0), (50, -10, 200, 110, depth)), 0) == pytest.approx(share, abs=0.03)


def test_far_walls_of_a_box_are_hidden_less_when_they_stand_apart(box: PanelAssembly) -> None:
    def least(back: float) -> float:
        solids = solids_of(apart(box, back, 1.0), PANEL_VIEW, slots=True, surface=False)
        return min(shown(solids, main) for main in solids.main)

    assert least(0.0) < least(1.0) < least(2.0)


def test_letters_stand_on_their_panel_away_from_its_border(box: PanelAssembly) -> None:
    sketch = exploded_view(box)
    assert sorted(text for text, *_ in sketch.labels) == ["L", "L", "S", "S"]
    lines = shapely.union_all(np.array(sketch.lines["outline"]))
    for _, x, y in sketch.labels:
        assert shapely.distance(shapely.Point(x, y), lines) > 0.8 * EXPLODED_ROOM


@pytest.mark.parametrize(("high", "beside"), [(8.0, True), (40.0, False)])
def test_a_panel_too_small_for_a_letter_has_it_at_its_end(make: SimpleNamespace, high: float, beside: bool) -> None:
    assembly = place_panels(make.panels("one", {"front": "bit"}, "front.bottom"), {"bit": make.wall("bit", 60, high)})
    ((letter, x, y),) = exploded_view(assembly).labels
    assert letter == "B"
    areas = shapely.union_all(solids_of(apart(assembly, *SPREADS[0]), PANEL_VIEW, slots=True, surface=False).areas)
    clear = shapely.distance(areas, shapely.Point(x, y))
    assert clear >= EXPLODED_ROOM if beside else clear == 0.0


def test_the_whole_carries_no_letters_and_hides_lines(box: PanelAssembly) -> None:
    sketch = whole_view(box)
    assert sketch.labels == []
    drawn = sum(line.length for line in sketch.lines["outline"])
    panels = [(p.part, p.frame) for p in box.panels]
    edges = np.vstack(solids_of(panels, PANEL_VIEW, slots=False, surface=False).edges)[:, :, :2]
    assert drawn < 0.9 * float(np.hypot(*(edges[:, 1] - edges[:, 0]).T).sum())
