"""What the house weighs, for closing notes: ``python -m tests.report``.

Per room: files, lines without blanks and comments (docstrings count, as somebody reads them), the median module. Then the median
function, the longest modules, and the functions over complexity 15, counted as in ``complexity``.
"""

import ast
import io
import sys
import tokenize
from collections import defaultdict
from pathlib import Path
from statistics import median

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "publisher"
MOST_COMPLEX = 15
LONGEST = 10
FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef)
TURNS = (ast.If, ast.IfExp, ast.For, ast.AsyncFor, ast.While, ast.ExceptHandler, ast.Assert, ast.match_case)
SILENT = {tokenize.COMMENT, tokenize.NL, tokenize.NEWLINE, tokenize.INDENT, tokenize.DEDENT, tokenize.ENDMARKER}


def lines_of(source: str) -> int:
    """Return the lines that hold anything but blanks and comments."""
    held: set[int] = set()
    for token in tokenize.generate_tokens(io.StringIO(source).readline):
        if token.type not in SILENT:
            held.update(range(token.start[0], token.end[0] + 1))
    return len(held)


def function_lengths(source: str) -> list[int]:
    """Return the lines from the head to the end of each function."""
    nodes = [node for node in ast.walk(ast.parse(source)) if isinstance(node, FUNCTIONS)]
    return [(node.end_lineno or node.lineno) - node.lineno + 1 for node in nodes]


def complexity(function: ast.AST) -> int:
    """Return one and the ways that a function can turn: branches, loops, handlers, ``and`` and ``or``, conditions of comprehensions.

    ruff's C901 leaves the last three kinds out, and finds nothing over 12 here."""
    turns = 1
    for node in ast.walk(function):
        if isinstance(node, ast.BoolOp):
            turns += len(node.values) - 1
        elif isinstance(node, ast.comprehension):
            turns += 1 + len(node.ifs)
        else:
            turns += isinstance(node, TURNS)
    return turns


def complex_functions(source: str, most: int) -> list[tuple[int, int, str]]:
    """Return complexity, line and name of each function over ``most``."""
    found = [(complexity(n), n.lineno, n.name) for n in ast.walk(ast.parse(source)) if isinstance(n, FUNCTIONS)]
    return [one for one in found if one[0] > most]


def main() -> int:
    """Print the report."""
    rooms: dict[str, list[int]] = defaultdict(list)
    modules: dict[Path, int] = {}
    functions: list[int] = []
    tangled: list[tuple[int, str]] = []
    for path in sorted(PACKAGE.rglob("*.py")):
        source = path.read_text(encoding="utf-8")
        modules[path] = lines_of(source)
        inside = path.relative_to(PACKAGE).parts
        rooms[inside[0] if len(inside) > 1 else "(top)"].append(modules[path])
        functions += function_lengths(source)
        tangled += [
            (c, f"{path.relative_to(ROOT)}:{line} {name}") for c, line, name in complex_functions(source, MOST_COMPLEX)
        ]
    print(f"{'room':12} {'files':>6} {'lines':>7} {'median':>7}")
    for room, lengths in (*sorted(rooms.items()), ("all", list(modules.values()))):
        print(f"{room:12} {len(lengths):6} {sum(lengths):7} {median(lengths):7g}")
    print(f"\nmedian function: {median(functions):g} lines of {len(functions)} functions\n\nlongest modules:")
    for path in sorted(modules, key=lambda p: -modules[p])[:LONGEST]:
        print(f"{modules[path]:6}  {path.relative_to(ROOT)}")
    print(f"\nfunctions over complexity {MOST_COMPLEX}: {len(tangled)}")
    for turns, where in sorted(tangled, reverse=True):
        print(f"{turns:6}  {where}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
