"""The house keeps its shape: rooms, order, public faces, module sizes, mirrors."""

import ast
import re
import subprocess
import sys
import tomllib
from functools import cache
from pathlib import Path

import pytest

from publisher.pipeline import ROOMS

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "publisher"
MODULES = sorted(PACKAGE.rglob("*.py"))
USED_WHOLE = ("api", "cli", "pipeline", "upgrade")  # on top of the rooms; tested in tests/whole as a user runs them
ON_TOP = (*USED_WHOLE, "sweep")
FLOORED = ("design", "geometry", "joints", "pages", "proof")
TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "publisher", "designs", "tests", "build", "docs"}


@cache
def tree_of(module: Path) -> ast.Module:
    """Return a module taken apart, once for all tests."""
    return ast.parse(module.read_text())


@cache
def nodes_of(module: Path) -> tuple[ast.AST, ...]:
    """Return all that stands in a module, walked once for all tests."""
    return tuple(ast.walk(tree_of(module)))


def test_the_rooms_stand_in_the_order_of_the_alphabet_and_of_the_data() -> None:
    folders = sorted(p.name for p in PACKAGE.iterdir() if (p / "__init__.py").exists())
    assert list(ROOMS) == [f for f in folders if f not in ON_TOP] == sorted(ROOMS)


def test_the_contract_is_the_reverse_of_the_rooms() -> None:
    contract = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["importlinter"]["contracts"][0]
    names = [name for layer in reversed(contract["layers"]) for name in layer.split(" | ")]
    assert names == [*ROOMS, "pipeline", "sharing", "batch", "sweep", "dumps", "upgrade", "api", "cli", "__main__"]
    assert contract["exhaustive"] is True


def test_the_contracts_hold() -> None:
    run = subprocess.run(
        [sys.executable, "-c", "from importlinter.cli import lint_imports_command; lint_imports_command()"],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert run.returncode == 0, run.stdout + run.stderr


@pytest.mark.parametrize("room", ROOMS)
def test_a_room_says_what_comes_in_what_goes_out_and_what_it_never_does(room: str) -> None:
    text = ast.get_docstring(ast.parse((PACKAGE / room / "__init__.py").read_text())) or ""
    for words in ("Comes in:", "Goes out:", "Never:"):
        assert words in text


@pytest.mark.parametrize("room", ROOMS)
def test_a_room_exports_exactly_its_public_names(room: str) -> None:
    tree = ast.parse((PACKAGE / room / "__init__.py").read_text())
    imported = {
        alias.asname or alias.name for node in tree.body if isinstance(node, ast.ImportFrom) for alias in node.names
    }
    gathered = [node for node in tree.body if isinstance(node, ast.AnnAssign) and ast.unparse(node.target) == "RULES"]
    if gathered:  # a door that gathers the rules of its floors into one tuple exports that tuple instead of them
        imported -= {node.id for node in ast.walk(gathered[0]) if isinstance(node, ast.Name)}
        imported.add("RULES")
    exported = next(
        ast.literal_eval(node.value)
        for node in tree.body
        if isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "") == "__all__"
    )
    assert set(exported) == imported
    assert list(exported) == sorted(exported, key=lambda n: (not n.isupper(), not n[0].isupper(), n))


SIDE_DOORS = {
    ("basics", "units"),
    ("basics", "wording"),
}  # apart from the door, so that a contract can close them to the judges


def test_rooms_are_entered_only_by_their_door() -> None:
    wrong = []
    for module in MODULES:
        room = module.relative_to(PACKAGE).parts[0]
        for other, inner in re.findall(r"from publisher\.(\w+)\.(\S+) import", module.read_text()):
            if other != room and other in ROOMS and (other, inner) not in SIDE_DOORS:
                wrong.append(f"{module.relative_to(ROOT)} reaches into {other}")
    assert wrong == []


JUDGES = ("proof", "ruler")  # they state units and word lengths for themselves


@pytest.mark.parametrize("once", [r"\bget_close_matches\(", r"(?<![\w.])25\.4\b(?! mm)"])
def test_the_inch_and_the_nearest_word_stand_once(once: str) -> None:
    makers = [m for m in MODULES if m.relative_to(PACKAGE).parts[0] not in JUDGES]
    found = [m.relative_to(PACKAGE).as_posix() for m in makers if re.search(once, m.read_text())]
    assert [f for f in found if not f.startswith("basics/")] == [] and len(found) == 1


SHARED_NOUNS = {"Array"}  # a numpy array: each room's short name for a library's type, no noun of the trade


