"""The top of a wall with merlons and crenels that close evenly."""

from collections.abc import Iterator

from publisher.basics import Finding, Point
from publisher.geometry.registry import LOWER_LEFT, Shape, Values, choice, cornered, count, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL

ENDS = ("merlon", "half_merlon", "crenel")


def crenels(values: Values) -> int:
    """Return how many crenels go with the merlons: one less between whole ones, as many between halves, or one more."""
    return values.count("merlons") + ENDS.index(values.word("ends")) - 1


def widths(values: Values) -> tuple[float, float]:
    """Return the widths in mm of a merlon and a crenel: M·m + C·c = width; alike when no crenel width is given."""
    width, number, gaps = values.number("width"), values.count("merlons"), crenels(values)
    if not values.says("crenel"):
        return width / (number + gaps), width / (number + gaps)
    gap = values.number("crenel")
    return (width - gaps * gap) / number, gap


def check(values: Values) -> Iterator[Finding]:
    """Find merlons too narrow to stand, and crenels as deep as the wall."""
    merlon, gap = widths(values)
    narrow = merlon / 2.0 if values.word("ends") == "half_merlon" else merlon
    if narrow < LEAST_WALL or gap < 1.0:
        said = "crenel" if values.says("crenel") else "merlons"
        yield values.wrong(
            said,
            f"{values.count('merlons')} merlons and {crenels(values)} crenels of {mm(gap)} on a wall {mm(values.number('width'))} wide"
            f" leave {mm(max(merlon, 0.0))} for each merlon",
            f"use fewer merlons or narrower crenels: {mm(LEAST_WALL)} of board must stay, also in half a merlon",
            LEAST_WALL,
        )
    height, depth = values.number("height"), values.number("crenel_depth")
    if depth > height - LEAST_WALL + 1e-9:
        yield values.wrong(
            "crenel_depth",
            f"crenels {mm(depth)} deep cut through a wall that is {mm(height)} high with its merlons",
            f"make crenel_depth at most {mm(height - LEAST_WALL)}",
            height - LEAST_WALL,
        )


def build(values: Values) -> Shape:
    """Return the wall seen from outside, lower left corner at the origin, ``height`` to the tops of the merlons.

    Edges ``bottom``, ``right``, ``left``, and the level ones ``merlon_k`` and ``crenel_k``, counted from the left; the
    crenels' sides are runs named ``crenel_k.side``. Area: width·height − crenels·crenel·crenel_depth.
    """
    width, top = values.number("width"), values.number("height")
    low = top - values.number("crenel_depth")
    level: list[tuple[float, float, str]] = []  # from the left: where it starts, its height, its name
    merlon, gap = widths(values)
    number, gaps, ends = values.count("merlons"), crenels(values), values.word("ends")
    total = number + gaps + (1 if ends == "half_merlon" else 0)
    x = 0.0
    for k in range(total):
        high = (k % 2 == 0) is (ends != "crenel")
        level.append((x, top if high else low, f"{'merlon' if high else 'crenel'}_{k // 2 + 1}"))
        x += (merlon / 2.0 if ends == "half_merlon" and k in (0, total - 1) else merlon) if high else gap
    corners: list[tuple[Point, str]] = [((0.0, 0.0), "bottom"), ((width, 0.0), "right")]
    right = width
    for k in range(total - 1, -1, -1):
        left, y, name = level[k]
        corners.append(((right, y), name))
        if k:
            side = name if name.startswith("crenel") else level[k - 1][2]
            corners.append(((left, y), f"{side}.side"))
        right = left
    corners.append(((0.0, level[0][1]), "left"))
    named = ["bottom", "right", *(name for _, _, name in reversed(level)), "left"]
    return cornered(corners, named)


KIND = shape_kind(
    "battlement",
    "a wall or wall top with merlons and crenels that close evenly, seen from outside",
    (
        length("width", "finished outside width"),
        length("height", "height to the tops of the merlons"),
        count("merlons", "number of merlons; two halves count as one", 1, 200),
        length("crenel_depth", "how far the crenels are cut down"),
        length("crenel", "width of a crenel", "as wide as a merlon"),
        choice("ends", "what stands at both ends; half merlons make whole ones round a corner", ENDS),
    ),
    ("bottom", "right", "merlon_n … merlon_1", "crenel_n … crenel_1", "left"),
    build,
    check,
    openings=True,
    origin=LOWER_LEFT,
)
