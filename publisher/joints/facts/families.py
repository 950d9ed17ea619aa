"""Packs that meet each other: the sizes that they say they meet at, compared in mm."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Finding, Place, Rule, Severity, record
from publisher.basics.wording import did_you_mean, told_apart
from publisher.design import Design, Fact, Kind, Size, amount, say
from publisher.joints.facts.needs import NEED_CLOSE, PLAIN

BOARD = "board"  # the size that every design of a family calls its board's thickness
DECK_STEP_FELT = 0.1
"""mm: a step between two decks that a finger does not feel. Common practice, no source."""

PACKS_DO_NOT_MEET = Rule(
    "joints/packs-do-not-meet",
    "Packs of a family meet",
    "a deck that is higher than the one beside it is found when both are built, and then it is too late",
    Severity.ERROR,
)
MEETING_SIZE_ALONE = Rule(
    "joints/meeting-size-alone",
    "A size at which packs meet has the same name in each of them",
    "a slip of the pen in one name, and nothing is compared any more",
    Severity.WARNING,
)


@record
class MeetingSize:
    """What one pack says of a size at which it meets others: ``slug`` is its design's, ``pack`` names it in messages, with
    its variant and board if need be."""

    slug: str
    pack: str
    name: str
    value: float
    kind: Kind
    place: Place


@record
class Member:
    """A design that meets others, and its facts; ``at`` gives both at another value of a size, None when it cannot be built so."""

    design: Design
    facts: tuple[Fact, ...]
    at: Callable[[Size], tuple[Design, tuple[Fact, ...]] | None]


def compare_members(members: tuple[Member, ...]) -> tuple[Finding, ...]:
    """Return what does not meet among the designs that say at which sizes they meet; () when there are not two of them.

    Each variant is compared as it is, and once more for every other board thickness that the family has.
    """
    sizes: list[MeetingSize] = []
    findings: list[Finding] = []
    boards = dict.fromkeys(round(board.value, 4) for one in members if (board := _board(one.design)))
    for one in members:
        name = f"{one.design.slug} ({one.design.variant})" if one.design.variant else one.design.slug
        own, problems = meeting_sizes(name, one.design, one.facts)
        sizes += own
        findings += problems
        board = _board(one.design)
        for thickness in boards:
            if board is None or abs(thickness - board.value) < 1e-3:
                continue
            tried = one.at(replace(board, value=thickness))
            if tried is not None:
                sizes += meeting_sizes(f"{name} on {say(thickness, 'length')} board", *tried)[0]
    if len({size.slug for size in sizes}) < 2:
        return tuple(findings)
    return (*findings, *compare_meets(tuple(sizes)))


def _board(design: Design) -> Size | None:
    return next((s for s in design.sizes if s.name == BOARD and s.kind == "length"), None)


def meeting_sizes(
    pack: str, design: Design, facts: tuple[Fact, ...]
) -> tuple[tuple[MeetingSize, ...], tuple[Finding, ...]]:
    """Return the meeting sizes of a design by its facts, and findings for those that have no value."""
    sizes: list[MeetingSize] = []
    findings: list[Finding] = []
    for plan in design.meets:
        quantity, problems = amount(plan.amount, design, facts)
        findings += problems
        if quantity is not None:
            sizes.append(MeetingSize(design.slug, pack, plan.name, quantity.value, quantity.kind, plan.place))
    return tuple(sizes), tuple(findings)


def compare_meets(sizes: tuple[MeetingSize, ...]) -> tuple[Finding, ...]:
    """Compare what all packs say of each name; one finding for each name on which they differ, by how much, and who says what.

    A pack that is compared on several boards is named with each that differs from its own.
    """
    names = dict.fromkeys(size.name for size in sizes)
    found = [finding for name in names if (finding := _compare(tuple(s for s in sizes if s.name == name)))]
    packs = {name: {s.slug for s in sizes if s.name == name} for name in names}
    for name in names:
        near = _likely_meant(name, packs)
        if near:
            size = next(s for s in sizes if s.name == name)
            found.append(
                MEETING_SIZE_ALONE.found(
                    f"no other pack meets at “{name}”",
                    subject=size.pack,
                    hint=near,
                    place=size.place,
                )
            )
    return tuple(found)


def _likely_meant(name: str, packs: dict[str, set[str]]) -> str:
    """Return in words the name at which other packs meet, where a single pack has one that is much like it; else ''."""
    own = packs[name]
    others = [other for other, having in packs.items() if len(having) > 1 and own.isdisjoint(having)]
    return did_you_mean(name, others) if len(own) == 1 else ""


def _compare(sizes: tuple[MeetingSize, ...]) -> Finding | None:
    kinds = {"number" if s.kind in PLAIN else s.kind for s in sizes}
    low, high = min(sizes, key=lambda s: s.value), max(sizes, key=lambda s: s.value)
    apart = high.value - low.value
    if len(kinds) > 1:
        one, other = sizes[0], next(s for s in sizes if s.kind != sizes[0].kind)
        what = (
            f"{one.name} is {say(one.value, one.kind)} in {one.pack} and {say(other.value, other.kind)} in {other.pack}"
        )
        return PACKS_DO_NOT_MEET.found(
            what, subject=one.name, hint="say the same kind of size in both", place=other.place
        )
    if apart <= (DECK_STEP_FELT + NEED_CLOSE if low.kind == "length" else NEED_CLOSE):
        return None
    ends = told_apart(low.value, high.value, lambda value, more: say(value, low.kind, more=more))
    words = dict(zip((low.value, high.value), ends, strict=True))
    said = dict.fromkeys((s.pack, words.get(s.value) or say(s.value, s.kind)) for s in sizes)
    return PACKS_DO_NOT_MEET.found(
        f"{low.name}: {', '.join(f'{pack} {value}' for pack, value in said)}: differ by {say(apart, low.kind)}",
        subject=low.name,
        hint=f"change the sizes of one pack (the greatest is at {high.place}, the least at {low.place}) until they agree",
        place=low.place,
        value=apart,
        limit=DECK_STEP_FELT if low.kind == "length" else 0.0,
    )
