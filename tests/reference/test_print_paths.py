"""Every page of a pack through a print path: all that a printer does to a page is one scale, and the print-check page names its cause.

The path is pdftopdf of cups-filters where it is installed, else what it does, simulated; where it is installed both must agree.
"""

import re
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.pages import Pack, Words
from publisher.pipeline import compose_packs, work
from publisher.press import write_pdf
from publisher.ruler import judge, take_readings
from tests.reference.print_paths import SAME, SHEETS, Printed, Setting, filter_program, laid, print_pages, read_printed

DESIGN = Path(__file__).parents[2] / "designs" / "quay"
PAPERS = {"a4": "A4", "letter": "Letter"}


@cache
def packs() -> dict[str, tuple[Pack, bytes]]:
    found, _ = compose_packs(work(read_brief(DESIGN)))
    return {pack.paper.name: (pack, write_pdf(pack)) for pack in found}


def printed(paper: str, setting: Setting) -> list[Printed]:
    pack, pdf = packs()[paper]
    pages = list(read_printed(pdf, print_pages(pdf, setting, filter_program()), pack.promises, setting))
    assert max(page.off for page in pages) < SAME
    assert max(abs(page.across - page.down) for page in pages) < 1e-4
    assert len({round(page.across, 4) for page in pages}) == 1  # measuring one page tells of all
    return pages


def causes(scale: float) -> tuple[str, ...]:
    """What the tool says of a square measured with a calliper."""
    reading = f"{100.0 * scale:.2f}"
    return judge(*take_readings(reading, reading, "mm", (100.0, 100.0), "calliper")).causes


@cache
def rows(paper: str) -> tuple[tuple[str, str, str], ...]:
    """The rows of the table of the print-check page: what the square measures, what happened, what to do."""
    pack, _ = packs()[paper]
    page = next(page for page in pack.pages if page.kind == "print_check")
    words = [thing.text for thing in page.drawn if isinstance(thing, Words)]
    first = words.index("True size.") - 1
    starts = [
        n
        for n, said in enumerate(words)
        if n >= first and re.fullmatch(r"(\S+ to|about|under|over|\S+ to under) \S+ mm", said)
    ]
    ends = [*starts[1:], words.index("true one way only")]
    return tuple((words[n], *_cells(words[n + 1 : end])) for n, end in zip(starts, ends, strict=True))


def _cells(words: list[str]) -> tuple[str, str]:
    """The words of two cells that may each be broken into lines: what happened ends with the first full stop."""
    middle = next(n for n, said in enumerate(words) if said.endswith(".")) + 1
    return " ".join(words[:middle]), " ".join(said for said in words[middle:] if "in" not in said.split()[-1:])


def row(paper: str, mm: float) -> str:
    """What the table says of a reading, with what to do: of its rows the one in which it falls."""
    true, near, fitted, small, large = rows(paper)
    low, high = (float(end) for end in re.findall(r"[\d.]+", true[0]))
    if low <= mm <= high:
        return " ".join(true[1:])
    found = large if mm > high else small if round(mm, 1) < 95.0 else fitted if round(mm, 1) < 98.0 else near
    return " ".join(found[1:])


