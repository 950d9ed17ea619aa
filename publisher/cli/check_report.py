"""What ``publisher check`` prints of one variant: the facts that decide, needs with their margins, the print-scale budget."""

from math import isfinite, isinf

from publisher.api import (
    STANDARD,
    Design,
    Fact,
    Joined,
    Kind,
    NeedPlan,
    Worked,
    limit_of,
    margin_of,
    said_limit,
    say,
    say_range,
    spare_words,
    spread_ends,
    takes_words,
)
from publisher.basics.wording import Rounds, counted, fixed, rounded_down, rounded_up
from publisher.cli.report import as_read, finding_record

NAME = 18  # letters of the first column, at the least
STRONG = 100.0  # what bears a hundred figures at its edge is no cantilever worth a word
TRUE_SIZE = 1e-9  # of the print scale: so near to 1 is true size
SIZES = ("width", "depth", "height")
PACKED = ("packed_length", "packed_width", "packed_height")
DECIDING: tuple[tuple[str, str], ...] = (
    ("balance_margin", "balance"),
    ("balance_with_figures", "with figures"),
    ("weakest_step", "weakest step"),
    ("strength_factor", "bears"),
    ("deck_strength_factor", "deck bears"),
    ("deck_sag", "sags"),
    ("joint_stagger", "joints"),
)
"""Facts of an assembly that decide whether it can be built, and what is said before each."""


def report_lines(worked: Worked) -> list[str]:
    """Return the lines of one variant's report, without the findings."""
    state = counted(len(as_read(worked.findings)), "finding") if worked.findings else "nothing found"
    lines = [f"{worked.brief.slug}, {worked.variant or STANDARD}: {counted(len(worked.parts), 'part')}, {state}"]
    design, joined = worked.design, worked.joined
    if design is None or joined is None:
        return lines
    rows = [*_assemblies(design, joined), *_needs(design, joined), _budget(joined), *_boards(joined)]
    wide = max(NAME, *(len(name) for name, _ in rows))
    return [*lines, *(f"  {name:<{wide}}  {said}" for name, said in rows)]


def _assemblies(design: Design, joined: Joined) -> list[tuple[str, str]]:
    rows = []
    for name in dict.fromkeys(
        [*(stack for stack, _ in joined.layers), *(p.name for p in design.panels), *(w.name for w in design.wholes)]
    ):
        keys = (*SIZES, *PACKED, "mass", "deck_span", *(key for key, _ in DECIDING))
        facts = {key: fact for key in keys if (fact := joined.fact(f"{name}.{key}"))}
        rows += [(title, ", ".join(said)) for title, said in ((name, _extent(facts)), ("", _deciding(facts))) if said]
    return rows


def _extent(facts: dict[str, Fact]) -> list[str]:
    """Return how large and heavy an assembly is, standing and packed flat."""
    size, packed = (" × ".join(_mm(facts[key].value) for key in keys if key in facts) for keys in (SIZES, PACKED))
    said = [f"{size} mm wide × deep × high"] if size else []
    said += [_said(facts["mass"].value, "mass")] if "mass" in facts else []
    return said + ([f"packed flat {packed} mm"] if packed else [])


def _deciding(facts: dict[str, Fact]) -> list[str]:
    """Return what decides whether an assembly can be built."""
    bears, deck = facts.get("strength_factor"), facts.get("deck_strength_factor")
    passed_over = {"weakest_step", "strength_factor"} if bears is not None and bears.value > STRONG else set()
    if bears is not None and deck is not None:  # of a stack that is said which breaks first
        as_deck = deck.value <= bears.value
        passed_over |= {"weakest_step", "strength_factor"} if as_deck else {"deck_strength_factor", "deck_sag"}
    if "balance_margin" in facts and not isfinite(facts["balance_margin"].value):
        passed_over.add("balance_with_figures")  # what does not stand by itself
    said = [_words(key, words, facts[key]) for key, words in DECIDING if key in facts and key not in passed_over]
    if "deck_span" in facts and "deck_strength_factor" not in facts:
        said.append("deck not judged: no bending strength of the board is given")
    if "deck_span" in facts and "deck_sag" not in facts and "deck_sag" not in passed_over:
        said.append("sag not judged: no stiffness of the board is given")
    return said


def _words(key: str, words: str, fact: Fact) -> str:
    if key in ("balance_margin", "balance_with_figures"):
        if not isfinite(fact.value):
            return f"{words}: falls over"
        return f"{words} {_mm(fact.value)} mm"
    if key == "joint_stagger":
        return f"{words} {fixed(fact.value, 2)} of a unit apart"
    if key in ("strength_factor", "deck_strength_factor"):
        return f"{words} {fixed(fact.value, 1)} × a figure" if isfinite(fact.value) else f"{words} any figure"
    return f"{words} {say(fact.value, fact.kind)}"


