"""The smallest design of its kind that still fails in the same way, and the case that is kept of it."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

import yaml

from tests.random_designs.design import Design
from tests.random_designs.judge import untruths
from tests.random_designs.kinds import KINDS
from tests.random_designs.make import false_twin
from tests.random_designs.search import Asked, wrong_facts
from tests.random_designs.tool import build, check

CASES = Path(__file__).parent / "cases"
TRIES = 60
BUILDS = 10  # tries where each is a whole build


@dataclass(frozen=True, slots=True)
class Failure:
    """A way to fail: its name, an example, whether another design fails so too, and what a case of it expects."""

    name: str
    example: Design
    fails: Callable[[Design], bool]
    expects: dict[str, object]


def failures(asked: Asked, papers: tuple[str, ...] = ()) -> list[Failure]:
    """Return all ways in which the tool fails on one seed: errors, warnings, wrong facts, a twin that it does not find."""
    design = asked.design
    true: dict[str, object] = {"solids": "confirm"}
    made = [_of_rule(design, rule, "", (), true) for rule in asked.said.rules]
    for fact, _, _ in asked.wrong_facts:
        name = f"{design.kind}-wrong-{_slug(fact.partition('.')[2])}"
        made.append(Failure(name, design, partial(_has_wrong, fact), true))
    for rule in asked.built.rules if asked.built else ():
        if rule not in asked.said.rules:
            made.append(_of_rule(design, rule, "build-", papers, {**true, "build": list(papers)}))
    if asked.change and not asked.found_by and not asked.said.errors:
        false: dict[str, object] = {"solids": "refuse", "change": asked.change}
        made.append(Failure(f"{design.kind}-{_slug(asked.change)}", false_twin(design)[1], _passes, false))
    return made


def known_failures() -> set[str]:
    """Return the names of the cases that the tool still fails."""
    files = CASES.glob("*/expect.yaml")
    return {f.parent.name for f in files if "fails_today" in yaml.safe_load(f.read_text(encoding="utf-8"))}


def _of_rule(design: Design, rule: str, how: str, papers: tuple[str, ...], expects: dict[str, object]) -> Failure:
    return Failure(
        f"{design.kind}-{how}{rule.partition('/')[2] or rule}", design, partial(_has_rule, rule, papers), expects
    )


def _has_rule(rule: str, papers: tuple[str, ...], design: Design) -> bool:
    said = build(design.spec, design.files, papers) if papers else check(design.spec, design.files)
    return rule in said.rules


def _has_wrong(fact: str, design: Design) -> bool:
    return any(name == fact for name, _, _ in wrong_facts(design, check(design.spec, design.files)))


def _passes(design: Design) -> bool:
    return not check(design.spec, design.files).errors


def _slug(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")


def smallest(failure: Failure) -> Design:
    """Return the simplest design that fails alike: any simpler plan that still does is gone on from, until none does.

    A plan is passed over when its solids say otherwise than those of the example: true stays true, untrue untrue.
    """
    design, left = failure.example, BUILDS if "build" in failure.expects else TRIES
    untrue = bool(untruths(design))
    kind = KINDS[design.kind]
    while left:
        for plan in kind.smaller(design.plan):
            left -= 1
            simpler = replace(kind.design(plan), seed=design.seed)
            if bool(untruths(simpler)) == untrue and failure.fails(simpler):
                design = simpler
                break
            if not left:
                break
        else:
            break
    return design


def keep(failure: Failure, design: Design, folder: Path = CASES) -> Path:
    """Write a case: the spec, its files, and what is expected. A reason and the sizes that matter are written by hand."""
    case = folder / failure.name
    case.mkdir(parents=True, exist_ok=True)
    for name, text in (("spec.yaml", design.spec), *design.files):
        (case / name).write_text(text, encoding="utf-8")
    expects = {**failure.expects, "seed": design.seed, "fails_today": "found by a search; nobody has looked at it yet"}
    if failure.expects["solids"] == "confirm":
        expects["facts"] = {name: round(value, 4) for name, value in design.facts}
    else:
        expects["untrue"] = list(untruths(design))
    (case / "expect.yaml").write_text(
        yaml.safe_dump(expects, sort_keys=False, allow_unicode=True, width=140), encoding="utf-8"
    )
    return case
