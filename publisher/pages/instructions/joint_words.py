"""What a step says of its joints beyond what templates show: which board ends against which, how far what is laid on reaches over."""

from collections import defaultdict
from collections.abc import Iterator

from publisher.basics.wording import say_length, series
from publisher.pages.sheet import Context

ENDS_LEVEL = 0.05  # mm: what reaches over by less lies level


def joint_words(context: Context, own: int) -> tuple[str, ...]:
    """Return the sentences about the joints of the design's ``own``-th step: parts that are printed in pieces are left out."""
    return (*_ends(context, own), *_lines(context, own), *_reaches(context, own))


def _ends(context: Context, own: int) -> Iterator[str]:
    ends: dict[tuple[str, tuple[str, ...]], list[str]] = defaultdict(list)
    for one in context.joined.ends:
        letter, at = _letter(context, one.part), _letter(context, one.at)
        if one.step == own and letter and at:
            ends[at, one.marks].append(letter)
    for (at, marks), letters in sorted(ends.items()):
        where = f" at {series(marks)}" if marks else ""
        if letters == [at]:
            yield f"One {at} ends at the inside face of the next{where}."
        elif len(letters) == 1:
            yield f"{letters[0]} ends at the inside face of {at}{where}."
        else:
            yield f"{series(sorted(letters))} end at the inside face of {at}{where}."


def _lines(context: Context, own: int) -> Iterator[str]:
    for one in context.joined.lines:
        letter, other = sorted((_letter(context, one.part), _letter(context, one.other)))
        if one.step == own and letter and other:
            next_one = f"the next {other}" if letter == other else other
            where = f" at {series(one.marks)}" if one.marks else ""
            yield f"{letter} and {next_one} lie in one plane, edge to edge{where}."


def _reaches(context: Context, own: int) -> Iterator[str]:
    found: dict[tuple[str, str], set[float]] = defaultdict(set)
    for one in context.joined.reaches:
        letter, wall = _letter(context, one.part), _letter(context, one.wall)
        if one.step == own and letter and wall:
            found[letter, wall].add(0.0 if abs(one.far) < ENDS_LEVEL else round(one.far, 2))
    over: dict[tuple[str, float], list[str]] = defaultdict(list)
    for (letter, wall), fars in found.items():
        if len(fars) == 1:  # over two walls of one letter it may reach two ways, and no word tells which is meant
            over[letter, next(iter(fars))].append(wall)
    for (letter, far), walls in sorted(over.items()):
        said, under = say_length(abs(far), first=context.paper.first, plain=True), series(sorted(walls))
        if not far:
            yield f"{letter} ends level with the outside of {under}."
        elif far > 0.0:
            yield f"{letter} stands out {said} over {under}, measured along {letter}."
        else:
            yield f"{letter} ends {said} inside the outside of {under}."


def _letter(context: Context, part_id: str) -> str:
    part = context.part(part_id)
    return part.letter if part is not None else ""
