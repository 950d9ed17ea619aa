"""Hidden lines against rays cast from points of the edges through every solid."""

from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.joints.drawings.hidden import FrontFaces, visible
from publisher.joints.drawings.panel_solids import solids_of
from publisher.joints.drawings.view import PANEL_VIEW
from publisher.joints.panels.space import PanelFrame


def random_boxes(
    make: SimpleNamespace, rng: np.random.Generator, count: int
) -> list[tuple[object, PanelFrame, np.ndarray]]:
    boxes = []
    for i in range(count):
        size = rng.uniform(20, 60, 3)
        axes, _ = np.linalg.qr(rng.normal(size=(3, 3)))
        axes[:, 2] *= np.sign(np.linalg.det(axes))
        part = make.rectangle(f"b{i}", 0, 0, float(size[0]), float(size[1]), thickness=float(size[2]))
        boxes.append((part, PanelFrame(axes, rng.uniform(-40, 40, 3)), size))
    return boxes


def behind_something(point: np.ndarray, boxes: list[tuple[object, PanelFrame, np.ndarray]]) -> float:
    """Return how long (mm) the ray from a point to the viewer runs inside solids: slab by slab of each box."""
    towards = PANEL_VIEW.axes()[2]
    longest = 0.0
    for _, frame, size in boxes:
        start, way = frame.back(point[None, :])[0], towards @ frame.axes
        low, high = np.array([0.0, 0.0, -size[2]]), np.array([size[0], size[1], 0.0])
        with np.errstate(divide="ignore"):
            a, b = (low - start) / way, (high - start) / way
        enter, leave = np.minimum(a, b).max(), np.maximum(a, b).min()
        longest = max(longest, leave - max(enter, 0.0))
    return longest


@pytest.mark.parametrize("seed", range(6))
def test_visible_edges_of_random_boxes_agree_with_rays(make: SimpleNamespace, seed: int) -> None:
    rng = np.random.default_rng(seed)
    boxes = random_boxes(make, rng, 7)
    solids = solids_of([(p, f) for p, f, _ in boxes], PANEL_VIEW, slots=True, surface=False)
    edges = np.vstack(solids.edges)
    lines, owner = visible(edges, solids.faces())
    drawn = [shapely.MultiLineString(list(lines[owner == i])) for i in range(len(edges))]
    checked = hidden = 0
    for i, (start, end) in enumerate(edges):
        for share in rng.uniform(0.02, 0.98, 6):
            point = start + share * (end - start)
            inside = behind_something(PANEL_VIEW.axes().T @ point, boxes)
            if 1e-6 < inside < 1.0:
                continue  # it grazes a corner: the answer turns on rounding
            seen = float(shapely.distance(drawn[i], shapely.Point(point[:2]))) < 0.01
            near_end = min((shapely.distance(p, shapely.Point(point[:2])) for p in _ends(drawn[i])), default=9.0) < 0.3
            if not near_end:
                checked += 1
                hidden += not seen
                assert seen == (inside <= 1e-6), (seed, i, share, inside)
    assert checked > 150
    assert hidden > 20


def _ends(lines: shapely.Geometry) -> list[shapely.Point]:
    return [shapely.Point(c) for part in shapely.get_parts(lines) for c in shapely.get_coordinates(part)]


def test_an_edge_is_cut_where_a_face_stands_before_it() -> None:
    face = FrontFaces(np.array([shapely.box(3, -1, 6, 1)]), np.array([[0.0, 0.0, 5.0]]))
    lines, owner = visible(np.array([[[0.0, 0.0, 0.0], [10.0, 0.0, 0.0]]]), face)
    assert owner.tolist() == [0, 0]
    assert sorted(lines[:, :, 0].ravel()) == pytest.approx([0, 3, 6, 10], abs=0.03)


def test_an_edge_on_a_face_or_before_it_is_seen() -> None:
    face = FrontFaces(np.array([shapely.box(3, -1, 6, 1)]), np.array([[0.0, 0.0, 5.0]]))
    for depth in (5.0, 7.0):
        lines, _ = visible(np.array([[[0.0, 0.0, depth], [10.0, 0.0, depth]]]), face)
        assert lines.tolist() == [[[0.0, 0.0], [10.0, 0.0]]]


def test_an_edge_that_runs_through_a_face_is_hidden_behind_it_only() -> None:
    face = FrontFaces(np.array([shapely.box(0, -1, 10, 1)]), np.array([[0.0, 0.0, 5.0]]))
    lines, _ = visible(np.array([[[0.0, 0.0, 0.0], [10.0, 0.0, 10.0]]]), face)
    assert lines.shape == (1, 2, 2)
    assert lines[0, :, 0] == pytest.approx([5, 10], abs=0.05)


def test_nothing_to_draw() -> None:
    lines, owner = visible(np.zeros((0, 2, 3)), FrontFaces(np.array([]), np.zeros((0, 3))))
    assert len(lines) == len(owner) == 0


def test_an_edge_hidden_all_along_by_one_face_is_cut_by_no_other() -> None:
    """Of two edges behind two faces, the first is hidden whole by one of them, and the second in part by each."""
    faces = FrontFaces(
        np.array([shapely.box(0, 0, 10, 10), shapely.box(6, 0, 16, 10)]), np.array([[0.0, 0.0, 5.0], [0.0, 0.0, 6.0]])
    )
    edges = np.array([[[1.0, 5.0, 0.0], [9.0, 5.0, 0.0]], [[-4.0, 5.0, 0.0], [20.0, 5.0, 0.0]]])
    lines, owner = visible(edges, faces)
    assert owner.tolist() == [1, 1]
    assert np.sort(lines[:, :, 0].ravel()) == pytest.approx([-4.0, 0.0, 16.0, 20.0], abs=0.03)
