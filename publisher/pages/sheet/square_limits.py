"""Between which readings a printed square may lie: the same share of its side for each square of a pack."""

from publisher.basics.wording import fixed, rounded_down, rounded_up

MEASURED_SQUARE = 100.0  # mm: the side of the square that the print check has, of which the share is said


def square_limits(least: float, most: float, side: float = MEASURED_SQUARE) -> tuple[str, str]:
    """Return the readings (mm) between which a square of this side may lie, at print scales from ``least`` to ``most``.

    The share is said of the square of the print check: rounded inwards to 0.1 mm, or to 0.01 mm where no tenth lies between.
    Other squares get it in as few decimals, of two, as say it; what is left over is rounded inwards.
    """
    small, large = MEASURED_SQUARE * least, MEASURED_SQUARE * most
    decimals = 1 if rounded_up(small, 1) <= rounded_down(large, 1) else 2
    low, high = rounded_up(small, decimals), rounded_down(large, decimals)
    if side != MEASURED_SQUARE:
        low, high = rounded_up(low * side / MEASURED_SQUARE, 2), rounded_down(high * side / MEASURED_SQUARE, 2)
        decimals = 1 if low == round(low, 1) and high == round(high, 1) else 2
    return fixed(low, decimals), fixed(high, decimals)
