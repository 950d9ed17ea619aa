"""Parts and bars that are too thin to cut and to keep."""

from collections.abc import Iterator

from publisher.basics import Check, Finding, Findings, Severity, checked
from publisher.basics.wording import say_length
from publisher.design import Board
from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.facts import arch_of, bars_of, short_side, tabs_of
from publisher.joints.least_sizes import (
    BAR,
    CROWN,
    FOOT,
    LONG_BAR,
    PAPERED,
    SHORT_BAR,
    TAB,
    THICKNESS,
    WHOLE_PART,
    least,
)

THIN_DUST = 0.01  # mm


@checked(
    "joints/part-too-thin",
    "Parts, bars, arches and tabs are wide enough to cut and to keep",
    f"narrow foam tears under the knife or breaks in the hand: in bare foam up to {THICKNESS:g} mm a part is {WHOLE_PART.foam:g} mm "
    f"wide, a bar {SHORT_BAR.foam:g} mm, one longer than {BAR:g} mm {LONG_BAR.foam:g} mm, a crown {CROWN.foam:g} mm, a foot "
    f"{FOOT.foam:g} mm, a tab {TAB.foam:g} mm; more in thicker board, {PAPERED:g} of it with paper; card {WHOLE_PART.card:g} mm "
    "(common practice, no source)",
    Severity.WARNING,
    may_be_empty=True,
)
def part_too_thin(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure every part, every bar between an opening and the next or the edge, crowns and feet of arches, and tabs."""
    boards = {board.id: board for board in subject.design.boards}
    yield from [finding for part in subject.parts for finding in _thin(part, boards[part.board], check)]
    return len(subject.parts)


def _thin(part: Part, board: Board, check: Check[Assembled]) -> Iterator[Finding]:
    wide, wanted = short_side(part), least(WHOLE_PART, board)
    who = f"part {part.letter} ({part.name})"
    if wide < wanted - THIN_DUST:
        yield check.found(
            f"{who} is {say_length(wide)} wide; {say_length(wanted)} can be cut and kept (common practice)",
            subject=part.id,
            hint="make it wider, or cut it from card",
            place=part.place,
            value=wide,
            limit=wanted,
        )
    cases = [(bar.width, least(LONG_BAR if bar.length > BAR else SHORT_BAR, board), bar) for bar in bars_of(part)]
    weak = [case for case in cases if case[0] < case[1] - THIN_DUST]
    if weak:
        width, wanted, bar = min(weak, key=lambda case: case[0] / case[1])
        yield check.found(
            f"{who} has a bar {say_length(width)} wide and about {say_length(bar.length)} long beside the opening "
            f"{bar.opening}; {say_length(wanted)} hold (common practice)",
            subject=part.id,
            hint="move the openings apart or make them smaller; frames and glazing bars are cut from card",
            place=part.place,
            value=width,
            limit=wanted,
        )
    yield from _arch(part, board, check)
    limit = least(TAB, board)
    short = min(tabs_of(part), key=lambda tab: tab[1], default=None)
    if short is not None and short[1] < limit - THIN_DUST:
        yield check.found(
            f"{who} has tabs {say_length(short[1])} long on its edge “{short[0]}”; {say_length(limit)} hold (common practice)",
            subject=part.id,
            hint="use fewer tabs there, or make the edge longer",
            place=part.place,
            value=short[1],
            limit=limit,
        )


def _arch(part: Part, board: Board, check: Check[Assembled]) -> Iterator[Finding]:
    arch = arch_of(part)
    if arch is None:
        return
    for what, size, wanted, hint in (
        (
            "is {} thick over the crown of its arch",
            arch[0],
            least(CROWN, board),
            "raise its top or make the arch flatter",
        ),
        ("has a foot {} wide beside its arch", arch[1], least(FOOT, board), "make it longer or the arch narrower"),
    ):
        if size < wanted - THIN_DUST:
            yield check.found(
                f"part {part.letter} ({part.name}) {what.format(say_length(size))}; {say_length(wanted)} hold (common practice)",
                subject=part.id,
                hint=hint,
                place=part.place,
                value=size,
                limit=wanted,
            )
