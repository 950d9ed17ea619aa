"""Knee braces that reach farther than their step, or lower than the table, or that stand under steps that are not there."""

from collections.abc import Iterator

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.basics.wording import say_length
from publisher.design import BracePlan
from publisher.joints.assembled import Assembled
from publisher.joints.stacks import StackReport


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Hold the run of every stack's braces against the steps that they prop, and the drop against the height under each step."""
    looked_at = 0
    found: list[Finding] = []
    for report in subject.wholes:
        brace = report.stack.brace
        if brace is not None and report.stack.treads:
            looked_at += 1
            found += _of_one(report, brace, check)
    return Outcome(looked_at, tuple(found))


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
    foot = report.stack.layers[0].bottom
    wanted = [n for n in brace.under if n <= len(steps)] or ([] if brace.weak or report.braced else [len(steps)])
    low = [n for n in wanted if steps[n - 1] not in report.braced]
    if low:
        under = report.stack.layers[steps[low[-1] - 1]].bottom - foot
        which = f"step {low[-1]}" if brace.under else "the top step"
        yield check.found(
            f"a knee of {say_length(brace.drop)} drop finds no core to stand on: {which} of {name} lies {say_length(under)} up",
            subject=name,
            hint="make drop smaller, or leave the brace out",
            place=brace.place,
            value=brace.drop,
            limit=under,
        )
    propped = [root for root in report.roots if root.braced]
    if report.braced and (not propped or any(root.arm <= 0.0 for root in propped)):
        yield check.found(
            f"a knee that runs {say_length(brace.run)} out sticks out beyond the steps of {name} that it props",
            subject=name,
            hint="make run smaller than the step sticks out of its core",
            place=brace.place,
            value=brace.run,
        )


CHECK = Check(
    "joints/brace-does-not-fit",
    "Knee braces end under their step and on their core",
    "a brace that is longer than the step, or that ends in the air, cannot be glued in",
    Severity.WARNING,
    run=run,
    may_be_empty=True,
)
