"""Findings of needs that are not met, with the size that would meet them worked out."""

from collections.abc import Callable, Iterable
from dataclasses import replace

from publisher.basics import Finding, record
from publisher.basics.wording import Rounds, counted, cut, listed
from publisher.design import Design, Fact, NeedPlan, Size, say
from publisher.joints.advice.solving import DIGITS, Evaluate, Solution, Trials, meets, solve
from publisher.joints.budget import budget_of
from publisher.joints.checks import NEED_NOT_MET, NEEDS_CONTRADICT
from publisher.joints.facts import limit_of
from publisher.joints.model import Joined, ScaleBudget

NOT_TRIED = " (not tried with the whole design: check with --advise)"


@record
class Tried:
    """A whole design: all that is found in it, and the sheets that it takes, by the name of board and sheet; () where it was not laid
    out, or where a part fits no sheet."""

    findings: tuple[Finding, ...] = ()
    sheets: tuple[tuple[str, int], ...] = ()


NOTHING_TRIED = Tried()
Whole = Callable[[Size], Tried]
"""Works the whole design out with another value of one size, as far as the boards' layouts."""

TRIED_WHOLE = 5
"""Values that are tried whole in one check: a layout may take a second."""


def suggest(
    design: Design,
    joined: Joined,
    evaluate: Evaluate,
    whole: Whole | None = None,
    most: int | None = TRIED_WHOLE,
    others: Tried = NOTHING_TRIED,
) -> Joined:
    """Return what joints said, with hints that name the size that would meet each need, and the needs that contradict.

    ``evaluate(size)`` works the design out with the value that the size brings; it is called only when a need that names a
    size to adjust is not met, at most twice MOST_TRIALS times for each. A size that is printed is also solved for the least
    print scale that everything else of the design allows. At most ``most`` of the values that are named (None: all) are then
    tried with the ``whole`` design, and what is wrong there and was not before (in joints' findings and ``others``) is said, and where
    it takes more sheets than ``others`` say.
    """
    trials: dict[str, Trials] = {}
    findings = list(joined.findings)
    solved: list[tuple[NeedPlan, Solution]] = []
    tried: dict[tuple[str, float], Tried] = {}
    now = replace(others, findings=(*joined.findings, *others.findings))
    for at, finding in enumerate(joined.findings):
        need, size = _missed(design, finding)
        if need is None or size is None:
            continue
        own = trials.setdefault(size.name, Trials(size, evaluate, joined.facts))
        solution = solve(need, own)
        solved.append((need, solution))
        printed = _for_print(need, solution, own, joined)
        said = hint_of(solution, printed)
        best = printed[0] if printed is not None and printed[0].value is not None else solution
        if whole is not None and best.value is not None:
            if most is None or len(tried) < most:
                if (size.name, best.value) not in tried:
                    tried[size.name, best.value] = whole(replace(size, value=round(best.value, DIGITS)))
                there = tried[size.name, best.value]
                said += worse(now, there, f"at {say(best.value, size.kind)}")
            else:
                said += NOT_TRIED
        findings[at] = replace(finding, hint=said)
    return replace(joined, findings=(*findings, *contradictions(design.needs, joined.facts, solved, trials)))


def _missed(design: Design, finding: Finding) -> tuple[NeedPlan | None, Size | None]:
    """Return the need that a finding says is not met, and the size that it names to adjust; None for what there is not."""
    if finding.check != NEED_NOT_MET.id:
        return None, None
    need = next((n for n in design.needs if finding.place == n.place and finding.subject == n.fact), None)
    return need, next((s for s in design.sizes if need is not None and s.name == need.adjust), None)


def worse(now: Tried, there: Tried, when: str) -> str:
    """Return what is wrong with a design that was tried and is not wrong now, and where it takes more sheets; '' when nothing is."""
    known = {(f.check, f.subject) for f in now.findings}
    new = list(dict.fromkeys(f.message for f in there.findings if (f.check, f.subject) not in known))
    before = dict(now.sheets)
    more = [
        f"{counted(number, 'sheet')} of {name} in place of {before[name]}"
        for name, number in there.sheets
        if number > before.get(name, number)
    ]
    words = f"; but {when} it takes {listed(more)}" if more else ""
    if new:
        others = f", and {len(new) - 1} more" if len(new) > 1 else ""
        words += f"; but {when} something else is wrong: {cut(new[0])}{others}"
    return words


