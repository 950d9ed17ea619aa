"""Rows: which rows meet a span, joints with guards, blocks of many lengths."""

from itertools import pairwise

import numpy as np
import pytest

from publisher.basics import Box
from publisher.geometry.surfaces.noise import noise
from publisher.geometry.surfaces.rows import bed_joints, draws_needed, head_joints, numbers, random_joints

BOX = Box(0.0, 0.0, 200.0, 12.0)


def test_numbers_of_rows_that_meet_a_span() -> None:
    assert numbers(0.0, 12.0, 0.0, 4.0).tolist() == [0.0, 1.0, 2.0]
    assert numbers(-1.0, 12.5, 0.0, 4.0).tolist() == [-1.0, 0.0, 1.0, 2.0, 3.0]
    assert numbers(5.0, 6.0, 0.0, 4.0).tolist() == [1.0]


def test_bed_joints_leave_out_the_edges() -> None:
    lines = bed_joints(np.array([0.0, 4.0, 8.0, 12.0]), BOX).lines
    assert [line.bounds for line in lines] == [(0.0, 4.0, 200.0, 4.0), (0.0, 8.0, 200.0, 8.0)]


def test_a_joint_brings_a_guard_at_half_its_visible_height() -> None:
    family = head_joints(np.array([5.0, 300.0]), np.array([-2.0, 0.0]), np.array([4.0, 4.0]), BOX, 3.0)
    assert family.guards is not None
    assert [line.bounds for line in family.lines] == [(5.0, 0.0, 5.0, 4.0)]
    assert family.guards[0].bounds == pytest.approx((2.0, 2.0, 8.0, 2.0), abs=2e-3)


@pytest.mark.parametrize("seed", range(30))
def test_random_joints_keep_a_quarter_off_the_row_below(seed: int) -> None:
    draws = noise(seed, 1, np.arange(12)[:, None], np.arange(draws_needed(BOX, 0.0, 10.0, 0.3)))
    rows = random_joints(BOX, 0.0, 10.0, 0.3, draws)
    assert len(rows) == 12
    for below, above in pairwise(rows):
        assert np.abs(above[:, None] - below[None, :]).min() >= 2.5
    for row in rows:
        assert row[0] <= 3.0 and row[-1] > BOX.right
        assert np.diff(row).min() >= 7.0 - 1e-9 and np.diff(row).max() <= 13.0 + 1e-9
