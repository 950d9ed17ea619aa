"""Numbers that look random and are the same every time, on every machine: a hash of a seed and of whole-number places.

The mixing is the finaliser of SplitMix64 (Steele, Lea and Flood, “Fast splittable pseudorandom number generators”, 2014).
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

_GOLDEN = np.uint64(0x9E3779B97F4A7C15)
_FIRST, _SECOND = np.uint64(0xBF58476D1CE4E5B9), np.uint64(0x94D049BB133111EB)


def noise(seed: int, stream: int, *places: ArrayLike) -> NDArray[np.float64]:
    """Return numbers in [0, 1), one for each (broadcast) tuple of whole numbers. Another stream, other numbers."""
    grids = np.broadcast_arrays(*(np.atleast_1d(np.asarray(p, dtype=np.int64)) for p in places))
    state = np.full(grids[0].shape, seed % 2**63, dtype=np.int64).astype(np.uint64)
    for grid in (np.full(grids[0].shape, stream, dtype=np.int64), *grids):
        state = _mixed((state ^ grid.astype(np.uint64)) + _GOLDEN)
    return np.asarray((state >> np.uint64(11)).astype(np.float64) * 2.0**-53)


def _mixed(z: NDArray[np.uint64]) -> NDArray[np.uint64]:
    z = (z ^ (z >> np.uint64(30))) * _FIRST
    z = (z ^ (z >> np.uint64(27))) * _SECOND
    return np.asarray(z ^ (z >> np.uint64(31)))
