"""Every rule of the house is in one tuple, on the page of checks, and has a bad case that breaks it and a good one that keeps it.

Rooms with many rules hold their cases in tables and try each of their ``RULES`` both ways; all other cases carry a mark
(``breaks``, ``keeps``), which ``tests/conftest.py`` holds against what the rules said while the test ran.
"""

import ast
import pkgutil
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path

import pytest

import publisher
from docs.rules_page import checks, rules
from publisher.basics import Check, Rule
from publisher.pipeline import ROOMS

TESTS = Path(__file__).parents[1]
TABLES = (
    "brief/test_rules.py",
    "design/rules/test_rules.py",
    "geometry/rules/test_rules.py",
    "geometry/drawings/test_drawn_part.py",
    "proof/test_checks.py",
)
DOORS = {
    **{room: f"publisher.{room}" for room in ROOMS},
    "pipeline": "publisher.pipeline",
    "cli": "publisher.cli.refused",
    "upgrade": "publisher.upgrade",
}


def _stated() -> Iterator[Rule]:
    """Yield every rule that stands in a module of the package."""
    for module in pkgutil.walk_packages(publisher.__path__, "publisher."):
        if not module.name.endswith("__main__"):
            yield from (value for value in vars(pkgutil.resolve_name(module.name)).values() if isinstance(value, Rule))


def test_every_rule_stands_in_one_tuple_at_the_door_of_its_room() -> None:
    objects = {id(rule): rule for rule in _stated()}
    listed = [(room, rule) for room, door in DOORS.items() for rule in getattr(pkgutil.resolve_name(door), "RULES", ())]
    assert {rule.id for room, rule in listed if not rule.id.startswith(f"{room}/")} == set()
    assert [name for name, times in Counter(rule.id for _, rule in listed).items() if times > 1] == []
    assert sorted(r.id for r in objects.values()) == sorted(rule.id for _, rule in listed)
    assert set(objects) == {id(rule) for _, rule in listed}


def test_every_field_is_filled() -> None:
    for rule in rules():
        assert rule.title and rule.rationale, rule.id


def test_the_page_of_checks_names_every_rule() -> None:
    (page,) = checks().values()
    for rule in rules():
        assert page.count(f"| `{rule.id}` |") == 1


def test_a_test_that_several_rules_share_is_no_check_of_all() -> None:
    tests = [check.run for check in rules() if isinstance(check, Check)]
    assert len(tests) == len(set(tests)) > 50


def _tabled(path: str) -> frozenset[str]:
    """Return the ids whose cases stand in a room's table (its ``TABLED``)."""
    spec = spec_from_file_location(path.replace("/", "_").removesuffix(".py"), TESTS / path)
    assert spec is not None and spec.loader is not None
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    return frozenset(module.TABLED)


def _marked(mark: str) -> Iterator[str]:
    """Yield the ids in all marks of this name in the tests; a file may give an id a name of its own."""
    for file in TESTS.rglob("test_*.py"):
        text = file.read_text("utf-8")
        if f"mark.{mark}" not in text:
            continue
        tree = ast.parse(text)
        named = {
            ast.unparse(node.targets[0]): node.value.value
            for node in tree.body
            if isinstance(node, ast.Assign) and isinstance(node.value, ast.Constant)
        }
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and ast.unparse(node.func) == f"pytest.mark.{mark}":
                yield from (named[arg.id] if isinstance(arg, ast.Name) else ast.literal_eval(arg) for arg in node.args)


@pytest.fixture(scope="module")
def tabled() -> frozenset[str]:
    return frozenset().union(*map(_tabled, TABLES))


@pytest.mark.parametrize("mark", ["breaks", "keeps"])
def test_every_rule_has_a_case(mark: str, tabled: frozenset[str]) -> None:
    known, named = {rule.id for rule in rules()}, set(_marked(mark))
    assert known - tabled - named == set(), "rules without a case"
    assert named - known == set(), "marks of rules that there are not"


MAKERS_OF_CHECKS = {"Check", "checked", "judged"}


def test_a_check_says_by_value_what_its_findings_are_held_against() -> None:
    """A limit that has a name stands in the reason (or the title) of a check beside it: the page of checks then shows the number."""
    wrong, looked_at = [], 0
    for module in sorted(Path(publisher.__file__).parent.rglob("*.py")):
        text = module.read_text()
        if not any(f"{maker}(" in text for maker in MAKERS_OF_CHECKS):
            continue
        calls = [node for node in ast.walk(ast.parse(text)) if isinstance(node, ast.Call)]
        named = [call for call in calls if getattr(call.func, "id", "") in MAKERS_OF_CHECKS and call.args]
        makers = [call for call in named if "/" in ast.unparse(call.args[0])]
        if not makers:
            continue
        limits = {
            name.id: name.lineno
            for call in calls
            for keyword in call.keywords
            for name in ast.walk(keyword.value)
            if keyword.arg == "limit" and isinstance(name, ast.Name) and name.id.isupper()
        }
        said = {name.id for call in makers for name in ast.walk(call) if isinstance(name, ast.Name)}
        looked_at += len(limits)
        wrong += [f"{module.name}:{line} {name}" for name, line in limits.items() if name not in said]
    assert looked_at > 15
    assert wrong == []


MARKED = """
import pytest
from publisher.basics import Rule, Severity

RULE = Rule("room/too-long", "Short", "It would not fit.", Severity.ERROR)

@pytest.mark.breaks("room/too-long")
def test_silent(): pass

@pytest.mark.keeps("room/too-long")
def test_spoken(): RULE.found("long")

@pytest.mark.breaks("room/too-long")
def test_broken(): RULE.found("long")

@pytest.mark.keeps("room/too-long")
def test_kept(): pass
"""


def test_a_mark_is_held_against_what_the_rules_said(tmp_path: Path) -> None:
    (tmp_path / "test_marked.py").write_text(MARKED)
    run = subprocess.run(
        [sys.executable, "-m", "pytest", "-p", "tests.conftest", "-p", "no:cacheprovider", "-c", "/dev/null", "-rA", str(tmp_path)],
        cwd=TESTS.parent, capture_output=True, text=True, check=False,
    )  # fmt: skip
    said = {name: word for word, name in re.findall(r"^(PASSED|FAILED) \S*::(\w+)", run.stdout, re.M)}
    assert said == {"test_silent": "FAILED", "test_spoken": "FAILED", "test_broken": "PASSED", "test_kept": "PASSED"}
