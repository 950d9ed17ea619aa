"""Holes of layers through which one dowel is to pass."""

from collections.abc import Iterator
from math import dist

from publisher.basics import Check, Finding, Findings, Point, checked, record
from publisher.basics.wording import say_length
from publisher.design import FitPlan
from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.checks.slot_fit import PLAY_DUST
from publisher.joints.facts import round_holes
from publisher.joints.stacks import StackReport


@record
class _PassedHole:
    """A hole of a layer, where it lies in the stack, its radius (mm), and what is to pass it and how thick that is (mm)."""

    centre: Point
    radius: float
    fit: FitPlan
    thick: float


@checked(
    "joints/holes-not-in-line",
    "A dowel that passes several layers finds their holes in line",
    "each hole may be wide enough and the dowel still not go through: layers that lie shifted or turned move their holes by more "
    "than its play",
    may_be_empty=True,
)
def holes_not_in_line(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Follow the holes that fits name from layer to layer. A hole over whole board ends the dowel; one that lies partly over a
    hole below, or none of a layer over any below, is a fault."""
    parts = {part.id: part for part in subject.parts}
    looked_at = 0
    for report in subject.wholes:
        runs: list[list[_PassedHole]] = []
        for number, layer in enumerate(report.stack.layers, 1):
            own = list(_held(subject, parts[layer.part], report, number))
            looked_at += bool(own)
            runs, apart = _follow(runs, own)
            if apart is not None:
                yield _finding(report, number, parts[layer.part], *apart, check)
                runs = [[hole] for hole in own]
    return looked_at


def _held(subject: Assembled, part: Part, report: StackReport, number: int) -> Iterator[_PassedHole]:
    pose = report.stack.layers[number - 1].pose
    for bore in round_holes(part):
        fit = next((fit for fit in subject.design.fits if fit.into == f"{part.id}.{bore.name}.width"), None)
        fact = None if fit is None else subject.fact(fit.goes_fact)
        thick = None if fit is None else fit.goes if fit.goes is not None else fact.value if fact else None
        if fit is not None and thick is not None:
            yield _PassedHole(pose.apply(bore.centre), bore.radius, fit, thick)


def _follow(
    runs: list[list[_PassedHole]], own: list[_PassedHole]
) -> tuple[list[list[_PassedHole]], tuple[_PassedHole, float, float] | None]:
    """Return the runs of holes as they go on through a layer, and its first hole that is not in line: with how far it is off and
    how far it may be (mm)."""
    on: list[list[_PassedHole]] = []
    off: list[tuple[_PassedHole, float, float]] = []
    for hole in own:
        run = min(runs, key=lambda run: dist(run[-1].centre, hole.centre), default=[])
        if not run:
            on.append([hole])
            continue
        cases = [
            (dist(below.centre, hole.centre), below.radius + hole.radius - max(below.thick, hole.thick))
            for below in run
        ]
        apart, may = max(cases, key=lambda case: case[0] - case[1])
        if apart <= may + PLAY_DUST:
            on.append([*run, hole])
        elif dist(run[-1].centre, hole.centre) < run[-1].radius + hole.radius:
            return [], (hole, apart, may)
        else:
            off.append((hole, apart, may))
    if off and not any(len(run) > 1 for run in on):
        return [], off[0]
    return [*on, *([hole] for hole, _, _ in off)], None


def _finding(
    report: StackReport, number: int, part: Part, hole: _PassedHole, apart: float, may: float, check: Check[Assembled]
) -> Finding:
    below = "the layers below" if number > 2 else "layer 1"
    return check.found(
        f"the {hole.fit.name} does not pass layer {number} ({part.name}) of {report.stack.name}: its hole lies {say_length(apart)} "
        f"off those of {below}, and {say_length(max(may, 0.0))} of play is there",
        subject=report.stack.name,
        hint="lay the layers so that their holes are in line: no shift, and turns about the hole; or move the holes",
        place=report.place,
        value=apart,
        limit=max(may, 0.0),
    )
