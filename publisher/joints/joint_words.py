"""What a step says of its joints beyond what templates show: which board ends against which, how far what is laid on reaches over.
Worked out here, before any page, and promised word for word."""

from collections import defaultdict
from collections.abc import Iterator

from publisher.basics import NumberPromise, SentencePromise
from publisher.basics.wording import LengthUnit, say_length, series
from publisher.joints.model import EndsAt, InLine, Joined, LaidSo, LevelAt, PutInto, ReachesEnds, ReachesOver

ENDS_LEVEL = 0.05  # mm: what reaches over by less lies level
JOINT = "joint:"
"""Begins the keys of these sentences: ``joint:3:2`` for the second of the third step of the design."""

SaidOfJoints = EndsAt | InLine | ReachesOver | ReachesEnds | LevelAt | LaidSo | PutInto
LettersOfParts = dict[str, str]
SaidWithNumbers = tuple[str, tuple[NumberPromise, ...]]


def joint_words(joined: Joined, letters: LettersOfParts, first: LengthUnit = "mm") -> Iterator[SentencePromise]:
    """Yield the sentences about the joints of each step: of parts with ``letters`` (by their ids), so that those that are printed in
    pieces are left out."""
    having: tuple[SaidOfJoints, ...] = (
        *joined.ends,
        *joined.lines,
        *joined.reaches,
        *joined.past_ends,
        *joined.levels,
        *joined.laid,
        *joined.put_into,
    )
    steps = sorted({one.step for one in having})
    for own in steps:
        said = (
            *(*_ends(joined, letters, own), *_lines(joined, letters, own), *_levels(joined, letters, own)),
            *(*_reaches(joined, letters, own, first), *_past_ends(joined, letters, own, first)),
            *(*_laid(joined, letters, own), *_put_into(joined, letters, own)),
        )
        for number, (text, numbers) in enumerate(said, 1):
            yield SentencePromise(f"{JOINT}{own}:{number}", text, numbers)


def _ends(joined: Joined, letters: LettersOfParts, own: int) -> Iterator[SaidWithNumbers]:
    ends: dict[tuple[str, tuple[str, ...]], list[str]] = defaultdict(list)
    for one in joined.ends:
        letter, at = letters.get(one.part, ""), letters.get(one.at, "")
        if one.step == own and letter and at:
            ends[at, one.marks].append(letter)
    for (at, marks), found in sorted(ends.items()):
        where = f" at {series(marks)}" if marks else ""
        if found == [at]:
            yield f"One {at} ends at the inside face of the next{where}.", ()
        elif len(found) == 1:
            yield f"{found[0]} ends at the inside face of {at}{where}.", ()
        else:
            yield f"{series(sorted(found))} end at the inside face of {at}{where}.", ()


def _lines(joined: Joined, letters: LettersOfParts, own: int) -> Iterator[SaidWithNumbers]:
    for one in joined.lines:
        letter, other = sorted((letters.get(one.part, ""), letters.get(one.other, "")))
        if one.step == own and letter and other:
            next_one = f"the next {other}" if letter == other else other
            where = f" at {series(one.marks)}" if one.marks else ""
            yield f"{letter} and {next_one} lie in one plane, edge to edge{where}.", ()


def _levels(joined: Joined, letters: LettersOfParts, own: int) -> Iterator[SaidWithNumbers]:
    for one in joined.levels:
        found = sorted({letters.get(part, "") for part in one.parts})
        if one.step != own or "" in found:
            continue
        where = f" at {series(one.marks)}" if one.marks else ""
        every = series(found) if len(found) > 1 else f"All {found[0]}"
        yield f"{every} {'stand level at the foot' if one.end == 'foot' else 'are level at the top'}{where}.", ()


def _past_ends(joined: Joined, letters: LettersOfParts, own: int, first: LengthUnit) -> Iterator[SaidWithNumbers]:
    over: dict[tuple[str, float], list[str]] = defaultdict(list)
    for one in joined.past_ends:
        letter, wall = letters.get(one.part, ""), letters.get(one.wall, "")
        if one.step == own and letter and wall:
            over[letter, 0.0 if abs(one.far) < ENDS_LEVEL else one.far].append(wall)
    for (letter, far), walls in sorted(over.items()):
        said, under = say_length(abs(far), first=first, plain=True), series(sorted(walls))
        numbers = (NumberPromise(f"{letter} past the ends of {under}", abs(far), "length", said),)
        if not far:
            yield f"{letter} ends level with both ends of {under}.", ()
        elif far > 0.0:
            yield f"{letter} stands out {said} over both ends of {under}.", numbers
        else:
            yield f"{letter} ends {said} inside both ends of {under}.", numbers


def _laid(joined: Joined, letters: LettersOfParts, own: int) -> Iterator[SaidWithNumbers]:
    for one in joined.laid:
        letter, on = letters.get(one.part, ""), letters.get(one.on, "")
        if one.step == own and letter and on:
            yield f"Turn {letter} so that its “{one.mark}” lies over the “{one.mark}” of {on}.", ()


def _put_into(joined: Joined, letters: LettersOfParts, own: int) -> Iterator[SaidWithNumbers]:
    for one in joined.put_into:
        letter, host = letters.get(one.part, ""), letters.get(one.host, "")
        if one.step == own and letter and host:
            yield f"Push {letter} into {host} until its end is level with the far face.", ()
            if one.lined:
                yield (
                    f"The outside face of {letter} lies in line with the two short lines beside its hole in {host}.",
                    (),
                )


def _reaches(joined: Joined, letters: LettersOfParts, own: int, first: LengthUnit) -> Iterator[SaidWithNumbers]:
    found: dict[tuple[str, str], set[float]] = defaultdict(set)
    for one in joined.reaches:
        letter, wall = letters.get(one.part, ""), letters.get(one.wall, "")
        if one.step == own and letter and wall:
            found[letter, wall].add(0.0 if abs(one.far) < ENDS_LEVEL else round(one.far, 2))
    over: dict[tuple[str, float], list[str]] = defaultdict(list)
    for (letter, wall), fars in found.items():
        if len(fars) == 1:  # over two walls of one letter it may reach two ways, and no word tells which is meant
            over[letter, next(iter(fars))].append(wall)
    for (letter, far), walls in sorted(over.items()):
        said, under = say_length(abs(far), first=first, plain=True), series(sorted(walls))
        numbers = (NumberPromise(f"{letter} over {under}", abs(far), "length", said),)
        if not far:
            yield f"{letter} ends level with the outside of {under}.", ()
        elif far > 0.0:
            yield f"{letter} stands out {said} over {under}, measured along its underside.", numbers
        else:
            yield f"{letter} ends {said} inside the outside of {under}.", numbers
