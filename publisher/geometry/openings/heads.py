"""The upper ends of openings, one entry each: square, round. A head is drawn from the right jamb to the left one."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from publisher.basics import Finding
from publisher.geometry.rings import Pen
from publisher.geometry.values import Values, mm


@dataclass(frozen=True, slots=True)
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


def _fits(values: Values) -> Iterator[Finding]:
    del values
    yield from ()


def _room_for_round(values: Values) -> Iterator[Finding]:
    width, height = values.number("width"), values.number("height")
    if height < width / 2.0 + 0.1:
        yield values.wrong(
            "height",
            f"a round head on an opening {mm(width)} wide is {mm(width / 2.0)} high by itself, but the height is {mm(height)}",
            f"make the height more than {mm(width / 2.0)}, or the opening narrower",
            width / 2.0,
        )


HEADS: tuple[Head, ...] = (
    Head("square", lambda _: 0.0, _square, _fits),
    Head("round", lambda values: values.number("width") / 2.0, _round, _room_for_round),
)
