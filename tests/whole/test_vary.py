"""``publisher sizes --vary``: rows, jumps that arithmetic knows, the best value, bad input, an interrupt."""

import csv
import json
from collections.abc import Callable
from io import StringIO
from pathlib import Path

import pytest

from publisher import api
from tests.whole.conftest import Run, changed

Publisher = Callable[..., Run]
SQUARES = "shape: rectangle, with: {width: radius, height: radius}"


@pytest.fixture
def squares(shelf: Path) -> Path:
    """Squares with the side “radius” on a sheet of 300 × 300 mm, 1 mm apart: k across it up to a side of (301 - k) / k."""
    folder = shelf / "bollard"
    changed(folder, "shape: disc, with: {radius: radius}", SQUARES)
    changed(folder, "sheets: [20 x 30 in]", "sheets: [300 x 300 mm], knife_gap: 1 mm")
    changed(folder, "papers: [a4, letter]", "needs: [{fact: disc.width, at_least: 72 mm}]\npapers: [a4]")
    return folder


def test_jumps_are_found_to_a_hundredth_of_a_millimetre(squares: Path) -> None:
    sweep = api.vary(api.read(squares), "", ("radius = 70 mm to 110 mm",), values=3)
    assert [row.values for row in sweep.rows] == [(70.0,), (90.0,), (110.0,)]
    found = [(j.last, j.first, j.before, j.after) for j in sweep.jumps if j.kind == "copies"]
    assert found == [(74.25, 74.26, "16", "9"), (99.33, 99.34, "9", "4")]
    (need,) = [j for j in sweep.jumps if j.kind == "need"]
    assert (need.last, need.first, need.before, need.after) == (71.99, 72.0, "missed", "met")
    assert sweep.whole and sweep.missed == ()
    # 0.5 mm to spare from 72.5 mm on: as near to 20 mm, which stands in the spec, as that allows
    assert sweep.best is not None and sweep.best.values == (72.5,)


def test_a_row_is_what_the_rooms_say_at_its_value(squares: Path) -> None:
    (row, _) = api.vary(api.read(squares), "", ("radius = 80 mm to 300 mm",), values=2).rows
    worked = api.work(api.read(squares, (("radius", "80 mm"),)))
    (pack,), _ = api.compose(worked)
    assert worked.needs is not None and worked.joined is not None
    (one,) = worked.needs.yields
    (sheet,) = row.sheets
    assert (sheet.sheets, sheet.copies) == (len(one.sheets), (("A", one.rows[0].careful),))
    assert row.papers[0].templates == sum(page.kind == "templates" for page in pack.pages)
    assert row.print_scale == (worked.joined.budget.least, worked.joined.budget.most)
    assert row.needs[0].margin == pytest.approx(8.0)


def test_where_a_seam_of_tiles_disappears(squares: Path) -> None:
    low, high = (api.vary(api.read(squares), "", ("radius = 150 mm to 290 mm",), values=2)).rows
    assert (low.papers[0].tiled, high.papers[0].tiled) == ((), ("A",))
    assert low.papers[0].tiles == 0
    worked = api.work(api.read(squares, (("radius", "290 mm"),)))
    (pack,), _ = api.compose(worked)
    assert high.papers[0].tiles == sum(page.kind in ("tiles", "overview") for page in pack.pages)


def test_a_value_that_cannot_be_built_is_a_row_that_says_why(squares: Path) -> None:
    sweep = api.vary(api.read(squares), "", ("radius = 280 mm to 320 mm",), values=3)
    assert [bool(row.why) for row in sweep.rows] == [False, False, True]
    assert "too large for the sheet" in sweep.rows[-1].why
    assert [(j.last, j.first) for j in sweep.jumps if j.kind == "built"] == [(300.0, 300.01)]
    assert sweep.best is not None and sweep.best.met


