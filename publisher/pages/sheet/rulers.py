"""Scales that a buyer lays a ruler against: base line, graduations, numbers; each graduation is promised."""

from publisher.basics import Layer, LengthPromise, Path, Point, polyline, record
from publisher.basics.units import INCH_MM
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet.draft import Body
from publisher.pages.type import GAUGE, LEAST, TICK, Setter


@record
class Graduation:
    """A graduation: distance of ticks in mm; (every n-th tick, its length in mm), longest first; a number at every n-th."""

    step: float
    ticks: tuple[tuple[int, float], ...]
    numbered: int
    units: float = 1.0  # what one step counts in the printed number


MILLIMETRES = Graduation(1.0, ((10, 3.2), (5, 2.4), (1, 1.6)), 10)
SIXTEENTHS = Graduation(INCH_MM / 16, ((16, 3.2), (8, 2.6), (4, 2.1), (2, 1.6), (1, 1.1)), 16, 1 / 16)
SQUARE_MILLIMETRES = Graduation(1.0, ((10, 2.4), (5, 1.8), (1, 1.2)), 10)
SQUARE_EIGHTHS = Graduation(INCH_MM / 8, ((8, 2.4), (4, 1.8), (1, 1.2)), 0, 1 / 8)


def graduation(
    setter: Setter,
    page: int,
    start: Point,
    length: float,
    scale: Graduation,
    upright: bool,
    side: int,
    *,
    ends: bool = True,
) -> Body:
    """Draw the ticks and numbers of one side of a base line that runs from ``start`` to the right, or up when ``upright``.

    ``side``: +1 puts the ticks above an across line or to the right of an upright one, -1 on the other side. ``ends`` False
    leaves out the ticks and numbers at both ends (inside a square, where the sides stand).
    """
    count = int(length / scale.step + 1e-6)
    paths: list[Path] = []
    words: list[Drawn] = []
    promises: list[LengthPromise] = []
    for number in range(count + 1):
        along = number * scale.step
        if not ends and (number == 0 or abs(along - length) < 1e-6):
            continue
        tall = next(t for every, t in scale.ticks if number % every == 0)
        base, tip = _at(start, along, 0.0, upright), _at(start, along, side * tall, upright)
        label = ""
        if scale.numbered and number % scale.numbered == 0 and not (number == 0 and not ends):
            label = f"{number * scale.units:g}"
            words.extend(_number(setter, label, _at(start, along, side * (tall + 0.6), upright), upright, side))
        paths.append(polyline((base, tip)))
        promises.append(LengthPromise(page, base, tip, tall, "tick", label))
    ticks = Stroke(TICK, tuple(paths), Layer.PAGE, tag="artifact")
    return Body((ticks, *words), lengths=tuple(promises))


def base_line(page: int, start: Point, length: float, upright: bool, label: str) -> Body:
    """Draw a ruler's base line and promise it; ``label`` names its length in print."""
    end = _at(start, length, 0.0, upright)
    stroke = Stroke(GAUGE, (polyline((start, end)),), Layer.PAGE, tag="artifact")
    return Body((stroke,), lengths=(LengthPromise(page, start, end, length, "ruler", label),))


def _at(start: Point, along: float, off: float, upright: bool) -> Point:
    return (start[0] + off, start[1] + along) if upright else (start[0] + along, start[1] + off)


def _number(setter: Setter, label: str, at: Point, upright: bool, side: int) -> tuple[Drawn, ...]:
    """Set a number beyond the tip of its tick, centred on the tick."""
    style = LEAST.tagged("artifact")
    cap = setter.cap(style)
    if upright:
        return setter.line(label, style, at[0], at[1] - cap / 2, align="left" if side > 0 else "right")
    return setter.line(label, style, at[0], at[1] if side > 0 else at[1] - cap, align="centre")
