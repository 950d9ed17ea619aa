from dataclasses import replace
from math import cos, radians, sin
from typing import Any

import numpy as np
import pytest

from publisher.basics import Box, OutlinePromise, Pose
from publisher.proof.measuring.case import Case
from publisher.proof.measuring.tiles import TilesReading, _nearest_tile, fit
from publisher.proof.reading.reader import read_file


def tiles_of(pack: Any) -> TilesReading:
    data = pack.write()
    (reading,) = Case(data, read_file(data, "test.pdf"), pack.promises).tiles()
    return reading


def test_a_rigid_motion_is_found_again() -> None:
    a = radians(25)
    turn = np.array(((cos(a), sin(a)), (-sin(a), cos(a))))
    source = np.array(((0.0, 0.0), (80.0, 5.0), (20.0, 60.0)))
    found, shift, residual = fit(source, source @ turn + (7.0, -3.0))
    assert np.allclose(found, turn)
    assert np.allclose(shift, (7.0, -3.0))
    assert residual < 1e-9


def test_a_mirrored_page_is_not_turned_into_place() -> None:
    source = np.array(((0.0, 0.0), (80.0, 5.0), (20.0, 60.0)))
    assert fit(source, source * (-1, 1))[2] > 5


def test_the_good_pack_comes_together(kit: Any) -> None:
    reading = tiles_of(kit.good())
    assert reading.farthest < 0.001
    assert reading.disagree < 0.001
    assert reading.untied == ()
    assert reading.repeated == ()


def test_marks_are_followed_and_not_the_promised_poses(kit: Any) -> None:
    """A tile that is shifted with its marks comes together; its own page's outline check sees the shift."""
    pack = kit.good()
    promise = pack.promises.outlines[2]
    pose = Pose(promise.pose.x + 0.4, promise.pose.y - 0.3)
    pack.sheets[3].items["outline"] = kit.outline(promise.rings, pose, promise.window)
    for seam in pack.promises.seams:
        x, y = seam.at[1]
        pack.sheets[3].items[f"mark {seam.label}"] = kit.mark(x + 0.4, y - 0.3)
    assert tiles_of(pack).farthest < 0.001


@pytest.mark.parametrize("shift", [0.2, 1.0])
def test_a_tile_shifted_against_its_marks(kit: Any, shift: float) -> None:
    pack = kit.good()
    promise = pack.promises.outlines[2]
    pose = Pose(promise.pose.x, promise.pose.y + shift)
    pack.sheets[3].items["outline"] = kit.outline(promise.rings, pose, promise.window)
    assert tiles_of(pack).farthest == pytest.approx(shift, abs=0.01)


def test_labels_swapped_on_one_page(kit: Any) -> None:
    pack = kit.good()
    one, two = pack.promises.seams
    pack.sheets[3].items["label B1-2·a"] = kit.words("B1-2·a", two.at[1][0] + 4.0, two.at[1][1] + 1.0, 3.2)
    pack.sheets[3].items["label B1-2·b"] = kit.words("B1-2·b", one.at[1][0] + 4.0, one.at[1][1] + 1.0, 3.2)
    reading = tiles_of(pack)
    assert reading.farthest > 1.0


def both_on_one_page(kit: Any, off: float = 0.0) -> Any:
    """The good pack with both tiles on its third page, the second one's outline ``off`` mm beside its marks."""
    pack = kit.good()
    sheet, before = pack.sheets[2], pack.promises.outlines[1:]
    for old in (sheet, pack.sheets[3]):
        for name in [n for n in old.items if n.split()[0] in ("outline", "mark", "label")]:
            del old.items[name]
    windows = (Box(10.0, 150.0, 200.0, 250.0), Box(10.0, 40.0, 200.0, 140.0))
    poses = (Pose(20.0, 155.0), Pose(-130.0, 45.0))
    tiles = [replace(o, page=3, pose=p, window=w) for o, p, w in zip(before, poses, windows, strict=True)]
    seams = []
    for seam in pack.promises.seams:
        own = (seam.at[0][0] - before[0].pose.x, seam.at[0][1] - before[0].pose.y)
        at = tuple(pose.apply(own) for pose in poses)
        seams.append(replace(seam, pages=(3, 3), at=at))
        for number, (x, y) in enumerate(at):
            sheet.items[f"mark {seam.label} {number}"] = kit.mark(x, y)
            sheet.items[f"label {seam.label} {number}"] = kit.words(seam.label, x + 4.0, y + 1.0, 3.2)
    for number, tile in enumerate(tiles):
        pose = replace(tile.pose, y=tile.pose.y + off * number)
        sheet.items[f"outline {number}"] = kit.outline(tile.rings, pose, tile.window)
    outlines = (pack.promises.outlines[0], *tiles)
    pack.promises = replace(pack.promises, outlines=outlines, seams=tuple(seams))
    return pack


def test_two_tiles_of_one_page_come_together_by_their_own_marks(kit: Any) -> None:
    reading = tiles_of(both_on_one_page(kit))
    assert reading.pages == (3,) and reading.untied == () and reading.repeated == ()
    assert reading.farthest < 0.001 and reading.disagree < 0.001


def test_a_tile_beside_its_marks_is_seen_on_a_page_with_another(kit: Any) -> None:
    assert tiles_of(both_on_one_page(kit, 0.4)).farthest == pytest.approx(0.4, abs=0.01)


def test_a_mark_drawn_once_more_repeats_a_tile(kit: Any) -> None:
    pack = both_on_one_page(kit)
    for seam in pack.promises.seams:
        x, y = seam.at[1]
        pack.sheets[2].items[f"mark {seam.label} again"] = kit.mark(x + 40.0, y)
        pack.sheets[2].items[f"label {seam.label} again"] = kit.words(seam.label, x + 44.0, y + 1.0, 3.2)
    assert tiles_of(pack).repeated == (3,)


def test_of_two_corners_whose_windows_overlap_each_keeps_its_own_marks() -> None:
    ring = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
    window = Box(10.0, 10.0, 110.0, 110.0)
    lower = OutlinePromise(
        3, "slab", "A", 1, Pose(60.0, -40.0), (ring,), window, 1, 1
    )  # its upper left corner is at (60, 60)
    upper = OutlinePromise(
        3, "slab", "A", 1, Pose(-45.0, 65.0), (ring,), window, 2, 2
    )  # its lower right corner at (55, 65)
    points = np.array(((62.0, 59.0), (109.0, 20.0), (54.0, 66.0), (20.0, 109.0)))
    tiles = [lower, upper]
    assert _nearest_tile(lower, tiles, points).tolist() == [True, True, False, False]
    assert _nearest_tile(upper, tiles, points).tolist() == [False, False, True, True]
