"""Needs held against facts."""

from collections.abc import Callable
from math import inf, isinf

from publisher.basics import record
from publisher.basics.units import inches
from publisher.basics.wording import Rounds, fixed, nearest, paired, say_inches, say_mm, told_apart
from publisher.design import Design, Fact, Kind, NeedPlan, say

NEED_CLOSE = 1e-4
"""mm, degrees or plain: a fact this near to its limit meets it. Both come from sums of floats, and from angles and lengths that a designer
wrote with so many decimals."""

TIGHT_SPARE = 0.5
"""mm: hand cutting is no better (common practice, no source); what has less to spare is tight."""

MOST_WHOLE = 2
"""Decimals beyond the usual ones with which a limit is said whole; of inches ``MOST_WHOLE_INCH``: a thirty-second has five."""
MOST_WHOLE_INCH = 3

PLAIN: tuple[Kind, ...] = ("count", "number", "ratio")
"""Kinds without a unit, which a plain limit may be compared with."""

WEIGHED: tuple[Kind, ...] = ("mass", "force")
"""Kinds whose limits are written as plain numbers: grams and newtons, as a board's mass and strength are."""


@record
class Shortfall:
    """A need that is not met: its fact, the limit that it breaks, and whether the fact is too small."""

    need: NeedPlan
    fact: Fact
    limit: float
    too_small: bool


def same_kind(need: NeedPlan, fact: Fact) -> bool:
    """Tell whether a need's limit is of the fact's kind."""
    return need.kind == fact.kind or (need.kind in PLAIN and fact.kind in (*PLAIN, *WEIGHED))


def shortfall(need: NeedPlan, fact: Fact) -> Shortfall | None:
    """Return how a need is not met, or None."""
    if need.at_least is not None and fact.value < need.at_least - NEED_CLOSE:
        return Shortfall(need, fact, need.at_least, True)
    if need.at_most is not None and fact.value > need.at_most + NEED_CLOSE:
        return Shortfall(need, fact, need.at_most, False)
    return None


def spread_ends(name: str, facts: tuple[Fact, ...]) -> tuple[Fact, ...]:
    """Return the least and the greatest that a fact may come to over the spread of board: of 95 % of the stacks where boards are
    mixed, else in the worst case; () for a fact that is not so many boards high."""
    known = {fact.name: fact for fact in facts}
    for way in ("likely_", ""):
        ends = tuple(known[end] for end in (f"{name}_{way}least", f"{name}_{way}most") if end in known)
        if len(ends) == 2:
            return ends
    return ()


def margin_of(need: NeedPlan, fact: Fact) -> float:
    """Return by how much a fact keeps a need's limits, in the fact's unit; negative by how much it misses; inf when open."""
    least = inf if need.at_least is None else fact.value - need.at_least
    most = inf if need.at_most is None else need.at_most - fact.value
    return min(least, most)


def spare_words(need: NeedPlan, fact: Fact) -> str:
    """Return how a need stands, in words: ``met, 2.22 mm (0.08 in) to spare``, ``met exactly``, ``met, but tight: less than 0.5
    mm to spare``, ``NOT MET, 3.00 mm (0.12 in) short``, ``NOT MET, 3.00 mm (0.12 in) too much``."""
    margin = margin_of(need, fact)
    kind = fact.kind if fact.kind in WEIGHED else need.kind
    if isinf(margin):
        return "met"
    if abs(margin) <= NEED_CLOSE:
        return "met exactly"
    if margin < 0.0:
        over = need.at_most is not None and fact.value > need.at_most
        return f"NOT MET, {say(-margin, kind, 'up')} {'too much' if over else 'short'}"
    if kind == "length" and margin < TIGHT_SPARE:
        return f"met, but tight: less than {fixed(TIGHT_SPARE, 1)} mm to spare"
    return f"met, {say(margin, kind, 'down')} to spare"


def message_of(short: Shortfall) -> str:
    """Return what was found and what is expected, with enough digits to tell them apart."""
    kind = short.fact.kind
    value = say(short.fact.value, kind, "down" if short.too_small else "up")
    limit = said_limit(short.limit, kind, "up" if short.too_small else "down")
    if say(short.fact.value, kind) == say(short.limit, kind):
        value, limit = told_apart(short.fact.value, short.limit, lambda number, more: say(number, kind, more=more))
    word = "at least" if short.too_small else "at most"
    return f"{short.fact.name} is {value}; {word} {limit} is needed"


def limit_of(need: NeedPlan, fact: Fact | None = None) -> str:
    """Return a need's limit in words, as ``said_limit``: ``at least 25.0 mm (0.99 in)``, ``exactly 100.0 mm (3.94 in)``; in the
    fact's unit where the limit is a plain number."""
    kind = fact.kind if fact is not None and fact.kind in WEIGHED else need.kind
    if need.at_least is not None and need.at_least == need.at_most:
        return f"exactly {said_limit(need.at_least, kind)}"
    limits = [] if need.at_least is None else [f"at least {said_limit(need.at_least, kind, 'up')}"]
    if need.at_most is not None:
        limits.append(f"at most {said_limit(need.at_most, kind, 'down')}")
    return " and ".join(limits)


def said_limit(limit: float, kind: Kind, rounds: Rounds = "nearest") -> str:
    """Return a limit as its writer gave it, where few decimals say it whole: ``31.75 mm (1.25 in)`` for 1.25 in and 31.75 mm. What they
    do not say whole is rounded as told: away from failure."""
    if isinf(limit) or kind in ("count", "area"):
        return say(limit, kind, rounds)
    if kind != "length":
        return _whole(lambda way, more: say(limit, kind, way, more=more), MOST_WHOLE) or say(limit, kind, rounds)
    metric = _whole(lambda way, more: say_mm(limit, way, more=more), MOST_WHOLE)
    imperial = _whole(lambda way, more: f"{fixed(inches(limit), 2 + more, way)} in", MOST_WHOLE_INCH)
    if not metric and not imperial:
        return say(limit, kind, rounds)
    shown = metric or say_mm(limit, rounds)
    return paired(shown, imperial or say_inches(limit, rounds), "mm")


def _whole(words: Callable[[Rounds, int], str], most: int) -> str:
    """Return a figure with as few decimals more, up to so many, as leave nothing to round; '' where none do."""
    pairs = ((words("down", more), words("up", more)) for more in range(most + 1))
    return next((low for low, high in pairs if low == high), "")


def hint_of(short: Shortfall, design: Design) -> str:
    """Return which size to change, and how it stands now."""
    adjust = short.need.adjust
    size = next((s for s in design.sizes if s.name == adjust), None)
    if not adjust:
        return "change the sizes that it follows from, or the need"
    now = f" (now {say(size.value, size.kind)})" if size else ""
    return f"make “{adjust}” {'larger' if short.too_small else 'smaller'}{now}"


def nearest_fact(name: str, facts: tuple[Fact, ...]) -> str:
    """Return the known fact most like a name, or ''; of one owner's facts first."""
    owner = name.partition(".")[0]
    own = [f.name for f in facts if f.name.partition(".")[0] == owner]
    return nearest(name, own) or nearest(name, [f.name for f in facts])
