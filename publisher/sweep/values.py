"""Which values of a size are tried, and how near its jumps are found."""

from publisher.design import Kind, SizeSpan

VALUES_OF_ONE, VALUES_OF_TWO = 41, 9  # values of each size that are tried
FINEST: dict[Kind, float] = {"length": 0.01, "angle": 0.01, "count": 1.0}  # mm, degrees: how near a jump is found
FINEST_SHARE = 1e-5  # of the range, for plain numbers


def grid_of(span: SizeSpan, number: int) -> tuple[float, ...]:
    """Return so many values from one end of a range to the other, as sizes are written: the ends as given, between them to 0.01 mm
    or degree; whole ones where only these are tried."""
    unit, reach = finest(span), span.most - span.least
    inner = (round((span.least + reach * k / (number - 1)) / unit) * unit for k in range(1, number - 1))
    tidy = dict.fromkeys(round(value, 9) for value in inner)
    return (span.least, *(value for value in tidy if span.least < value < span.most), span.most)


def finest(span: SizeSpan) -> float:
    """Return how near jumps of a size are found, in its unit."""
    if span.whole:
        return 1.0
    return FINEST.get(span.size.kind, (span.most - span.least) * FINEST_SHARE)


def midway(one: float, other: float, unit: float) -> float | None:
    """Return the value midway between two, on the grid of ``unit``; None where they are as near as jumps are found."""
    low, high = sorted((one, other))
    middle = round(round((low + high) / 2.0 / unit) * unit, 9)
    return middle if high - low > 1.5 * unit and low < middle < high else None
