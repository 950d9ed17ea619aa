"""Knee braces that reach farther than their step, or lower than the table, or that stand under steps that are not there."""

from collections.abc import Iterator

from publisher.basics import Check, Finding, Findings, checked
from publisher.basics.wording import lengths_apart, say_length, say_mm
from publisher.design import BracePlan
from publisher.joints.assembled import Assembled
from publisher.joints.stacks import StackReport


@checked(
    "joints/brace-does-not-fit",
    "Knee braces end under their step and on their core",
    "a brace that is longer than the step, that ends in the air or where other board is cannot be glued in",
    may_be_empty=True,
)
def brace_does_not_fit(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Hold the run of every stack's braces against the steps that they prop, and the drop against the height under each step."""
    looked_at = 0
    for report in subject.wholes:
        brace = report.stack.brace
        if brace is not None and report.stack.treads:
            looked_at += 1
            yield from _of_one(report, brace, check)
    return looked_at


def _of_one(report: StackReport, brace: BracePlan, check: Check[Assembled]) -> Iterator[Finding]:
    name, steps = report.stack.name, report.stack.treads
    if brace.under and brace.under[-1] > len(steps):
        yield check.found(
            f"there is no step {brace.under[-1]}: {name} has {len(steps)} steps",
            subject=name,
            hint="number the steps from the table up",
            place=brace.place,
            value=float(brace.under[-1]),
            limit=float(len(steps)),
        )
    yield from _too_low(report, brace, check)
    blocked = tuple(_blocked(report, brace, check))
    yield from blocked
    propped = [root for root in report.roots if root.braced]
    if report.braced and not blocked and (not propped or any(root.arm <= 0.0 for root in propped)):
        yield check.found(
            f"a knee that runs {say_length(brace.run)} out sticks out beyond the steps of {name} that it props",
            subject=name,
            hint="make run smaller than the step sticks out of its core",
            place=brace.place,
            value=brace.run,
        )


def _too_low(report: StackReport, brace: BracePlan, check: Check[Assembled]) -> Iterator[Finding]:
    """Find the highest step under which a knee would reach below what the stack stands on."""
    name, steps = report.stack.name, report.stack.treads
    wanted = [n for n in brace.under if n <= len(steps)] or ([] if brace.weak or report.braced else [len(steps)])
    low = [n for n in wanted if steps[n - 1] not in report.braced]
    if not low:
        return
    under = report.stack.layers[steps[low[-1] - 1]].bottom - report.stack.layers[0].bottom
    which = f"step {low[-1]}" if brace.under else "the top step"
    drop, up = lengths_apart(brace.drop, under)
    yield check.found(
        f"a knee of {drop} drop finds no core to stand on: {which} of {name} lies {up} up",
        subject=name,
        hint="make drop smaller, or leave the brace out",
        place=brace.place,
        value=brace.drop,
        limit=under,
    )


def _blocked(report: StackReport, brace: BracePlan, check: Check[Assembled]) -> Iterator[Finding]:
    """Find the braces for which there is no room; the lowest is told, with how many more."""
    blocked = [knee for knee in report.knees if knee.blocked]
    if not blocked:
        return
    fits = max(knee.fits for knee in blocked)
    more = f", and {len(blocked) - 1} more" if len(blocked) > 1 else ""
    step = report.stack.treads.index(blocked[0].layer) + 1
    yield check.found(
        f"a knee of {say_length(brace.run)} run and {say_length(brace.drop)} drop finds no room under step {step} of "
        f"{report.stack.name}{more}: it must stand against a core as high as it is, and clear of all other layers",
        subject=report.stack.name,
        hint=f"make run {say_mm(min(knee.fits for knee in blocked), 'down')} or less"
        if all(knee.fits > 0.0 for knee in blocked)
        else "make drop smaller, or brace other steps (under: [4, 8])",
        place=brace.place,
        value=brace.run,
        limit=fits if fits > 0.0 else None,
    )