def test_two_sizes(squares: Path) -> None:
    ranges = ("radius = 70 mm to 80 mm", "board = 4.2 mm to 5.2 mm")
    sweep = api.vary(api.read(squares), "", ranges, values=2)
    assert [row.values for row in sweep.rows] == [(70.0, 4.2), (80.0, 4.2), (70.0, 5.2), (80.0, 5.2)]
    assert [(j.last, j.beside) for j in sweep.jumps if j.kind == "copies"] == [
        (74.25, (("board", 4.2),)),
        (74.25, (("board", 5.2),)),
    ]


def test_a_range_that_never_meets_a_need_is_said_with_the_nearest_value(publisher: Publisher, squares: Path) -> None:
    run = publisher("sizes", squares, "--vary", "radius = 60 mm to 70 mm", "--values", "2")
    assert run.code == 0
    assert "no value meets the need of disc.width: nearest at radius 70 mm (2.756 in)" in run.out
    assert "2.00 mm (0.08 in) is missing" in run.out and "best:" not in run.out


def test_text_csv_and_json_say_the_same(publisher: Publisher, squares: Path) -> None:
    words = ("sizes", squares, "--vary", "radius = 70 mm to 80 mm", "--values", "2")
    text = publisher(*words)
    assert "at 74.25 mm (2.923 in) a sheet 300 x 300 mm gives 16 of A, at 74.26 mm (2.924 in) 9" in text.out
    table = list(csv.DictReader(StringIO(publisher(*words, "--csv").out)))
    assert [(row["radius, mm"], row["A a sheet 300 x 300 mm"]) for row in table] == [("70", "16"), ("80", "9")]
    (sweep,) = json.loads(publisher(*words, "--json").out)["sweeps"]
    assert [row["sheets"][0]["copies"] for row in sweep["rows"]] == [{"A": 16}, {"A": 9}]
    assert [jump["last"] for jump in sweep["jumps"] if jump["kind"] == "copies"] == [74.25]


def test_a_plot_is_written_as_its_name_says(publisher: Publisher, squares: Path, tmp_path: Path) -> None:
    words = ("sizes", squares, "--variant", "standard", "--vary", "radius = 70 mm to 80 mm", "--values", "2", "--plot")
    for name, begin in (("a.svg", b"<?xml"), ("a.png", b"\x89PNG")):
        assert publisher(*words, tmp_path / name).code == 0
        assert (tmp_path / name).read_bytes().startswith(begin)
    assert ">A on 300 x 300 mm<" in (tmp_path / "a.svg").read_text(encoding="utf-8")
    assert "ends in .svg or .png" in publisher(*words, tmp_path / "a.pdf").err


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--vary", "radios = 70 mm to 80 mm"), "did you mean “radius”?"),
        (("--vary", "radius = 80 mm to 70 mm"), "write the smaller value first"),
        (("--vary", "radius = 70 deg to 80 deg"), "[design/wrong-kind]"),
        (("--vary", "radius = 70 mm to 80 mm", "--vary", "radius = 1 mm to 2 mm"), "one size or two different ones"),
        (("--values", "3"), "go with --vary"),
    ],
)
def test_what_cannot_be_used_is_refused(publisher: Publisher, shelf: Path, words: tuple[str, ...], says: str) -> None:
    run = publisher("sizes", shelf / "bollard", *words)
    assert run.code == 2 and says in run.err and run.out == ""


def test_an_interrupt_keeps_the_rows_that_are_finished(
    publisher: Publisher, squares: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stop(done: int, of: int) -> None:
        if done == 2:
            raise KeyboardInterrupt

    monkeypatch.setattr("publisher.cli.vary._progress", lambda: stop)
    run = publisher("sizes", squares, "--vary", "radius = 70 mm to 80 mm", "--values", "5", "--csv")
    assert run.code == 130
    assert [line.split(",")[0] for line in run.out.splitlines()[1:]] == ["70", "80"]
    assert "stopped" in run.err
