"""What a step says of a stack: by which of its marks each layer is laid, what to measure, and where its knee braces go."""

from itertools import groupby, pairwise

from publisher.basics import Purpose
from publisher.geometry import Part
from publisher.joints.advice.step_words import StepWords
from publisher.joints.stacks import LAYER_SEAT, StackReport

FRONT_EDGE = "next front edge"


def laid_words(report: StackReport, parts: dict[str, Part], words: StepWords) -> str:
    """Return how each layer is laid on the one below, to follow ``Glue each layer on the one below``."""
    below = [parts[low.part] for low, _ in pairwise(report.stack.layers)]
    names = [{mark.name for mark in part.marks} for part in below]
    if any(FRONT_EDGE in own for own in names):
        return words.say("laid_edge")
    if below and all(LAYER_SEAT in own for own in names):
        return words.say("laid_within")
    if any(mark.purpose is Purpose.LINE_UP for part in below for mark in part.marks):
        return words.say("laid_ticks")
    return words.say("laid_marks")


def wound_words(report: StackReport, parts: dict[str, Part], words: StepWords) -> str:
    """Return what shows that steps are turned as far as they should be, measured with a rule; '' where none are."""
    main = report.stack.main
    if main is None or not main.turn or main.count < 2:
        return ""
    if all(mark.name != FRONT_EDGE for mark in parts[report.stack.layers[main.first].part].marks):
        return ""
    return words.say("wound", stack=report.stack.name)


def braced_words(report: StackReport, parts: dict[str, Part], words: StepWords) -> str:
    """Return where the knee braces of a stack are glued; '' where it has none."""
    stack, brace = report.stack, report.stack.brace
    steps = sorted(stack.treads.index(knee.layer) + 1 for knee in report.knees if not knee.blocked)
    if brace is None or brace.part not in parts or not steps:
        return ""
    which = words.all_of(_runs(steps, words.say("to")))
    return words.say("braced" if len(steps) > 1 else "braced_once", steps=which, brace=brace.part)


def asked_by(report: StackReport) -> tuple[str, ...]:
    """Return the names of the sizes that these words ask for by ``{name}``."""
    brace = report.stack.brace
    return (f"{report.stack.name}.rim_chord", *((f"{brace.part}.width", f"{brace.part}.height") if brace else ()))


def _runs(numbers: list[int], to: str) -> list[str]:
    """Return numbers that follow each other as one: 4, 7 to 9."""
    runs = [[n for _, n in run] for _, run in groupby(enumerate(numbers), key=lambda one: one[1] - one[0])]
    return [
        said
        for run in runs
        for said in ([f"{run[0]}{to}{run[-1]}"] if len(run) > 2 else [str(number) for number in run])
    ]
