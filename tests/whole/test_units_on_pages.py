"""Every length that a buyer reads stands in the unit of the paper first: inches on North American papers, with mm beside."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

FIGURE = r"\d[\d.]*(?:(?: × | to | and )\d[\d.]*)*"
NAMES = re.compile(
    r"(?:100 mm \(3\.94 in\)|50 mm \(1\.97 in\))(?: 1 in 1 in)?|30 mm \(1\.18 in\) 30 mm|the \d+ mm square"  # squares and their scales
    r"|(?:\S+ to \S+|about \S+|under 95|\S+) mm(?: or more)? (?:True|Scaled|“Fit”|“Fill”).*?\."  # the table of its readings
    r"|4 in outside, 100 mm inside(?: 4 in and 100 mm)?|Or the inner one: \S+ to \S+ mm|inside: \S+ to \S+ mm"  # the two squares
    r"|49\.75 to 50\.25 mm"  # limits of the square of 50 mm, in it
    r"|outer square \(4 in\) or its inner one \(100 mm\)|both of the inner one \S+ to \S+ mm"
    r"|\d+ x \d+ (?:mm|in)(?: \([^()]*\))?"  # a sheet as shops call it, with the other unit
    r"|sold as \S+ (?:mm|in)|boards sold as \S+ (?:mm|in)"
    r"|[\d.]+ mm bases?\b"  # figures' bases are made in mm
)


def words_on(page: dict[str, Any]) -> str:
    """The words of a page in the order in which they are drawn, without its furniture, the numbers of scales, and names that have a
    length in them."""
    lines = (line.replace("\u00a0", " ") for line in page["text"])
    said = " ".join(line for line in lines if not re.fullmatch(r"[\d.]+|mm|in", line))
    return NAMES.sub("…", " ".join(said.split()))


def wrong(text: str, first: str) -> list[str]:
    """What stands in the second unit without the first before it, in brackets or in a column of its own; and mm without their
    inches where these come first."""
    second = {"mm": "in", "in": "mm"}[first]
    found = []
    for match in re.finditer(rf"(?<![\d.]){FIGURE} {second}\b", text):
        before = text[: match.start()]
        if not re.search(rf"{FIGURE} {first} \($", before) and not re.search(rf"{FIGURE} × {FIGURE} {first} $", before):
            sixteenths = re.search(rf"{FIGURE} {first} \([^()]*$", before)
            if not sixteenths:
                found.append(text[max(0, match.start() - 40) : match.end() + 10])
    return found


def test_the_reader_of_units_tells_good_from_bad() -> None:
    assert wrong("runs 0.016 in (0.4 mm) outside, 4.80 × 3.51 in 122.0 × 89.1 mm", "in") == []
    assert wrong("from 0.186 to 0.208 in (4.7 to 5.3 mm) and 3/16 in", "in") == []
    for bad in ("runs 0.4 mm (0.016 in) outside", "a wall of 40 mm", "4.7 to 5.3 mm", "122.0 × 89.1 mm 4.80 × 3.51 in"):
        assert wrong(bad, "in"), bad
    assert wrong("a wall of 40.0 mm (1.57 in), 10 mm wide; 4.8 mm (3/16 in)", "mm") == []
    for bad in ("a wall of 1.57 in", "1.57 in (40.0 mm)"):
        assert wrong(bad, "mm"), bad


@pytest.mark.parametrize(("paper", "first"), [("letter", "in"), ("a4", "mm")])
def test_lengths_stand_in_the_unit_of_the_paper_first(packs: Path, paper: str, first: str) -> None:
    looked = 0
    for record in sorted(packs.glob(f"*/*{paper}*.json")):
        told = json.loads(record.read_text(encoding="utf-8"))
        if told["design"]["language"] != "en":
            continue  # whose figures have another decimal sign
        for page in told["pages"]:
            looked += 1
            assert wrong(words_on(page), first) == [], (record.name, page["number"])
    assert looked > 50