def _needs(design: Design, joined: Joined) -> list[tuple[str, str]]:
    rows = []
    for need in design.needs:
        fact = joined.fact(need.fact)
        if fact is not None:
            said = f"{_value(need, fact)}, {limit_of(need, fact)}: {spare_words(need, fact)}{_spread(need, joined)}"
            rows.append((need.fact, said))
    return rows


def _value(need: NeedPlan, fact: Fact) -> str:
    """Return a fact beside its limit: as it counts against it, or to a thousandth where it would look beyond a limit that it meets."""
    kind, least = _kind(need, fact), need.at_least is not None
    if need.at_least == need.at_most:
        return say(fact.value, kind)
    ways: Rounds = "down" if least else "up"
    said = say(fact.value, kind, ways)
    limit = need.at_least if least else need.at_most
    if limit is None or not isfinite(fact.value) or kind != "length" or margin_of(need, fact) < 0.0:
        return said
    shown, bound = _leading(said), _leading(said_limit(limit, kind, "up" if least else "down"))
    return f"{fixed(fact.value, 3, ways)} mm" if (shown < bound if least else shown > bound) else said


def _leading(words: str) -> float:
    return float(words.partition(" ")[0])


def _spread(need: NeedPlan, joined: Joined) -> str:
    """Say between which ends a fact lies over the spread of board."""
    ends = spread_ends(need.fact, joined.facts)
    if not ends:
        return ""
    way = "95 % of such stacks" if "likely" in ends[0].name else "worst case"
    return f"; {way} {_mm(rounded_down(ends[0].value, 1))} to {_mm(rounded_up(ends[1].value, 1))} mm"


def _boards(joined: Joined) -> list[tuple[str, str]]:
    """Return which boards the design takes, where something limits them."""
    said = []
    for one in joined.boards:
        words = takes_words(one)
        if words and one.least > one.most:
            ends = (joined.meeting(one.least_by), joined.meeting(one.most_by))
            whose = " and ".join(dict.fromkeys(f"the {met.what}" for met in ends if met))
            said.append(("board", f"{one.board}: no thickness will do for {whose}"))
        elif words:
            said.append(("board", f"{one.board} takes {words}"))
    return said


def _kind(need: NeedPlan, fact: Fact) -> Kind:
    """Return the kind in which a need is said: a limit in grams or newtons is written as a plain number."""
    return fact.kind if fact.kind in ("mass", "force") else need.kind


def _failing(joined: Joined) -> str:
    """Return what does not fit at true size, of that what is farthest from it; '' where all fit."""
    allowed = joined.budget
    by = allowed.fits_least_by if allowed.fits_least > 1.0 + TRUE_SIZE else allowed.fits_most_by
    met = joined.meeting(by) if allowed.fits_least > 1.0 + TRUE_SIZE or allowed.fits_most < 1.0 - TRUE_SIZE else None
    return met.what if met else ""


def _budget(joined: Joined) -> tuple[str, str]:
    allowed = joined.budget
    least, most = joined.meeting(allowed.least_by), joined.meeting(allowed.most_by)
    ends = (
        *((f"least set by {least.what}",) if least else ()),
        *((f"most set by {most.what}",) if most else ()),
    )
    if failing := _failing(joined):
        return "print scale", f"none: not even at 100 % does all fit: the {failing}"
    said = say_range(allowed.least, allowed.most, inwards=True)
    return "print scale", f"{said}{': ' if ends else ' (the general limit)'}{', '.join(ends)}"


def _mm(value: float) -> str:
    return "open" if isinf(value) else fixed(value, 1)


def _said(value: float, kind: Kind) -> str:
    return "open" if isinf(value) else say(value, kind)


def record_of(worked: Worked) -> dict[str, object]:
    """Return the JSON form of one variant's report."""
    design, joined = worked.design, worked.joined
    needs: list[dict[str, object]] = []
    facts: list[dict[str, object]] = []
    budget: dict[str, object] | None = None
    if design is not None and joined is not None:
        for need in design.needs:
            fact = joined.fact(need.fact)
            if fact is not None:
                value, margin = fact.value, margin_of(need, fact)
                needs.append(
                    {"fact": need.fact, "value": _number(value), "margin": _number(margin), "met": margin >= -1e-6}
                )
        facts = [{"name": f.name, "kind": f.kind, "value": _number(f.value)} for f in joined.facts]
        allowed = joined.budget
        budget = None if _failing(joined) else {
            "least": allowed.least, "most": allowed.most, "least_by": allowed.least_by, "most_by": allowed.most_by,
        }  # fmt: skip
    return {
        "slug": worked.brief.slug,
        "variant": worked.variant or STANDARD,
        "parts": [p.id for p in worked.parts],
        "facts": facts,
        "needs": needs,
        "print_scale": budget,
        "findings": [finding_record(f) for f in worked.findings],
    }


def _number(value: float) -> float | None:
    return value if isfinite(value) else None