@pytest.mark.parametrize(
    ("paper", "setting", "cause"),
    [
        ("a4", Setting("A4", "fit", 12.0), "inside printer margins of 4 mm, on A4"),
        ("a4", Setting("A4", "fit", 18.0), "inside printer margins of 6 mm (1/4 in), on A4"),
        ("a4", Setting("A4", "fit", 36.0), "inside printer margins of 13 mm (1/2 in), on A4"),
        ("letter", Setting("Letter", "fit", 18.0), "inside printer margins of 6 mm (1/4 in), on Letter"),
        ("a4", Setting("Letter", "fit", 12.0), "an A4 page fitted to Letter paper inside the printer's margins"),
        ("a4", Setting("Letter", "fit", 18.0), "an A4 page fitted to Letter paper inside printer margins of 6 mm"),
        ("letter", Setting("A4", "fit", 12.0), "a Letter page fitted to A4 paper inside the printer's margins"),
        ("letter", Setting("A4", "fit", 18.0), "a Letter page fitted to A4 paper inside printer margins of 6 mm"),
        ("letter", Setting("A4", "fit", 36.0), "or Letter to A4"),
        ("a4", Setting("A4", "fit", -9.0), "enlargement by a borderless mode"),
    ],
    ids=str,
)
def test_a_fitted_page_is_scaled_alike_keeps_its_marks_and_its_cause_is_named(
    paper: str, setting: Setting, cause: str
) -> None:
    pages = printed(paper, setting)
    assert all(page.marks == page.marks_of for page in pages)  # only the square tells
    scale = pages[0].across
    assert any(cause in said for said in causes(scale)), (scale, causes(scale))
    what = row(paper, 100.0 * scale)
    assert all(word in what.lower() for word in setting.cause(scale, PAPERS[paper])), (setting, what)


@pytest.mark.parametrize("paper", PAPERS)
def test_the_table_names_the_cause_of_every_reading_that_a_print_path_gives(paper: str) -> None:
    """Every mode, on both papers, with any margin and any reach of a borderless mode: a row that left one out would send a buyer to
    settings that were never wrong."""
    own, seen = PAPERS[paper], Counter[str]()
    for sheet in SHEETS:
        for mode in ("fit", "fill"):
            for margin in range(-12, 43):
                setting = Setting(sheet, mode, float(margin))
                scale = laid(setting, *SHEETS[own])[0]
                what = row(paper, 100.0 * scale)
                if what != "True size. Go on.":
                    assert all(word in what.lower() for word in setting.cause(scale, own)), (setting, scale, what)
                    assert "100 %" in what, "each row is read alone"
                seen[what] += 1
    assert len(seen) == len(rows(paper))


@pytest.mark.parametrize(("paper", "sheet"), [("a4", "A4"), ("letter", "Letter")])
def test_at_100_per_cent_every_page_is_true_and_whole(paper: str, sheet: str) -> None:
    for page in printed(paper, Setting(sheet, "none")):
        assert page.across == pytest.approx(1.0, abs=1e-5)
        assert page.marks == page.marks_of


@pytest.mark.parametrize(("paper", "sheet"), [("a4", "Letter"), ("letter", "A4")])
def test_on_other_paper_at_100_per_cent_the_scale_is_true_and_every_page_loses_a_mark(paper: str, sheet: str) -> None:
    for page in printed(paper, Setting(sheet, "none")):
        assert page.across == pytest.approx(1.0, abs=1e-5)
        assert page.marks < page.marks_of == 4


def test_the_manual_says_how_much_fitted_pages_shrink() -> None:
    text = (Path(__file__).parents[2] / "docs" / "printing.md").read_text(encoding="utf-8")
    a4 = 100.0 * (1.0 - laid(Setting("Letter", "fit", 12.0), 595.276, 841.890)[0])
    letter = 100.0 * (1.0 - laid(Setting("A4", "fit", 12.0), 612.0, 792.0)[0])
    assert (
        f"about {a4:.1f} % when it is fitted on Letter with usual margins, and Letter by about {letter:.1f} % on A4"
        in text
    )


def test_what_is_simulated_is_what_the_filter_does() -> None:
    program = filter_program()
    if program is None:
        pytest.skip("cups-filters is not installed here: pages are printed by the simulation")
    pack, pdf = packs()["a4"]
    for setting in (Setting("A4", "fit"), Setting("Letter", "fit", 12.0), Setting("A4", "fit", -9.0)):
        real, ours = (
            list(read_printed(pdf, print_pages(pdf, setting, way), pack.promises, setting)) for way in (program, None)
        )
        assert [page.across for page in real] == pytest.approx([page.across for page in ours], abs=1e-5)
        assert [page.marks for page in real] == [page.marks for page in ours]
