"""Where a module can be changed, and how: literals, comparisons, places of arguments and of items; each change of one node."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random

TOP = Path(__file__).parents[3]
ROOMS = ("publisher/pages", "publisher/press")
NEGATED = {
    ast.Lt: ast.GtE, ast.GtE: ast.Lt, ast.Gt: ast.LtE, ast.LtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.In: ast.NotIn, ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is,
}  # fmt: skip
EDGE = {ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt}


@dataclass(frozen=True)
class Site:
    """A node of a file that can be changed: its number in the order of ``_nodes``, its first line and its last."""

    path: str
    node: int
    line: int
    last: int

    @property
    def module(self) -> str:
        """Return the name of the module."""
        name = self.path.removesuffix(".py").replace("/", ".")
        return name.removesuffix(".__init__")


@dataclass(frozen=True)
class Mutant:
    """A changed module, and in words what was changed."""

    site: Site
    tree: ast.Module
    said: str


def sites() -> list[Site]:
    """Return all sites of the rooms that make pages and write files, in the order of their files and lines."""
    found: list[Site] = []
    for room in ROOMS:
        for file in sorted((TOP / room).rglob("*.py")):
            path = str(file.relative_to(TOP))
            found += (
                Site(path, i, node.lineno, node.end_lineno or node.lineno) for i, node in enumerate(_nodes(_tree(path)))
            )
    return found


def mutant_of(site: Site, random: Random) -> Mutant:
    """Return the module of a site with one of the changes that the site allows."""
    tree = _tree(site.path)
    node = _nodes(tree)[site.node]
    before = ast.unparse(node)
    if isinstance(node, ast.Constant):
        node.value = _other_value(node.value, random)
    elif isinstance(node, ast.Compare):
        place = random.randrange(len(node.ops))
        kind = type(node.ops[place])
        choices = [table[kind] for table in (NEGATED, EDGE) if kind in table]
        node.ops[place] = random.choice(choices)()
    elif isinstance(node, ast.Call):
        place = random.randrange(len(node.args) - 1)
        node.args[place], node.args[place + 1] = node.args[place + 1], node.args[place]
    return Mutant(site, tree, f"{before} → {ast.unparse(node)}")


def _other_value(value: object, random: Random) -> object:
    """Return another value of the same kind: a number somewhat larger or smaller, words with one letter or digit changed or with none."""
    if isinstance(value, bool):
        return not value
    if isinstance(value, int):
        return value + random.choice((1, -1))
    if isinstance(value, float):
        return value * random.choice((0.9, 1.1, 2.0, -1.0)) if value else random.choice((0.5, -0.5))
    text = str(value)
    places = [i for i, letter in enumerate(text) if letter.isalnum()]
    if not places or random.random() < 0.1:
        return ""
    digits = [i for i in places if text[i].isdigit()]
    place = random.choice(digits or places)
    other = random.choice([c for c in ("0123456789" if digits else "aeiostr") if c != text[place].lower()])
    return text[:place] + (other.upper() if text[place].isupper() else other) + text[place + 1 :]


def _tree(path: str) -> ast.Module:
    return ast.parse((TOP / path).read_text("utf-8"), path)


def _nodes(tree: ast.Module) -> list[ast.Constant | ast.Compare | ast.Call]:
    """Return the nodes that can be changed, in a fixed order."""
    return list(_walk(tree))


def _walk(node: ast.AST) -> Iterator[ast.Constant | ast.Compare | ast.Call]:
    if isinstance(node, ast.Constant):
        if isinstance(node.value, int | float | str):
            yield node
        return
    if isinstance(node, ast.Compare) or (isinstance(node, ast.Call) and _swaps(node)):
        yield node
    for name, value in ast.iter_fields(node):
        if name in ("annotation", "returns"):  # a type changes nothing
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST) and not _said_only(child):
                yield from _walk(child)


def _swaps(node: ast.Call) -> bool:
    """Say whether a call has arguments in an order, none of them spread."""
    return len(node.args) > 1 and not any(isinstance(argument, ast.Starred) for argument in node.args)


def _said_only(node: ast.AST) -> bool:
    """Say whether a statement is a docstring, an import, or the list of what a door offers."""
    if isinstance(node, ast.Expr):
        return isinstance(node.value, ast.Constant)
    if isinstance(node, ast.Assign):
        return any(isinstance(target, ast.Name) and target.id == "__all__" for target in node.targets)
    return isinstance(node, ast.Import | ast.ImportFrom)
