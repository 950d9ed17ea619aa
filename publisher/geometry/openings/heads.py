"""The upper ends of openings, one entry each. A head is drawn from the right jamb to the left one."""

from collections.abc import Callable, Iterator
from math import sqrt

from publisher.basics import Finding, record
from publisher.geometry.paths import Pen
from publisher.geometry.registry import Values, mm

LEAST_JAMB = 0.1  # mm of upright jamb that must stay under a head


@record
class Head:
    """``spring`` is how far below the top the jambs end (mm, by width); ``draw`` goes on from the right jamb's end."""

    name: str
    spring: Callable[[Values], float]
    draw: Callable[[Pen, Values, str], Pen]
    check: Callable[[Values], Iterator[Finding]]


def _square(pen: Pen, values: Values, name: str) -> Pen:
    return pen.line((pen.at[0] - values.number("width"), pen.at[1]), name)


def _round(pen: Pen, values: Values, name: str) -> Pen:
    half = values.number("width") / 2.0
    x, y = pen.at
    return pen.arc((x - 2.0 * half, y), (x - half, y), half, name)


def segment_radius(width: float, rise: float) -> float:
    """Return the radius in mm of a segmental head: (w²/4 + f²)/(2f), as from a chord and its height.

    Worked example (chord 16, height 6: 8⅓): Machinery's Handbook, 31st ed., p. 79.
    """
    return (width * width / 4.0 + rise * rise) / (2.0 * rise)


def _segmental(pen: Pen, values: Values, name: str) -> Pen:
    width, rise = values.number("width"), values.number("rise")
    radius, (x, y) = segment_radius(width, rise), pen.at
    return pen.arc((x - width, y), (x - width / 2.0, y + rise - radius), radius, name)


def _pointed_radius(values: Values) -> float:
    return values.number("radius") if values.says("radius") else values.number("width")


def _pointed_spring(values: Values) -> float:
    """Return the height of a pointed head: both arcs, of radius R about points on the springing line, meet at √(R·w − w²/4)."""
    width, radius = values.number("width"), _pointed_radius(values)
    return sqrt(max(radius * width - width * width / 4.0, 0.0))


def _pointed(pen: Pen, values: Values, name: str) -> Pen:
    width, radius, (x, y) = values.number("width"), _pointed_radius(values), pen.at
    tip = (x - width / 2.0, y + _pointed_spring(values))
    pen.arc(tip, (x - radius, y), radius, name)
    return pen.arc((x - width, y), (x - width + radius, y), radius, name)


def _unused(values: Values, *names: str) -> Iterator[Finding]:
    """Find sizes that this head does not use: they would be ignored in silence."""
    uses = {"rise": "segmental", "radius": "pointed"}
    for name in names:
        if values.says(name):
            yield values.wrong(
                name,
                f"{name} is given, but a {values.word('head')} head has none",
                f"leave it out, or write head: {uses[name]}",
            )


def _room(values: Values, head: float) -> Iterator[Finding]:
    width, height = values.number("width"), values.number("height")
    if height < head + LEAST_JAMB:
        yield values.wrong(
            "height",
            f"a {values.word('head')} head on an opening {mm(width)} wide is {mm(head)} high by itself, but the height is {mm(height)}",
            f"make the height more than {mm(head)}, or the opening narrower",
            head,
        )


def _check_square(values: Values) -> Iterator[Finding]:
    yield from _unused(values, "rise", "radius")


def _check_round(values: Values) -> Iterator[Finding]:
    yield from _unused(values, "rise", "radius")
    yield from _room(values, values.number("width") / 2.0)


def _check_segmental(values: Values) -> Iterator[Finding]:
    yield from _unused(values, "radius")
    half = values.number("width") / 2.0
    if not values.says("rise"):
        yield values.wrong(
            "rise", "a segmental head needs its rise, and none is given", f"write rise: and a length up to {mm(half)}"
        )
    elif values.number("rise") > half:
        yield values.wrong(
            "rise",
            f"a segmental head that rises {mm(values.number('rise'))} over a width of {mm(2.0 * half)} is more than a half circle",
            f"make rise at most {mm(half)}, which is the round head",
            half,
        )
    else:
        yield from _room(values, values.number("rise"))


def _check_pointed(values: Values) -> Iterator[Finding]:
    yield from _unused(values, "rise")
    half, radius = values.number("width") / 2.0, _pointed_radius(values)
    if radius < half + LEAST_JAMB:
        yield values.wrong(
            "radius",
            f"arcs of radius {mm(radius)} make no point over a width of {mm(2.0 * half)}",
            f"make radius more than {mm(half + LEAST_JAMB)}; half the width is the round head",
            half + LEAST_JAMB,
        )
    else:
        yield from _room(values, _pointed_spring(values))


HEADS: tuple[Head, ...] = (
    Head("square", lambda _: 0.0, _square, _check_square),
    Head("round", lambda values: values.number("width") / 2.0, _round, _check_round),
    Head("segmental", lambda values: values.number("rise"), _segmental, _check_segmental),
    Head("pointed", _pointed_spring, _pointed, _check_pointed),
)
