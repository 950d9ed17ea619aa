"""Sheets as sold."""

from typing import Any

import pytest

from publisher.basics import Place
from publisher.brief import Value
from publisher.design.language.scope import Scope
from publisher.design.offer.sheets import named_sheets, read_sheet, read_sheets
from publisher.design.records.plans import SheetSize
from publisher.pages import papers


def read(text: str) -> tuple[SheetSize | None, list[Any]]:
    findings: list[Any] = []
    return read_sheet(Value(text, "text", Place("spec.yaml", 1, 1)), Scope({}, findings), "board foam"), findings


@pytest.mark.parametrize(
    ("text", "width", "height"),
    [
        ("20 x 30 in", 508.0, 762.0),  # check values, section 10.1
        ("297 x 420 mm", 297.0, 420.0),
        ("297×420mm", 297.0, 420.0),
        ("8 1/2 x 11 in", 215.9, 279.4),
        ("20 in x 762 mm", 508.0, 762.0),
        ("59.4 X 84.1 cm", 594.0, 841.0),
    ],
)
def test_sheets(text: str, width: float, height: float) -> None:
    sheet, findings = read(text)
    assert findings == []
    assert sheet is not None
    assert sheet.label == text
    assert (sheet.width, sheet.height) == pytest.approx((width, height), abs=1e-9)


@pytest.mark.parametrize(
    ("text", "width", "height"), [("A3", 297.0, 420.0), (" a0 ", 841.0, 1189.0), ("A5", 148.0, 210.0)]
)
def test_sheets_by_name(text: str, width: float, height: float) -> None:
    sheet, findings = read(text)
    assert findings == []
    assert sheet == SheetSize(f"{width:g} x {height:g} mm", width, height)


def test_named_sheets_are_the_papers_of_that_name() -> None:
    """The halves that are counted here against the sizes that a table holds."""
    known = {paper.name: f"{paper.width:g} x {paper.height:g} mm" for paper in papers()}
    assert [(name, known[name.lower()]) for name, _ in named_sheets()] == list(named_sheets())


@pytest.mark.parametrize(
    "text", ["A6", "A 3", "letter", "20 x 30", "20 in", "20 x 30 x 40 in", "0 x 30 in", "20 x 30 deg", "20 x reach mm", "6 x 1 m",
             "1 x 5001 mm", "1/0 x 3 in", "x in", "9" * 80 + " x 3 mm"],
)  # fmt: skip
def test_what_is_no_sheet(text: str) -> None:
    sheet, findings = read(text)
    assert sheet is None
    assert [f.check for f in findings] == ["design/sheet-size"]


def test_a_fraction_in_one_sign_is_said_in_two_numbers() -> None:
    _, (found,) = read("8½ x 11 in")
    assert (found.check, found.hint) == ("design/sheet-size", "write 8.5 or 8 1/2")


@pytest.mark.keeps("design/sheet-twice")
@pytest.mark.parametrize(
    ("texts", "grain"),
    [(("20 x 30 in", "297 x 420 mm"), "none"), (("20 x 30 in", "30 x 20 in"), "along"), (("20 x 30 in",), "none")],
)
def test_sheets_of_several_sizes(texts: tuple[str, ...], grain: str) -> None:
    sheets, checks = read_all(texts, grain)
    assert ([sheet.label for sheet in sheets], checks) == (list(texts), [])


@pytest.mark.breaks("design/sheet-twice")
@pytest.mark.parametrize(
    ("other", "grain"),
    [
        ("20 × 30 in", "none"),
        ("20X30 in", "along"),
        ("508 x 762 mm", "across"),
        ("30 x 20 in", "none"),
        ("20 by 30 in", "none"),
    ],
)
def test_one_size_in_two_ways_of_writing_is_one_sheet(other: str, grain: str) -> None:
    sheets, checks = read_all(("20 x 30 in", other), grain)
    assert ([sheet.label for sheet in sheets], checks) == (["20 x 30 in"], ["design/sheet-twice"])


def read_all(texts: tuple[str, ...], grain: str) -> tuple[tuple[SheetSize, ...], list[str]]:
    findings: list[Any] = []
    nodes = tuple(Value(text, "text", Place("spec.yaml", 1, 1)) for text in texts)
    sheets = read_sheets(nodes, grain, Scope({}, findings), "board foam")
    return sheets, [f.check for f in findings]
