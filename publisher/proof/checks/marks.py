"""The lines to score, fold, draw and glue along are drawn where they are promised, in the stroke of their kind."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import copy_name, judged, page_name
from publisher.proof.measuring import LEAST_TRIED, MARK_TOLERANCE, Case

KINDS = {"score": "to score", "fold": "to fold", "draw": "to draw", "glue": "to glue"}
LEAST_SHOWN = 0.5  # of the points of one kind: what few words and seams take of it is less


@judged(
    "proof/lines-left-out",
    "A print shows the lines of its piece",
    "a part without its folds and its lines to draw is cut and thrown away: of what was worked out to score, fold, draw and glue "
    f"along, each print shows {LEAST_SHOWN:.0%} of each kind or more, of what is scored and folded of each line; words and seams take less",
    may_be_empty=True,
)
def lines_left_out(case: Case, check: Check[Case]) -> Findings:
    """Look for the lines of each piece, as they were before any page, on its prints."""
    for shown in case.lines_shown():
        if shown.tried >= LEAST_TRIED and shown.met < LEAST_SHOWN * shown.tried:
            outline = shown.outline
            yield check.found(
                f"{page_name(outline.page)}: {copy_name(outline)}: {shown.tried - shown.met} of {shown.tried} points of its lines "
                f"{KINDS.get(shown.kind, 'for ' + shown.kind)} are not drawn",
                subject=outline.part,
                hint="draw all lines of the piece on its print",
                value=float(shown.met),
                limit=LEAST_SHOWN * shown.tried,
            )
    return len(case.lines_shown())


@judged(
    "proof/mark",
    "Lines to score, fold, draw and glue",
    f"a fold in the wrong place, by more than {MARK_TOLERANCE:g} mm, spoils the part as surely as a wrong cut",
    may_be_empty=True,
)
def marked_lines(case: Case, check: Check[Case]) -> Findings:
    """Judge the marks of each kind on each copy."""
    for reading in case.marks():
        if reading.missing:
            promise = reading.promise
            x, y = reading.at
            yield check.found(
                f"{page_name(promise.page)}: {promise.part}, copy {promise.copy}: "
                f"the lines {KINDS.get(promise.kind, promise.kind)} are missing or elsewhere at "
                f"{reading.missing} of {reading.tried} places, for one at {x:.1f}, {y:.1f} mm",
                subject=promise.part,
                hint="draw them where they are promised, in the width and dashes of their kind",
                value=float(reading.missing),
                limit=0.0,
            )
    return sum(r.tried for r in case.marks())