def test_a_class_name_means_one_thing_in_the_whole_house() -> None:
    """No two classes share a name, nor a class and an alias; aliases may when they say the same."""
    meanings: dict[str, set[str]] = {}
    for module in MODULES:
        tree = tree_of(module)
        for node in nodes_of(module):
            if isinstance(node, ast.ClassDef):
                meanings.setdefault(node.name, set()).add(f"{module.relative_to(ROOT)}:{node.lineno}")
        for node in tree.body:
            if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
                name = node.targets[0].id
                if name.lstrip("_")[:1].isupper() and not name.isupper():
                    meanings.setdefault(name, set()).add(ast.unparse(node.value))
    assert len(meanings) > 300
    assert {n: sorted(m) for n, m in meanings.items() if len(m) > 1 and n not in SHARED_NOUNS} == {}


def test_a_number_that_has_a_name_stands_once_in_the_whole_house() -> None:
    """A limit's name says which limit it is: no two modules state one name, be the number the same; only the judges, who may
    not ask the makers, state a number again, and then the same."""
    numbers: dict[str, dict[str, float]] = {}
    for module in MODULES:
        for node in tree_of(module).body:
            if isinstance(node, ast.Assign) and len(node.targets) == 1:
                for name, number in _named_numbers(node.targets[0], node.value):
                    numbers.setdefault(name, {})[module.relative_to(PACKAGE).as_posix()] = number
    assert len(numbers) > 400
    assert {name: found for name, found in numbers.items() if len(set(found.values())) > 1} == {}
    sides = {
        name: [where.split("/")[0] if where.split("/")[0] in JUDGES else "makers" for where in found]
        for name, found in numbers.items()
    }
    assert {name: list(numbers[name]) for name, known in sides.items() if len(set(known)) < len(known)} == {}


def _named_numbers(target: ast.expr, value: ast.expr) -> list[tuple[str, float]]:
    """Return public names of an assignment and the numbers that they get, those of a tuple too."""
    if isinstance(target, ast.Tuple) and isinstance(value, ast.Tuple):
        return [pair for one, other in zip(target.elts, value.elts, strict=True) for pair in _named_numbers(one, other)]
    if not isinstance(target, ast.Name) or not target.id.isupper() or target.id.startswith("_"):
        return []
    whole = isinstance(value, ast.Constant | ast.BinOp | ast.UnaryOp)
    if not whole or any(
        not isinstance(n, ast.Constant | ast.operator | ast.unaryop | ast.BinOp | ast.UnaryOp) for n in ast.walk(value)
    ):
        return []
    number = eval(compile(ast.Expression(value), "", "eval"), {})
    return [(target.id, float(number))] if isinstance(number, int | float) and not isinstance(number, bool) else []


def test_floors_are_entered_only_by_their_door() -> None:
    """Inside a room, ``room/floor/module.py`` is imported by its own floor; all others name ``room.floor``.

    Rules are plain values by subject: who needs one may name its subject (``geometry.rules.drawings``)."""
    wrong = []
    for module in MODULES:
        room, floor, *_ = (*module.relative_to(PACKAGE).parts, "")
        for other in re.findall(rf"from publisher\.{room}\.(\w+)\.\S+ import", module.read_text()):
            if other not in (floor, "rules"):
                wrong.append(f"{module.relative_to(ROOT)} reaches into {room}/{other}")
    assert wrong == []


def test_a_floor_offers_nothing_that_nobody_takes() -> None:
    """A floor's door offers what it imports; what stands there is used in the door itself or imported from it."""
    taken = {
        f"{node.module}.{alias.name}"
        for module in MODULES
        for node in ast.walk(tree_of(module))
        if isinstance(node, ast.ImportFrom)
        for alias in node.names
    }
    idle = []
    for door in (door for room in FLOORED for door in (PACKAGE / room).glob("*/__init__.py")):
        own = {node.id for node in ast.walk(tree_of(door)) if isinstance(node, ast.Name)}
        floor = ".".join(door.parent.relative_to(ROOT).parts)
        offered = [
            alias.asname or alias.name
            for node in tree_of(door).body
            if isinstance(node, ast.ImportFrom)
            for alias in node.names
        ]
        idle += [f"{floor}.{name}" for name in offered if name not in own and f"{floor}.{name}" not in taken]
    assert idle == []


