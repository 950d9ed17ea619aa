"""Holes of layers, and of panels that face each other, through which one dowel is to pass."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations
from math import acos, cos, dist, radians, tan

import numpy as np
import shapely

from publisher.basics import Check, Finding, Findings, Point, checked, record
from publisher.basics.wording import lengths_apart
from publisher.design import FitPlan
from publisher.geometry import Part, polygon
from publisher.joints.assembled import Assembled
from publisher.joints.checks.slot_fit import PLAY_DUST
from publisher.joints.facts import round_holes
from publisher.joints.outlines import Array
from publisher.joints.panels import Panel, PanelAssembly
from publisher.joints.stacks import StackReport


@record
class _PassedHole:
    """A hole of a layer, where it lies in the stack, its radius (mm), and what is to pass it and how thick that is (mm)."""

    centre: Point
    radius: float
    fit: FitPlan
    thick: float


@record
class _BoredPanel:
    """A panel with a hole that a fit names: the middle of the hole in its board and the way of its axis, in space (3,)."""

    panel: Panel
    hole: _PassedHole
    middle: Array
    axis: Array


LINE_DUST = 1e-6
"""mm: what comes from placing panels by joins."""

FACING = 30.0
"""Degrees between the axes of two holes, at most, through which one dowel could be meant to pass. An assumption."""


@checked(
    "joints/holes-not-in-line",
    "A dowel that passes several layers or panels finds their holes in line",
    "each hole may be wide enough and the dowel still not go through: layers that lie shifted or turned, and panels that face each "
    "other askew, move their holes by more than its play",
    may_be_empty=True,
)
def holes_not_in_line(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Follow the holes that fits name from layer to layer, and look through those of each two panels. A hole over whole board ends
    the dowel; one that lies partly over the next layer's, or none of a layer over any below, is a fault. Of panels, which lie apart,
    board that the axis of a hole meets ends it as well: two dowels that nearly face each other may be meant."""
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
    for mated in subject.panels:
        bored = [one for panel in mated.assembly.panels for one in _bored(subject, panel)]
        looked_at += len(bored)
        for one, other in combinations(bored, 2):
            if one.hole.fit.name == other.hole.fit.name and not _ended(one, other, mated.assembly):
                yield from _between(one, other, mated.assembly, check)
    return looked_at


def _held(subject: Assembled, part: Part, report: StackReport, number: int) -> Iterator[_PassedHole]:
    pose = report.stack.layers[number - 1].pose
    return (replace(hole, centre=pose.apply(hole.centre)) for hole in _passed(subject, part))


def _passed(subject: Assembled, part: Part) -> Iterator[_PassedHole]:
    """Yield the holes of a part that a fit names, in its own coordinates."""
    for bore in round_holes(part):
        fit = next((fit for fit in subject.design.fits if fit.into == f"{part.id}.{bore.name}.width"), None)
        fact = None if fit is None else subject.fact(fit.goes_fact)
        thick = None if fit is None else fit.goes if fit.goes is not None else fact.value if fact else None
        if fit is not None and thick is not None:
            yield _PassedHole(bore.centre, bore.radius, fit, thick)


def _bored(subject: Assembled, panel: Panel) -> Iterator[_BoredPanel]:
    if panel.part.bending is None:
        for hole in _passed(subject, panel.part):
            yield _BoredPanel(
                panel, hole, panel.frame.point(hole.centre, panel.part.thickness / 2.0), panel.frame.outward
            )


def _ended(one: _BoredPanel, other: _BoredPanel, assembly: PanelAssembly) -> bool:
    """Tell whether the whole board of another panel lies between two holes."""
    for panel in assembly.boards:
        if panel.name in (one.panel.name, other.panel.name):
            continue
        ends = panel.frame.back(np.array([one.middle, other.middle]))
        deep = -panel.part.thickness / 2.0 - ends[:, 2]
        if deep[0] * deep[1] < 0.0:
            x, y, _ = ends[0] + (ends[1] - ends[0]) * deep[0] / (ends[1, 2] - ends[0, 2])
            if shapely.contains_xy(polygon(panel.part.outline), x, y):
                return True
    return False


def _between(
    one: _BoredPanel, other: _BoredPanel, assembly: PanelAssembly, check: Check[Assembled]
) -> Iterator[Finding]:
    """Yield a finding for two holes of which the axis of one meets the other: how far the second is off that axis, with what a dowel
    that is not square to both takes in their boards."""
    square = min(abs(float(one.axis @ other.axis)), 1.0)
    if one.panel.name == other.panel.name or square < cos(radians(FACING)):
        return
    way = other.middle - one.middle
    off = float(np.linalg.norm(way - (way @ one.axis) * one.axis))
    if off >= max(one.hole.radius, other.hole.radius):
        return  # the axis of each comes to whole board of the other, which ends its dowel
    apart = off + tan(acos(square)) * (one.panel.part.thickness + other.panel.part.thickness) / 2.0
    may = one.hole.radius + other.hole.radius - max(one.hole.thick, other.hole.thick)
    if apart > may + LINE_DUST:
        off_each_other, play = lengths_apart(apart, max(may, 0.0))
        yield check.found(
            f"the {other.hole.fit.name} does not pass {one.panel.name} and {other.panel.name} of {assembly.plan.name}: their holes lie "
            f"{off_each_other} off each other, and {play} of play is there",
            subject=assembly.plan.name,
            hint="put both holes at one height and one distance from what the panels share; or move one so far that no dowel is meant",
            place=assembly.plan.place,
            value=apart,
            limit=max(may, 0.0),
        )


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
    off, play = lengths_apart(apart, max(may, 0.0))
    return check.found(
        f"the {hole.fit.name} does not pass layer {number} ({part.name}) of {report.stack.name}: its hole lies {off} "
        f"off those of {below}, and {play} of play is there",
        subject=report.stack.name,
        hint="lay the layers so that their holes are in line: no shift, and turns about the hole; or move the holes",
        place=report.place,
        value=apart,
        limit=max(may, 0.0),
    )
