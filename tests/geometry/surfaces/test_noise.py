"""The generator: spread evenly, the same on every machine."""

import numpy as np

from publisher.geometry.surfaces.noise import noise


def test_the_same_numbers_everywhere() -> None:
    known = noise(7, 1, [0, 1, 2])
    assert known.tolist() == noise(7, 1, np.arange(3)).tolist()
    assert [round(v, 12) for v in known.tolist()] == KNOWN


def test_seed_stream_and_place_all_count() -> None:
    grid = noise(0, 1, np.arange(40)[:, None], np.arange(50))
    assert grid.shape == (40, 50)
    assert len(np.unique(grid)) == 2000
    for other in (
        noise(1, 1, np.arange(40)[:, None], np.arange(50)),
        noise(0, 2, np.arange(40)[:, None], np.arange(50)),
    ):
        assert not np.isclose(other, grid).any()


def test_numbers_are_spread_evenly() -> None:
    many = noise(123456, 3, np.arange(-5000, 5000))
    assert many.min() >= 0.0 and many.max() < 1.0
    counts, _ = np.histogram(many, 10, (0.0, 1.0))
    assert abs(counts - 1000).max() < 150
    assert abs(np.corrcoef(many[:-1], many[1:])[0, 1]) < 0.05
    assert 0.0 <= noise(-3, 1, 2**62)[0] < 1.0


KNOWN = [0.710339088051, 0.231859606847, 0.258661535879]