@pytest.mark.parametrize("room", FLOORED)
def test_a_room_of_floors_says_their_order_in_a_contract(room: str) -> None:
    contracts = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["importlinter"]["contracts"]
    contract = next(c for c in contracts if c["id"] == f"floors-of-{room}")
    assert contract["exhaustive"] is True
    for floor in (PACKAGE / room).glob("*/__init__.py"):
        assert ast.get_docstring(ast.parse(floor.read_text())), f"{room}/{floor.parent.name} does not say what it is"


def test_tests_mirror_the_package() -> None:
    """``room/sub/module.py`` is tested in ``tests/room/sub/test_module.py``, ``tests/room/test_module.py``, ``test_sub_module.py`` or,
    with its siblings, ``test_sub.py``; one beside the rooms in ``tests/whole/test_module.py``."""
    missing = []
    for module in MODULES:
        path = module.relative_to(PACKAGE)
        if path.name in {"__init__.py", "__main__.py", "model.py", "dumps.py"} or path.parts[0] in USED_WHOLE:
            continue
        if not _has_logic(module) or "records" in path.parts:
            continue
        room, folders = path.parts[0] if len(path.parts) > 1 else "whole", path.parts[1:-1]
        names = ("_".join((*folders, path.stem)), path.stem, *folders)
        own = ROOT.joinpath("tests", room, *folders, f"test_{path.stem}.py")
        if not own.exists() and not any((ROOT / "tests" / room / f"test_{name}.py").exists() for name in names):
            missing.append(f"{path} has no tests/{room}/test_{names[0]}.py")
    assert missing == []


def _has_logic(module: Path) -> bool:
    return any(isinstance(node, ast.FunctionDef) for node in ast.walk(tree_of(module)))


def test_the_top_level_is_fixed() -> None:
    tracked = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False).stdout.split()
    # where git cannot list them (an unpacked archive), the folder itself is looked at
    names = tracked or [p.name for p in ROOT.iterdir() if p.name not in {"__pycache__"}]
    assert {t for t in (name.split("/")[0] for name in names) if not t.startswith(".")} == TOP
    assert not tracked or [n for n in tracked if n.startswith("build/")] == ["build/.gitignore"]


def test_the_map_of_the_rooms_names_every_room() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text()
    assert re.findall(r"^\| `(\w+)/` \|", text, re.M) == list(ROOMS)


@pytest.mark.parametrize("room", FLOORED)
def test_the_map_names_every_floor_in_its_order(room: str) -> None:
    (line,) = re.findall(rf"^\| `{room}` \| (.*) \|$", (ROOT / "DEVELOPERS.md").read_text(), re.M)
    folders = {p.parent.name for p in (PACKAGE / room).glob("*/__init__.py")}
    named = [name for name in re.findall(r"`(\w+)`", line) if name in folders]
    contracts = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["importlinter"]["contracts"]
    layers = next(c for c in contracts if c["id"] == f"floors-of-{room}")["layers"]
    level = {name: rank for rank, layer in enumerate(reversed(layers)) for name in layer.split(" | ")}
    assert set(named) == folders
    assert [level[name] for name in named] == sorted(level[name] for name in named)


def test_dependencies_are_ranges_up_to_the_next_major_and_each_has_one_exact_version_for_ci() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    named = [*project["dependencies"], *project["optional-dependencies"]["test"]]
    ranges = dict(d.split(">=") for d in named)
    exact = dict(
        line.split("==")
        for line in (ROOT / ".ci/constraints.txt").read_text().splitlines()
        if line[:1] not in ("", "#")
    )
    assert list(exact) == list(ranges)
    for name, words in ranges.items():
        least, next_major = words.split(",<")
        assert _numbers(least) <= _numbers(exact[name]) < _numbers(next_major), name
        assert next_major == str(_numbers(exact[name])[0] + 1), name


def _numbers(version: str) -> tuple[int, ...]:
    return tuple(int(number) for number in version.split("."))


def _says(module: Path) -> list[str]:
    """Return the texts in a module, docstrings aside."""
    alone = {id(node.value) for node in nodes_of(module) if isinstance(node, ast.Expr)}
    texts = (node for node in nodes_of(module) if isinstance(node, ast.Constant) and id(node) not in alone)
    return [node.value for node in texts if isinstance(node.value, str)]


def test_messages_quote_in_one_way() -> None:
    """“…”, whatever is quoted. The note in a file of layouts is older than that, and stays as it stands beside the specs."""
    said = {
        (m.relative_to(PACKAGE).as_posix(), text) for m in PACKAGE.rglob("*.py") for text in _says(m) if "`" in text
    }
    assert {where for where, _ in said} == {"material/store.py"}