def _for_print(need: NeedPlan, found: Solution, trials: Trials, joined: Joined) -> tuple[Solution, float] | None:
    """Return the solution at the least print scale, and that scale; None for what is not printed."""
    if found.value is None or need.at_least is None or joined.meeting(need.fact) is None:
        return None
    scale = others_budget(joined, need.fact).least
    if meets(need, trials.facts.get(round(found.value / trials.grid)), scale):
        return None
    return solve(need, trials, scale), scale


def others_budget(joined: Joined, name: str) -> ScaleBudget:
    """Return what all meetings but one allow; at the least the general band of ±0.5 %."""
    return budget_of(tuple(m for m in joined.meetings if m.name != name))


def hint_of(found: Solution, printed: tuple[Solution, float] | None) -> str:
    """Return which value of the size meets the need: ``make `reach` 108.3 mm (4.26 in) or more``."""
    size = found.size
    now = f"(now {say(size.value, size.kind)})"
    if found.value is None:
        return f"no “{size.name}” within {_range(found)} satisfies it {now}: change another size, or the need"
    words = f"make “{size.name}” {_bound(found)} {now}"
    if printed is not None and printed[0].value is not None:
        words += f"; {_bound(printed[0])} holds also when it prints at {100 * printed[1]:.1f} %"
    return words


def _bound(found: Solution) -> str:
    rounds: Rounds = "up" if found.upward else "down"  # the value is on the grid; its inches are not
    return f"{say(found.value or 0.0, found.size.kind, rounds)} or {'more' if found.upward else 'less'}"


def _range(found: Solution) -> str:
    return f"{say(found.low, found.size.kind)} … {say(found.high, found.size.kind)}"


def contradictions(
    needs: tuple[NeedPlan, ...],
    facts: tuple[Fact, ...],
    solved: Iterable[tuple[NeedPlan, Solution]],
    trials: dict[str, Trials],
) -> tuple[Finding, ...]:
    """Return a finding for every need whose solution breaks another need, when no value tried of the size meets both."""
    found: list[Finding] = []
    said: set[frozenset[str]] = set()
    solved = tuple(solved)
    hopeless = [need for need, solution in solved if solution.value is None]  # their own findings say so
    for need, solution in solved:
        if solution.value is None:
            continue
        own = trials[solution.size.name]
        there = own.at(round(solution.value / own.grid)) or ()
        for other in needs:
            pair = frozenset((str(need.place), str(other.place)))
            if other is need or other in hopeless or pair in said or not _broken(other, there):
                continue
            if not meets(other, facts) and other.adjust != need.adjust:
                continue  # it fails anyway and has a size of its own
            if _both_met(need, other, own):
                continue
            said.add(pair)
            found.append(_contradiction(need, other, solution, there))
    return tuple(found)


def _both_met(one: NeedPlan, other: NeedPlan, trials: Trials) -> bool:
    """Tell whether a value of the size that was tried meets two needs."""
    return any(meets(one, tried) and meets(other, tried) for tried in trials.facts.values())


def _broken(need: NeedPlan, facts: tuple[Fact, ...]) -> bool:
    """Tell whether the fact of a need is there and does not meet it."""
    return any(f.name == need.fact for f in facts) and not meets(need, facts)


def _contradiction(need: NeedPlan, other: NeedPlan, solution: Solution, there: tuple[Fact, ...]) -> Finding:
    value = next(f for f in there if f.name == other.fact)
    size: Size = solution.size
    return NEEDS_CONTRADICT.found(
        f"{need.fact} ({limit_of(need)}) takes “{size.name}” {_bound(solution)}; there {other.fact} is "
        f"{say(value.value, value.kind)}, and {limit_of(other)} is needed: no “{size.name}” meets both",
        subject=need.fact,
        hint=f"change one of the two needs (the other is at {other.place}), or a size besides “{size.name}”",
        place=need.place,
        value=value.value,
        limit=other.at_least if other.at_least is not None and value.value < other.at_least else other.at_most,
    )
