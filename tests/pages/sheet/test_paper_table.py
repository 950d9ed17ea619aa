"""Papers against ISO 216 and PWG 5101.1, and the designer's own."""

import re
from collections.abc import Callable

import pytest

from publisher.basics import Refusal
from publisher.design import Design, PaperWish
from publisher.pages.sheet.paper_table import paper_for, papers, read_on

ISO = {
    "a0": (841, 1189),
    "a1": (594, 841),
    "a2": (420, 594),
    "a3": (297, 420),
    "a4": (210, 297),
    "a5": (148, 210),
}  # ISO 216
PWG = {  # PWG 5101.1, hundredths of a millimetre
    "letter": (21590, 27940),
    "legal": (21590, 35560),
    "tabloid": (27940, 43180),
    "arch_c": (45720, 60960),
    "arch_d": (60960, 91440),
    "arch_e": (91440, 121920),
}


def test_sizes_are_those_of_the_standards() -> None:
    table = {p.name: p for p in papers()}
    for name, size in ISO.items():
        assert (table[name].width, table[name].height) == size
    for name, (width, height) in PWG.items():
        assert (table[name].width * 100, table[name].height * 100) == pytest.approx((width, height))
    assert (table["common"].width, table["common"].height) == (210.0, 279.4)


def test_a_row_is_as_large_as_the_standard_name_in_its_source_says() -> None:
    """A standard name of PWG 5101.1 ends with its size: a paper that is added is held to it, and no test is touched."""
    units = {"mm": 1.0, "in": 25.4}
    for paper in papers():
        if paper.name == "common":
            continue
        width, height, unit = re.search(r"PWG 5101\.1 \w[\w-]*_([\d.]+)x([\d.]+)(mm|in)$", paper.source).groups()  # type: ignore[union-attr]
        assert (paper.width, paper.height) == pytest.approx((float(width) * units[unit], float(height) * units[unit]))


def test_each_row_has_a_source_and_margins_that_every_printer_keeps() -> None:
    for paper in papers():
        assert "ISO 216" in paper.source or "PWG 5101.1" in paper.source
        left, bottom, right, top = paper.margins
        assert min(left, right) >= 6.35 and min(bottom, top) >= 12.7


def test_what_no_printer_at_home_takes_is_read_on_an_everyday_sheet() -> None:
    """Common practice, no source: printers for the home end at 13 in (330 mm)."""
    read = {paper.name: read_on(paper).name for paper in papers()}
    assert {name for name, other in read.items() if name != other} == {"a2", "a1", "a0", "arch_c", "arch_d", "arch_e"}
    assert read["a1"] == "a4" and read["arch_d"] == "letter"


@pytest.mark.keeps("pages/unknown-paper")
def test_names_are_found_in_any_case(make_design: Callable[..., Design]) -> None:
    assert paper_for(make_design(), "A4").name == "a4"


@pytest.mark.breaks("pages/unknown-paper")
def test_an_unknown_paper_names_the_nearest(make_design: Callable[..., Design]) -> None:
    with pytest.raises(Refusal) as refusal:
        paper_for(make_design(), "leter")
    (found,) = refusal.value.findings
    assert found.check == "pages/unknown-paper"
    assert "did you mean “letter”" in found.hint
    assert "a4" in found.message


def wish(
    make_design: Callable[..., Design], width: float, height: float, margins: tuple[float, ...] | None = None
) -> Design:
    place = make_design().parts[0].place
    return make_design(papers=(PaperWish("mine", width, height, margins, place),))  # type: ignore[arg-type]


def test_a_paper_of_the_designers_own_is_turned_upright(make_design: Callable[..., Design]) -> None:
    paper = paper_for(wish(make_design, 500.0, 300.0, (1.0, 2.0, 3.0, 4.0)), "MINE")
    assert (paper.width, paper.height) == (300.0, 500.0)
    assert paper.margins == (4.0, 1.0, 2.0, 3.0)
    plain = paper_for(wish(make_design, 500.0, 300.0), "mine")
    assert plain.margins == (6.35, 12.7, 6.35, 12.7)


def test_north_american_papers_say_inches_first(make_design: Callable[..., Design]) -> None:
    """A buyer with a Letter printer has a ruler in inches; a paper of the designer's own is given in mm."""
    assert {paper.name for paper in papers() if paper.first == "in"} == set(PWG)
    assert paper_for(wish(make_design, 300.0, 900.0), "mine").first == "mm"
