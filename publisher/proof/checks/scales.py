"""Scales are even and count what they say; bars and arrows of a board gauge stand where their thickness is."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from math import dist

from publisher.basics import Check, Findings, LengthPromise
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import MM_PER_INCH, PaintedPath, normal

FOOT_OFF = 0.02  # mm from a tick's foot to the line that it stands on
EVEN = 0.005  # mm
STEPS = (1.0, MM_PER_INCH / 8.0, MM_PER_INCH / 16.0)  # mm: those of rulers that are sold
COUNTED = {1.0: 1.0}  # what a step counts; all others count in inches
OVER_GAUGE = 8.0  # mm above a gauge where its bar and its arrow stand
HEAVY_BAR = 0.45  # mm: no other line over a gauge is so wide
GAUGE_OFF = 0.03  # mm of the gap's width
THICK = "thickness of "


@judged(
    "proof/scale",
    "Scales and gauges mean what they show",
    "a ruler in ninths of an inch, or a bar over the wrong widths of the gauge, is believed as it stands: ticks are one of "
    f"{', '.join(f'{step:.4g}' for step in STEPS)} mm apart, without a gap, and count from its end; the bar over a gauge "
    "ends at a thickness that a board may have, its arrow points at that of a board",
    may_be_empty=True,
)
def scales(case: Case, check: Check[Case]) -> Findings:
    """Judge the ticks on each line, then each gauge."""
    hint = "draw scales from their step and gauges from the boards"
    looked = 0
    for page, ticks in _ticks(case).items():
        for line in (
            one for one in case.promises.lengths if one.page == page and one.purpose in ("ruler", "calibration")
        ):
            sides = [_side(line, tick) for tick in ticks]
            for side in (1, -1):
                own = [tick for tick, where in zip(ticks, sides, strict=True) if where == side]
                looked += len(own)
                ways = (
                    (line, replace(line, start=line.end, end=line.start)) if line.purpose == "calibration" else (line,)
                )
                if own and (
                    fault := min((_uneven(way, own) for way in ways), key=len)
                ):  # a square counts from any corner
                    yield about(check, page_name(page), f": the ticks on the line of {line.length:g} mm {fault}", hint)
    for page, widths in _gauges(case):
        looked += 1
        for fault in _beside_gauge(case, page, widths):
            yield about(check, page_name(page), f": {fault}", hint)
    return looked


def _ticks(case: Case) -> dict[int, list[LengthPromise]]:
    found: dict[int, list[LengthPromise]] = {}
    for one in case.promises.lengths:
        if one.purpose == "tick":
            found.setdefault(one.page, []).append(one)
    return found


def _along(line: LengthPromise, tick: LengthPromise) -> tuple[float, float]:
    """Return how far along a line a tick stands, and how far off it its foot is (mm)."""
    (ax, ay), (bx, by), (x, y) = line.start, line.end, tick.start
    length = dist(line.start, line.end) or 1.0
    ux, uy = (bx - ax) / length, (by - ay) / length
    return (x - ax) * ux + (y - ay) * uy, abs((x - ax) * uy - (y - ay) * ux)


def _side(line: LengthPromise, tick: LengthPromise) -> int:
    """Return on which side of a line a tick stands square to it: 1 or -1, 0 where it stands on another."""
    along, off = _along(line, tick)
    if off > FOOT_OFF or not -FOOT_OFF <= along <= line.length + FOOT_OFF:
        return 0
    (ax, ay), (bx, by) = line.start, line.end
    (sx, sy), (tx, ty) = tick.start, tick.end
    length, tall = dist(line.start, line.end) or 1.0, dist(tick.start, tick.end) or 1.0
    turn = ((bx - ax) * (ty - sy) - (by - ay) * (tx - sx)) / length / tall
    return 0 if abs(abs(turn) - 1.0) > 1e-3 else 1 if turn > 0 else -1


def _uneven(line: LengthPromise, ticks: list[LengthPromise]) -> str:
    """Return in words what is wrong with the ticks on one side of a line; empty when nothing."""
    places = sorted((_along(line, tick)[0], tick.label) for tick in ticks)
    if len(places) < 3:
        return ""
    step = places[1][0] - places[0][0]
    if not any(abs(step - one) <= EVEN for one in STEPS):
        return f"are {step:.3f} mm apart: no ruler is graduated so"
    step = min(STEPS, key=lambda one: abs(one - step))
    first, last = round(places[0][0] / step), round(places[-1][0] / step)
    if first > 1 or last < int(line.length / step + 1e-6) - 1 or len(places) != last - first + 1:
        return "leave one out"
    for number, (place, label) in enumerate(places, first):
        if abs(place - number * step) > EVEN:
            return f"stand {place:.2f} mm from its beginning, where {number * step:.2f} mm are meant"
        counts = number * step / (1.0 if step in COUNTED else MM_PER_INCH)
        if label and normal(label) != f"{counts:g}":
            return f"say “{label}” at {counts:g}"
    return _unlike(line, ticks, step)


def _unlike(line: LengthPromise, ticks: list[LengthPromise], step: float) -> str:
    """Return in words which ticks are not as long as their places ask for: those of halves longer than those of quarters, or as long."""
    long: dict[int, set[float]] = {}
    for tick in ticks:
        number = round(_along(line, tick)[0] / step)
        long.setdefault(_rank(number, step), set()).add(round(dist(tick.start, tick.end), 2))
    ranks = sorted(long)
    if any(len(long[rank]) > 1 for rank in ranks):
        return "of one kind are not all as long"
    if any(min(long[one]) > min(long[other]) for one, other in pairwise(ranks)):
        return "of smaller parts are longer"
    return ""


def _rank(number: int, step: float) -> int:
    """Return how much a tick parts: of mm 0, 1 for fives and 2 for tens; of an inch how often its number can be halved, up to inches."""
    if step in COUNTED:
        return 2 if number % 10 == 0 else 1 if number % 5 == 0 else 0
    most = round(MM_PER_INCH / step)
    return next(rank for rank in range(most.bit_length() - 1, -1, -1) if number % 2**rank == 0)


Widths = list[tuple[float, float, float]]  # of a gauge: where along it, from which height, how wide


def _gauges(case: Case) -> Iterator[tuple[int, Widths]]:
    """Yield each gauge: its graduations from left to right. Those of one gauge stand on one level line."""
    found: dict[tuple[int, float], Widths] = {}
    for one in case.promises.lengths:
        if one.purpose == "gauge":
            found.setdefault((one.page, round(one.start[1], 2)), []).append((one.start[0], one.start[1], one.length))
    for (page, _), widths in found.items():
        if len(widths) > 1:
            yield page, sorted(widths)


def _beside_gauge(case: Case, page: int, widths: Widths) -> Iterator[str]:
    """Yield in words what the bar and the arrow over a gauge show that is no thickness of a board."""
    read = case.page(page)
    (left, foot, least), (right, _, most) = widths[0], widths[-1]
    figures = [one for one in case.promises.figures if one.kind == "length" and one.name.startswith(THICK)]
    taken = [min(most, max(least, one.value)) for one in figures]
    boards = [piece.thickness for piece in case.promises.prints] + [one.value for one in figures]

    def width_at(x: float) -> float:
        return least + (most - least) * (x - left) / (right - left)

    for piece in read.pieces if read is not None else ():
        box = piece.box
        if _widens(piece, (left, foot + least)) and abs(box.right - right) > GAUGE_OFF:
            yield f"the gap goes on to {box.right:.2f} mm, where its last width stands at {right:.2f} mm"
        over = left - 0.1 <= box.left and box.right <= right + 0.1 and foot + least <= box.bottom
        if not over or box.top > foot + most + OVER_GAUGE or not piece.visible:
            continue
        for x in _bar_ends(piece):
            if not any(abs(width_at(x) - end) <= GAUGE_OFF for end in (*taken, least, most)):
                yield f"the bar over the gauge ends at {width_at(x):.2f} mm, which is no thickness that a board may have"
        tip = _arrow(piece)
        if tip is not None and not any(abs(width_at(tip) - one) <= GAUGE_OFF for one in boards):
            yield f"the arrow over the gauge points at {width_at(tip):.2f} mm, which is the thickness of no board"


def _widens(piece: PaintedPath, start: tuple[float, float]) -> bool:
    """Say whether a line leads up and to the right from the first width of a gap."""
    return piece.grey is not None and any(
        len(line) > 1 and dist(line[0], start) <= GAUGE_OFF and line[-1][0] > line[0][0] and line[-1][1] > line[0][1]
        for line in piece.lines()
    )


def _bar_ends(piece: PaintedPath) -> tuple[float, ...]:
    if piece.grey is None or piece.width < HEAVY_BAR or piece.dash:
        return ()
    return (float(piece.points[:, 0].min()), float(piece.points[:, 0].max()))


def _arrow(piece: PaintedPath) -> float | None:
    """Return where an arrow that points down has its tip."""
    if piece.fill_grey is None or piece.fill_grey > 0.5 or len(piece.points) != 4:
        return None
    return float(piece.points[int(piece.points[:, 1].argmin()), 0])
