"""Outlines laid on each other."""

import numpy as np
import pytest
import shapely

from tests.rehearsal.laid_on import apart


def egg(points: int) -> shapely.Polygon:
    """Return a smooth outline without sides, of so many points: a long one that is blunter at one end."""
    a = np.linspace(0.0, 2.0 * np.pi, points, endpoint=False)
    return shapely.Polygon(
        np.column_stack((80.0 * np.cos(a), (34.0 + 9.0 * np.cos(a) + 4.0 * np.sin(3.0 * a)) * np.sin(a)))
    )


@pytest.mark.parametrize("turn", [7.0, 52.0, 141.0, 266.0])
def test_smooth_shapes_are_laid_on_each_other(turn: float) -> None:
    """As they are traced their curves have chords, and the longest of two tracings are others."""
    turned = shapely.affinity.rotate(egg(90), turn, origin=(12.0, -7.0))
    mean, worst = apart(turned, egg(720))
    assert mean < 0.05 and worst < 0.15


def test_a_shape_turned_over_is_another() -> None:
    over = shapely.transform(egg(720), lambda at: at * (-1.0, 1.0))
    assert apart(over, egg(720))[1] > 1.0
