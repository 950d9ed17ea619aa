"""Matrices of PDF: (a, b, c, d, e, f) with x' = a x + c y + e and y' = b x + d y + f (ISO 32000-1, 8.3.3)."""

from math import hypot, isfinite, sqrt
from typing import Any

from publisher.proof.reading.model import Matrix

IDENTITY: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def multiply(first: Matrix, then: Matrix) -> Matrix:
    """Return the matrix that applies ``first`` and then ``then``."""
    a, b, c, d, e, f = first
    g, h, i, j, k, m = then
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + m)


def stretches(matrix: Matrix) -> tuple[float, float]:
    """Return the least and the greatest factor by which a matrix stretches a length (its singular values)."""
    a, b, c, d, _, _ = matrix
    half = (a * a + b * b + c * c + d * d) / 2
    root = sqrt(max(half * half - (a * d - b * c) ** 2, 0.0))
    return sqrt(max(half - root, 0.0)), sqrt(half + root)


def lengths(matrix: Matrix) -> tuple[float, float]:
    """Return how long the unit vectors along x and y become."""
    return hypot(matrix[0], matrix[1]), hypot(matrix[2], matrix[3])


def as_matrix(values: Any) -> Matrix:
    """Return six numbers as a matrix; the identity when they are none or not finite."""
    try:
        numbers = [float(v) for v in values]
    except (TypeError, ValueError):
        return IDENTITY
    if len(numbers) != 6 or not all(isfinite(n) and abs(n) < 1e9 for n in numbers):
        return IDENTITY
    return (numbers[0], numbers[1], numbers[2], numbers[3], numbers[4], numbers[5])
