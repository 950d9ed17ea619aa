"""What other values save, as differences to the size as it stands."""

import csv
import json
from collections.abc import Callable
from io import StringIO
from pathlib import Path

import pytest

from publisher import api
from publisher.cli.vary_words import csv_of, lines_of, record_of
from publisher.pages import PageCount
from publisher.sweep.model import SweepRow, VariedNeed
from publisher.sweep.savings import savings_of

TWO_WALLS = (
    ("radius: 20 mm", "radius: 276.5 mm"),
    ("shape: disc, with: {radius: radius}}", "shape: rectangle, with: {width: radius, height: 60 mm}}\n"
     "  rib: {name: Rib, board: foam, count: 2, shape: rectangle, with: {width: radius - 1 mm, height: 50 mm}}"),
    ("papers: [a4, letter]", "papers: [a4]"),
)  # fmt: skip


def row(value: float, pages: int, *tiled: str, margin: float = 1.0) -> SweepRow:
    need = VariedNeed("a", "length", 0.0, margin, False)
    return SweepRow((value,), needs=(need,), papers=(PageCount("a4", pages, 0, tiled),))


def test_the_nearest_value_that_saves_is_said_either_way_and_once() -> None:
    now = row(90.0, 5, "A", "B")
    rows = (row(70.0, 4, margin=-1.0), row(80.0, 5, "B"), row(85.0, 5, "A", "B"), now, row(95.0, 3, "A", "B"))
    found = [(s.kind, s.value, s.change, s.number, s.parts, s.met) for s in savings_of(now, rows)]
    assert found == [
        ("tiled", 80.0, -10.0, 1, ("A",), True),
        ("tiled", 70.0, -20.0, 2, ("A", "B"), False),
        ("pages", 70.0, -20.0, 1, (), False),
        ("pages", 95.0, 5.0, 2, (), True),
    ]
    assert savings_of(None, rows) == ()


def test_a_seam_disappears_and_text_json_and_csv_say_how_much_shorter_saves_it(design: Callable[..., Path]) -> None:
    """Two walls, one a millimetre shorter: they are whole on A4 up to one length, which is found by building beside it."""
    folder = design(*TWO_WALLS)
    sweep = api.vary(api.read(folder), "", ("radius = 270 mm to 277 mm",), values=2)
    jumps = [j for j in sweep.jumps if j.kind == "tiled"]
    assert [(j.before, j.after) for j in jumps] == [("", "A"), ("A", "A, B")]
    for jump in jumps:
        for value, tiled in ((jump.last, jump.before), (jump.first, jump.after)):
            (pack,), _ = api.compose(api.work(api.read(folder, (("radius", f"{value} mm"),))))
            assert any(page.kind == "tiles" for page in pack.pages) == bool(tiled), value
    one, both = [s for s in sweep.savings if s.kind == "tiled"]
    assert (one.value, one.parts, both.value, both.parts) == (jumps[1].last, ("B",), jumps[0].last, ("A", "B"))
    assert both.change == pytest.approx(jumps[0].last - 276.5)
    text = "\n".join(lines_of(sweep))
    assert f"radius {-both.change:g} mm" in text and "saves 2 tiled parts on a4: A, B" in text
    assert [s["number"] for s in record_of(sweep)["savings"] if s["kind"] == "tiled"] == [1, 2]
    assert json.dumps(record_of(sweep))
    table = csv.DictReader(StringIO(csv_of(sweep)))
    assert [line["tiled parts on a4, against the size as it stands"] for line in table] == ["-2", "0"]


def test_a_size_outside_its_range_saves_nothing(design: Callable[..., Path]) -> None:
    sweep = api.vary(api.read(design(*TWO_WALLS)), "", ("radius = 100 mm to 101 mm",), values=2)
    assert (sweep.now, sweep.savings) == (None, ())
