"""Level panels between supports that break or sag under a figure, or reach far beyond what carries them."""

from collections.abc import Callable
from dataclasses import replace
from math import floor

from publisher.basics import Check, Findings, Place, Severity, checked
from publisher.basics.wording import figures_apart, lengths_apart, say_length
from publisher.joints.assembled import Assembled
from publisher.joints.bending import BENDING_STRENGTH, Bending
from publisher.joints.checks.tips_over import weight
from publisher.joints.least_sizes import OVERHANG
from publisher.joints.panels import Deck

SAG = 0.5
"""Of the board's thickness: what sags more looks wrong and opens its joints. An assumption."""


@checked(
    "joints/deck-too-weak",
    "Decks bear a figure at their worst place",
    "a board between two walls, or beyond one, breaks where it is loaded farthest from them (elementary bending; supports are what "
    "touches it from below and the walls that its edges are glued to; "
    f"board whose strength nobody states bears {BENDING_STRENGTH:g} MPa, an assumption)",
    may_be_empty=True,
)
def too_weak(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare the greatest stress of every deck, under a figure at its worst place, with the bending strength of its board."""
    boards = {board.id: board for board in subject.design.boards}
    for name, place, deck in decks_in(subject):
        if deck.hanging is not None:
            x, y = deck.hanging
            yield check.found(
                f"{deck.panel.name} of {name} carries nothing at its seam: two edges butt there without a plate, and the piece "
                f"about {x:.0f} mm across and {y:.0f} mm up its template is held on one side only",
                subject=name,
                hint="give the split a plate, or put a support under the seam",
                place=place,
            )
            continue
        at = deck.weakest
        stress = deck.stress(at)
        if stress <= deck.strength:
            continue
        said = boards[deck.panel.part.board].bending_strength is not None
        assumed = "" if said else f" ({BENDING_STRENGTH:g} MPa assumed)"
        bends, bears = figures_apart(stress, deck.strength, 3)
        yield check.found(
            f"{deck.panel.name} of {name} breaks under a figure of {weight(subject.design.figure)} {_where(at)}: it bends at "
            f"{bends} MPa there, and the board bears {bears} MPa{assumed}",
            subject=name,
            hint=_cure(deck, at, _stress, deck.strength),
            place=place,
            value=stress,
            limit=deck.strength,
        )
    return len(decks_in(subject))


@checked(
    "joints/deck-sags",
    f"Decks give under a figure by no more than {SAG:g} of their board",
    "a deck that sags looks wrong and opens its joints; judged where a board says its stiffness (the limit is an assumption)",
    may_be_empty=True,
)
def sags(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare how far every deck gives under a figure with half of its board; a board of unknown stiffness is not judged."""
    looked_at = 0
    for name, place, deck in decks_in(subject):
        sag = deck.sag()
        if sag is None:
            continue
        looked_at += 1
        at, depth = sag
        limit = SAG * deck.thick
        if depth <= limit:
            continue
        sag_said, most = lengths_apart(depth, limit)
        yield check.found(
            f"{deck.panel.name} of {name} sags by {sag_said} under a figure of {weight(subject.design.figure)} {_where(at)}; "
            f"half of the board, {most}, is the most",
            subject=name,
            hint=_cure(deck, at, _sag, limit),
            place=place,
            value=depth,
            limit=limit,
        )
    return looked_at


@checked(
    "joints/deck-reaches-far",
    f"Decks reach at most {OVERHANG:g} boards beyond what carries them",
    "a long overhang breaks when the piece is lifted by it (common practice, no source)",
    Severity.WARNING,
    may_be_empty=True,
)
def reaches_far(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure how far every deck reaches beyond all that carries it; layers of a stack go by their stress alone."""
    decks = [found for found in decks_in(subject) if not found[2].layered]
    for name, place, deck in decks:
        beyond = [one for one in deck.bendings if one.way == "beyond"]
        far = max(beyond, key=lambda one: one.length, default=None)
        limit = OVERHANG * deck.thick
        if deck.hanging is None and far is not None and far.length > limit + 0.01:
            reaches, holds = lengths_apart(far.length, limit)
            yield check.found(
                f"{deck.panel.name} of {name} reaches {reaches} beyond what carries it; {holds}, "
                f"{OVERHANG:g} boards, hold up in use (common practice)",
                subject=name,
                hint="put a support nearer to its edge, or make it shorter there",
                place=place,
                value=far.length,
                limit=limit,
            )
    return len(decks)


def decks_in(subject: Assembled) -> list[tuple[str, Place, Deck]]:
    """Return all decks with the assembly of which they are, and where the spec has that."""
    return [
        *((m.assembly.plan.name, m.assembly.plan.place, deck) for m in subject.panels for deck in m.decks),
        *((w.plan.name, w.plan.place, deck) for w in subject.things for deck in w.decks),
        *((one.stack, one.place, deck) for one in subject.layered for deck in one.decks),
    ]


def _where(at: Bending) -> str:
    x, y = at.at
    if at.neck:
        return f"{say_length(at.length)} beyond a neck {say_length(at.across)} wide ({x:.0f} mm across and {y:.0f} mm up its template)"
    what = {
        "span": f"between supports {say_length(at.length)} apart",
        "near": f"{say_length(at.length)} beside its support",
        "beyond": f"{say_length(at.length)} beyond its support",
    }[at.way]
    return f"{what} ({x:.0f} mm across and {y:.0f} mm up its template)"


def _stress(deck: Deck, at: Bending, thick: float) -> float:
    return at.stress(deck.load, deck.base, deck.own * thick / deck.thick, thick)


def _sag(deck: Deck, at: Bending, thick: float) -> float:
    return at.sag(deck.load, deck.base, deck.own * thick / deck.thick, thick, deck.stiffness or 0.0)


def _cure(deck: Deck, at: Bending, measure: Callable[[Deck, Bending, float], float], limit: float) -> str:
    """Say how near a support must be, and how many boards glued on each other would do: each tried by the rule itself."""
    low, high = 0.0, at.length
    while high - low > 0.25:
        middle = (low + high) / 2.0
        low, high = (middle, high) if measure(deck, replace(at, length=middle), deck.thick) <= limit else (low, middle)
    what = "put a support so that no more than" if at.overhang else "put supports no more than"
    nearer = f"{what} {say_length(float(floor(low)))} {'reaches beyond it' if at.overhang else 'apart'}"
    nearer = f"make its neck wider, {nearer}" if at.neck else nearer
    several = next((n for n in (2, 3, 4) if measure(deck, at, n * deck.thick) <= limit), None)
    return nearer if several is None else f"{nearer}, or glue {several} boards on each other"
