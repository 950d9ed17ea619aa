"""One word for each thing, over all fixed texts of the pages, the demo designs, the starts and what is written for buyers."""

import ast
import json
import re
from collections.abc import Iterator
from pathlib import Path

import publisher
from publisher.pages.sheet.terms import terms

TOP = Path(__file__).parents[3]
HOUSE = Path(publisher.__file__).parent
READ_BY_BUYERS = ("README.md", "docs/printing.md")


def strings(path: Path) -> Iterator[str]:
    """Yield the sentences of a module, docstrings and rules left out; blanks of f-strings as …"""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    unsaid: set[int] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr):  # a docstring
            unsaid.add(id(node.value))
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") in {"Rule", "checked"}:
            unsaid.update(id(inner) for argument in (*node.args, *node.keywords) for inner in ast.walk(argument))
        if isinstance(node, ast.JoinedStr):
            unsaid.update(id(piece) for piece in node.values)
            yield "".join(str(p.value) if isinstance(p, ast.Constant) else "…" for p in node.values)
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in unsaid:
            yield node.value


def texts() -> Iterator[tuple[str, str]]:
    """Yield where a fixed text stands, and the text."""
    for module in (*sorted((HOUSE / "pages").rglob("*.py")), HOUSE / "joints" / "cover.py"):
        yield from ((module.name, text) for text in strings(module) if " " in text)
    cautions = json.loads((HOUSE / "pages/sheet/cautions.json").read_text(encoding="utf-8"))
    yield from (("cautions.json", f"{row['title']}. {row['text']}") for row in cautions["cautions"].values())
    for spec in (*sorted(TOP.glob("designs/*/spec.yaml")), *sorted((HOUSE / "brief/starts").glob("*.yaml"))):
        yield str(spec.relative_to(TOP)), " ".join(spec.read_text(encoding="utf-8").split())
    yield from ((name, " ".join((TOP / name).read_text(encoding="utf-8").split())) for name in READ_BY_BUYERS)


def twins_in(text: str) -> list[str]:
    """Return the words of a text that are not used for the thing they name."""
    return [w for term in terms() for w in term.twins if re.search(rf"\b{re.escape(w)}\b", text, re.IGNORECASE)]


def test_no_thing_has_two_words() -> None:
    found = [(where, twins_in(text), text[:90]) for where, text in texts()]
    assert len(found) > 300
    assert [one for one in found if one[1]] == []


def test_a_twin_is_found_wherever_it_stands() -> None:
    assert twins_in("Trim along the dashed line.") == ["dashed line"]
    assert twins_in("Measure the Calibration Boxes again") == ["calibration boxes"]
    assert twins_in("Trim along the trim line until match marks cover each other.") == []


def test_terms_are_told_apart_and_explained() -> None:
    words = [term.term for term in terms()]
    assert len(words) == len(set(words))
    assert not {twin for term in terms() for twin in term.twins} & set(words)
    assert all(len(term.meaning) > 12 for term in terms())


def test_quotes_in_fixed_texts_are_those_of_printed_english() -> None:
    assert [one for one in texts() if one[0].endswith(".py") and re.search(r"\w'\w|\"", one[1])] == []
