"""A broken wall: straight below and at its ends, its top torn away. The same seed gives the same break."""

from collections.abc import Iterator

from publisher.basics import Finding, Point
from publisher.geometry.registry import LOWER_LEFT, SIDES, Shape, Values, cornered, count, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL

_MODULUS, _FACTOR = (
    2**31 - 1,
    48271,
)  # the "minimal standard" generator of Park and Miller (CACM 31, 1988), factor of 1993


class SeededNumbers:
    """Numbers in 0 … 1 from a seed, the same on every machine and in every version."""

    def __init__(self, seed: int) -> None:
        """Start from a whole number; neighbouring seeds are spread apart first."""
        self.state = (seed * 2654435761 + 1013904223) % (_MODULUS - 1) + 1

    def next(self) -> float:
        """Return the next number."""
        self.state = self.state * _FACTOR % _MODULUS
        return (self.state - 1) / (_MODULUS - 2)


def check(values: Values) -> Iterator[Finding]:
    """Find a least height that leaves nothing to break, and teeth that no knife can cut."""
    width, height, least = (values.number(name) for name in ("width", "height", "least_height"))
    if least > height - LEAST_WALL + 1e-9:
        yield values.wrong(
            "least_height",
            f"a wall {mm(height)} high that stays at least {mm(least)} high has nothing to break off",
            f"make least_height at most {mm(height - LEAST_WALL)}",
            height - LEAST_WALL,
        )
    stone, teeth = values.number("stone_height"), values.number("stone_length")
    if teeth > width / 2.0:
        yield values.wrong(
            "stone_length",
            f"stones of {mm(teeth)} are too long for a break along {mm(width)}",
            f"make them at most {mm(width / 2.0)} long",
            width / 2.0,
        )
    if stone > height - least + 1e-9:
        yield values.wrong(
            "stone_height",
            f"only {mm(height - least)} of wall can break, less than one stone of {mm(stone)}",
            f"make stone_height at most {mm(height - least)}",
            height - least,
        )


def broken(values: Values) -> tuple[Point, ...]:
    """Return the broken edge (mm) from the right end to the left one, between least_height and height.

    It goes in steps of whole stones, each at most two courses up or down from the last, with chipped ends.
    """
    width, height, least = (values.number(name) for name in ("width", "height", "least_height"))
    stone, pitch = values.number("stone_height"), values.number("stone_length")
    numbers = SeededNumbers(values.count("seed"))
    stones = max(2, round(width / pitch))
    rows = int((height - least) / stone + 1e-9)
    level = rows if rows < 2 else int(rows * (0.5 + 0.5 * numbers.next()))
    chip = min(0.3 * pitch, 0.45 * width / stones)
    points: list[Point] = []
    x = 0.0
    for k in range(stones):
        end = width if k == stones - 1 else (k + 1) * width / stones + (numbers.next() - 0.5) * 0.3 * width / stones
        y = least + level * stone - 0.35 * stone * numbers.next() * (level > 0)
        points += [
            (x if k == 0 else x + chip * 0.5 * numbers.next(), y),
            (end, max(least, y - 0.3 * stone * numbers.next())),
        ]
        x = end
        level = min(rows, max(0, level + int(numbers.next() * 5.0) - 2))
    return tuple(reversed(points))


def build(values: Values) -> Shape:
    """Return the ruin seen from outside, lower left corner at the origin; its top is one broken edge."""
    width = values.number("width")
    edge = broken(values)
    corners = [((0.0, 0.0), "bottom"), ((width, 0.0), "right"), *((p, "top") for p in edge[:-1]), (edge[-1], "left")]
    return cornered(corners, SIDES)


KIND = shape_kind(
    "ruin",
    "a wall with a broken top, seen from outside; the same seed gives the same break",
    (
        length("width", "finished outside width", None, 10.0),
        length("height", "height of the wall before it broke", None, 6.0),
        length("least_height", "height that the break stays above", None, LEAST_WALL),
        length("stone_length", "length of the stones that broke out", 12.0, 3.0),
        length("stone_height", "height of the stones that broke out", 5.0, 1.5),
        count("seed", "another whole number gives another break", 0, 999_999, 1),
    ),
    SIDES,
    build,
    check,
    openings=True,
    origin=LOWER_LEFT,
)
