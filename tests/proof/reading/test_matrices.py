from math import cos, radians, sin

import pytest

from publisher.proof.reading.matrices import IDENTITY, as_matrix, lengths, multiply, stretches


def test_the_first_matrix_is_applied_first() -> None:
    scale, shift = (2, 0, 0, 2, 0, 0), (1, 0, 0, 1, 5, 7)
    assert multiply(scale, shift) == (2, 0, 0, 2, 5, 7)
    assert multiply(shift, scale) == (2, 0, 0, 2, 10, 14)


def test_stretches_of_a_turned_and_squeezed_matrix() -> None:
    a = radians(30)
    turned = multiply((3, 0, 0, 0.5, 0, 0), (cos(a), sin(a), -sin(a), cos(a), 9, 9))
    assert stretches(turned) == pytest.approx((0.5, 3.0))
    assert lengths(turned) == pytest.approx((3.0, 0.5))


@pytest.mark.parametrize("values", [(), (1, 2), ("a",) * 6, (1, 0, 0, 1, float("nan"), 0), (1, 0, 0, 1, 1e12, 0), None])
def test_what_is_no_matrix_changes_nothing(values: object) -> None:
    assert as_matrix(values) == IDENTITY
