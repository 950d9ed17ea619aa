"""What a search found, as text: counts of designs, findings on true ones, twins found or not, the smallest distances."""

from collections import Counter
from collections.abc import Sequence

from tests.random_designs.dice import is_near
from tests.random_designs.search import Asked

LEAST_NEAR = 0.3  # of all designs lie near a limit


def lines(asked: Sequence[Asked]) -> list[str]:
    """Return the whole report."""
    out = [f"{len(asked)} designs"]
    for name, values in (
        ("kind", [a.design.kind for a in asked]),
        ("board", [a.design.base.board for a in asked]),
        ("joint", [a.design.joint for a in asked]),
        ("paper", [a.design.base.paper for a in asked]),
        ("use", [a.design.base.use for a in asked]),
    ):
        out.append(f"  by {name}: " + ", ".join(f"{key} {n}" for key, n in Counter(values).most_common()))
    return [*out, *_near(asked), *_true(asked), *_twins(asked)]


def near_share(asked: Sequence[Asked]) -> float:
    """Return the share of designs that lie near one limit at least."""
    return sum(any(is_near(*pair) for pair in a.design.near) for a in asked) / max(1, len(asked))


def _near(asked: Sequence[Asked]) -> list[str]:
    names = sorted({name for a in asked for name, _ in a.design.near})
    out = [f"near a limit: {near_share(asked):.0%} of the designs (aim {LEAST_NEAR:.0%})"]
    for name in names:
        own = [distance for a in asked for limit, distance in a.design.near if limit == name]
        close = sum(is_near(name, distance) for distance in own)
        out.append(f"  {name}: {close} of {len(own)} near, least {min(own):.3f}")
    return out


def _true(asked: Sequence[Asked]) -> list[str]:
    out = []
    for title, ids in (
        ("errors on true designs", [(a, {r for r, _ in a.said.errors}) for a in asked]),
        ("warnings on true designs", [(a, {r for r, _ in a.said.warnings}) for a in asked]),
        ("wrong facts on true designs", [(a, {name for name, _, _ in a.wrong_facts}) for a in asked]),
        ("errors in building true designs", [(a, {r for r, _ in a.built.errors} if a.built else set()) for a in asked]),
        (
            "warnings in building true designs",
            [(a, {r for r, _ in a.built.warnings} if a.built else set()) for a in asked],
        ),
    ):
        out.append(f"{title}: {sum(bool(own) for _, own in ids)}")
        for rule, n in Counter(r for _, own in ids for r in own).most_common():
            first = next(a for a, own in ids if rule in own)
            kinds = Counter(a.design.kind for a, own in ids if rule in own)
            where = ", ".join(f"{kind} {count}" for kind, count in kinds.most_common())
            out.append(f"  {n:4} {rule} ({where}; first: --kind {first.design.kind} --seeds {first.design.seed})")
    return out


def _twins(asked: Sequence[Asked]) -> list[str]:
    own = [a for a in asked if a.twin]
    missed = [a for a in own if not a.found_by]
    out = [f"false twins: {len(own) - len(missed)} of {len(own)} found"]
    for kind, change in sorted({(a.design.kind, a.change) for a in own}):
        these = [a for a in own if (a.design.kind, a.change) == (kind, change)]
        lost = [a for a in these if not a.found_by]
        by = Counter(rule for a in these for rule in a.found_by).most_common(3)
        text = f"  {kind}, {change}: {len(these) - len(lost)} of {len(these)} found"
        text += " by " + ", ".join(f"{rule} {n}" for rule, n in by) if by else ""
        if lost:
            text += f"; not found: seeds {', '.join(str(a.design.seed) for a in lost[:6])}"
            warned = Counter(rule for a in lost for rule in a.warned_by).most_common(2)
            text += f", warned by {', '.join(f'{rule} {n}' for rule, n in warned)}" if warned else ""
        out.append(text)
    return out
