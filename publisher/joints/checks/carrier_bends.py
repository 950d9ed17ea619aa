"""Boards on edge that carry a deck, and the legs of frames: too low, too narrow, too slender."""

from collections.abc import Iterator
from math import ceil, sqrt

from publisher.basics import Check, Findings, Place, Severity, checked, record, remembered_few
from publisher.basics.wording import figures_apart, lengths_apart, say_length, say_mm
from publisher.design import say
from publisher.joints.assembled import Assembled
from publisher.joints.bending import BENDING_STRENGTH, strength_of
from publisher.joints.checks.tips_over import weight
from publisher.joints.footing import GRAVITY
from publisher.joints.least_sizes import FOOT, PAPERED, THICKNESS, least
from publisher.joints.panels import Beam, Carrier, Deck, carriers_of

TOO_LITTLE = 0.01  # mm: what a leg may lack


@record
class _Carried:
    """A carrier of a deck: the assembly, where the spec has it, and the load on it (N): a figure and its share of the deck, of which
    half bends it."""

    name: str
    place: Place
    deck: Deck
    carrier: Carrier
    bends: float
    presses: float

    @property
    def who(self) -> str:
        """What it is called in a message."""
        return f"{self.carrier.panel.name} of {self.name}"


@checked(
    "joints/carrier-too-weak",
    "A board on edge bears a figure on the deck that it carries",
    "a bracket breaks at its root, a lintel or a beam between two walls where it is low, when a figure stands on the deck over it "
    f"(elementary bending in its own plane; board whose strength nobody states bears {BENDING_STRENGTH:g} MPa, an assumption)",
    may_be_empty=True,
)
def carrier_too_weak(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare the stress of every upright board under a deck, beyond and between what holds it, with the strength of its board."""
    found: dict[str, list[tuple[float, Beam, _Carried]]] = {}
    looked_at = 0
    for one in _carried(subject):
        looked_at += 1
        strength = strength_of(subject.design.board(one.carrier.panel.part.board))
        for beam in one.carrier.beams:
            if beam.stress(one.bends) > strength:
                found.setdefault(one.name, []).append((strength, beam, one))
    for every in found.values():
        strength, beam, one = max(every, key=lambda case: case[1].stress(case[2].bends) / case[0])
        stress = beam.stress(one.bends)
        bends, bears = figures_apart(stress, strength, 3)
        assumed = f" ({BENDING_STRENGTH:g} MPa assumed)" if strength == BENDING_STRENGTH else ""
        more = len({case[2].carrier.panel.name for case in every}) - 1
        yield check.found(
            f"{one.who} breaks under a figure of {weight(subject.design.figure)} on {one.deck.panel.name}: {_where(beam)} it bends at "
            f"{bends} MPa, and the board bears {bears} MPa{assumed}{f'; so do {more} more' if more else ''}",
            subject=one.name,
            hint=f"make it {say_length(float(ceil(beam.high * sqrt(stress / strength))))} high there, or support it nearer",
            place=one.place,
            value=stress,
            limit=strength,
        )
    return looked_at


@checked(
    "joints/leg-too-narrow",
    "The legs of a frame that carries a deck are as wide as the foot of an arch",
    f"a narrow leg breaks when the piece is set down: in bare foam up to {THICKNESS:g} mm it is {FOOT.foam:g} mm wide, more in thicker "
    f"board, {PAPERED:g} of it with paper (common practice, no source)",
    Severity.WARNING,
    may_be_empty=True,
)
def leg_too_narrow(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure the legs of every upright board that stands on several feet and carries a deck; the narrowest of each is told."""
    looked_at = 0
    for one in _once(subject):
        looked_at += len(one.carrier.legs)
        wanted = least(FOOT, subject.design.board(one.carrier.panel.part.board))
        wide = min((leg.wide for leg in one.carrier.legs), default=wanted)
        if wide >= wanted - TOO_LITTLE:
            continue
        has, holds = lengths_apart(wide, wanted)
        yield check.found(
            f"{one.who}, which carries {one.deck.panel.name}, has a leg {has} wide; {holds} hold (common practice)",
            subject=one.name,
            hint="make its legs wider, or what is open between them narrower",
            place=one.place,
            value=wide,
            limit=wanted,
        )
    return looked_at


@checked(
    "joints/leg-buckles",
    "Legs stay straight under a figure",
    "a slender leg bows out long before its board is crushed (Euler, pinned ends: the most that any leg bears); judged where a board "
    "says its stiffness",
    may_be_empty=True,
)
def leg_buckles(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare the load under which every leg under a deck bows out with a figure over it and its share of the deck."""
    looked_at = 0
    for one in _once(subject):
        stiffness = subject.design.board(one.carrier.panel.part.board).stiffness
        for leg in one.carrier.legs if stiffness is not None else ():
            looked_at += 1
            most = leg.buckles_at(stiffness or 0.0)
            if most < one.presses:
                yield check.found(
                    f"a leg of {one.who}, {say_mm(leg.wide)} wide and {say_mm(leg.high)} high, bows out under "
                    f"{say(most, 'force', 'down')}; "
                    f"a figure of {weight(subject.design.figure)} and its share of {one.deck.panel.name} press with "
                    f"{say(one.presses, 'force', 'up')}",
                    subject=one.name,
                    hint="make it shorter or wider, glue two boards on each other, or join it to its neighbours half way up",
                    place=one.place,
                    value=most,
                    limit=one.presses,
                )
                break
    return looked_at


@remembered_few
def _carried(subject: Assembled) -> tuple[_Carried, ...]:
    """Return every carrier of every deck; three checks ask."""
    return tuple(_carriers(subject))


def _carriers(subject: Assembled) -> Iterator[_Carried]:
    for mated in subject.panels:
        for deck in mated.decks:
            carriers = carriers_of(mated.assembly, deck.panel)
            figure = subject.design.figure.mass * GRAVITY
            share = deck.own * deck.area / max(1, len(carriers))
            for carrier in carriers:
                plan = mated.assembly.plan
                yield _Carried(plan.name, plan.place, deck, carrier, figure + share / 2.0, figure + share)


def _once(subject: Assembled) -> Iterator[_Carried]:
    """Yield every part that carries a deck once in an assembly: its copies are as wide."""
    seen = set()
    for one in _carried(subject):
        key = (one.name, one.carrier.panel.part.id)
        if key not in seen:
            seen.add(key)
            yield one


def _where(beam: Beam) -> str:
    held = "between supports {} apart" if beam.spans else "reaching {} beyond its support"
    return f"{held.format(say_length(beam.free))}, and {say_length(beam.high)} high {beam.across:.0f} mm along it,"
