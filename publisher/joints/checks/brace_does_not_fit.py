"""Knee braces that reach farther than their step, or lower than the table."""

from publisher.basics import Check, Outcome, Severity
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.stacks import braced_layers


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Hold the run of every stack's braces against the steps that they prop, and the drop against the height under the top step."""
    looked_at, found = 0, []
    for report in subject.wholes:
        brace = report.stack.brace
        if brace is None:
            continue
        looked_at += 1
        braced = braced_layers(report.stack, brace)
        roots = [root for root in report.roots if root.braced]
        top = report.stack.layers[report.stack.treads[-1]]
        under = top.bottom - report.stack.layers[0].bottom
        if not braced:
            what = f"a knee of {say_length(brace.drop)} drop finds no core to stand on: the top step of {report.stack.name} lies "
            what += f"{say_length(under)} up"
            found.append(
                check.found(
                    what,
                    subject=report.stack.name,
                    hint="make drop smaller, or leave the braces out",
                    place=brace.place,
                    value=brace.drop,
                    limit=under,
                )
            )
        elif not roots or any(root.arm <= 0.0 for root in roots):
            found.append(
                check.found(
                    f"a knee that runs {say_length(brace.run)} out sticks out beyond the steps of {report.stack.name} that it props",
                    subject=report.stack.name,
                    hint="make run smaller than the step sticks out of its core",
                    place=brace.place,
                    value=brace.run,
                )
            )
    return Outcome(looked_at, tuple(found))


CHECK = Check(
    "joints/brace-does-not-fit",
    "Knee braces end under their step and on their core",
    "a brace that is longer than the step, or that ends in the air, cannot be glued in",
    Severity.WARNING,
    run=run,
    may_be_empty=True,
)
