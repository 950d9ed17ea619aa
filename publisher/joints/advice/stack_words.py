"""What a step says of a stack: by which of its marks each layer is laid, what to measure, and where its knee braces go."""

from itertools import groupby, pairwise

from publisher.basics import Purpose
from publisher.basics.wording import series
from publisher.geometry import Part
from publisher.joints.stacks import LAYER_SEAT, StackReport

FRONT_EDGE = "next front edge"
DRY_PILE = "It must lie without a gap between its layers, level on the table, and lean to no side."
DRY_BRACED = " Leave out the knee braces: they hold by their glue alone."


def laid_words(report: StackReport, parts: dict[str, Part]) -> str:
    """Return how each layer is laid on the one below, to follow ``Glue each layer on the one below``."""
    below = [parts[low.part] for low, _ in pairwise(report.stack.layers)]
    names = [{mark.name for mark in part.marks} for part in below]
    if any(FRONT_EDGE in own for own in names):
        return ", its front edge along the line that is drawn there for it"
    if below and all(LAYER_SEAT in own for own in names):
        return ", within the line that is drawn there for it"
    if any(mark.purpose is Purpose.LINE_UP for part in below for mark in part.marks):
        return ", its edge at the marks that are drawn there for it"
    return ", where its marks lie over one another"


def wound_words(report: StackReport, parts: dict[str, Part]) -> str:
    """Return what shows that steps are turned as far as they should be, measured with a rule; '' where none are."""
    main = report.stack.main
    if main is None or not main.turn or main.count < 2:
        return ""
    if all(mark.name != FRONT_EDGE for mark in parts[report.stack.layers[main.first].part].marks):
        return ""
    return (
        f"From a corner at the rim to that of the next step it is {{{report.stack.name}.rim_chord}}, straight across. "
    )


def braced_words(report: StackReport, parts: dict[str, Part]) -> str:
    """Return where the knee braces of a stack are glued; '' where it has none."""
    stack, brace = report.stack, report.stack.brace
    steps = sorted(stack.treads.index(knee.layer) + 1 for knee in report.knees if not knee.blocked)
    if brace is None or brace.part not in parts or not steps:
        return ""
    where = f"step{'s' * (len(steps) > 1)} {series(_runs(steps))}"
    each = "one knee brace under each of" if len(steps) > 1 else "the knee brace under"
    return (
        f"Then glue {each} {where}, counted from the lowest: its side of {{{brace.part}.width}} to the underside of the step, where the "
        f"corners of its line were pricked through, its side of {{{brace.part}.height}} upright against the core. "
    )


def asked_by(report: StackReport) -> tuple[str, ...]:
    """Return the names of the sizes that these words ask for by ``{name}``."""
    brace = report.stack.brace
    return (f"{report.stack.name}.rim_chord", *((f"{brace.part}.width", f"{brace.part}.height") if brace else ()))


def _runs(numbers: list[int]) -> list[str]:
    """Return numbers that follow each other as one: 4, 7 to 9."""
    runs = [[n for _, n in run] for _, run in groupby(enumerate(numbers), key=lambda one: one[1] - one[0])]
    return [
        said
        for run in runs
        for said in ([f"{run[0]} to {run[-1]}"] if len(run) > 2 else [str(number) for number in run])
    ]
