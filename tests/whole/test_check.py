"""``publisher check``: what decides at a glance, and whether packs of a family meet on every board."""

import json
from collections.abc import Callable
from math import inf
from pathlib import Path
from typing import Any

import pytest
import yaml

from publisher.basics import Place
from publisher.cli.check_report import _deciding
from publisher.design import Fact
from tests.design.conftest import laid_over
from tests.whole.conftest import ROOT, changed, demo, demo_pack

Publisher = Callable[..., Any]
TABLE: dict[str, Any] = yaml.safe_load((ROOT / "tests/cases/design.yaml").read_text("utf-8"))

PACK = """\
format: 2
title: {slug}
version: 1.0.0
use: paste
sizes: {{board: {board}, height: {height}}}
boards: {{foam: {{thickness: board, sheets: [20 x 30 in]}}}}
parts: {{pile: {{name: Pile, board: foam, shape: rectangle, with: {{width: 80 mm, height: 40 mm}}}}}}
assembly: {{tower: {{stack: [{{part: pile, count: {count}}}]}}}}
needs: [{{fact: tower.longest, at_most: 300 mm}}]
meets: {{deck_height: tower.height, deck_width: pile.width}}
"""


@pytest.fixture
def family(tmp_path: Path) -> Callable[..., Path]:
    def write(**packs: tuple[str, str, str]) -> Path:
        for slug, (board, height, count) in packs.items():
            (tmp_path / slug).mkdir()
            (tmp_path / slug / "spec.yaml").write_text(PACK.format(slug=slug, board=board, height=height, count=count))
        return tmp_path

    return write


def test_the_report_is_short_and_says_what_decides(publisher: Publisher, designs: Path) -> None:
    run = publisher("check", designs / "lock-stair", "--variant", "standard")
    lines = run.out.splitlines()
    assert len(lines) <= 8
    assert "184.0 × 184.0 × 100.0 mm wide × deep × high, 20 g, packed flat" in lines[1]
    assert (
        "balance 90.7 mm, with figures 22.3 mm, weakest step 18, bears 6.6 × a figure, joints 0.50 of a unit apart"
        in lines[2]
    )
    assert any(line.split()[:2] == ["print", "scale"] and "99.5 … 100.5 %" in line for line in lines)
    starts = {line.index("  ", 3) for line in lines[1:2]}
    assert starts


def test_the_record_holds_facts_margins_and_print_scale(publisher: Publisher, designs: Path) -> None:
    run = publisher("check", designs / "lock-stair", "--variant", "standard", "--json")
    (design,) = json.loads(run.out)["designs"]
    (first, second, _) = design["needs"]
    assert (first["met"], round(first["margin"], 1)) == (True, 2.2)
    assert (round(second["value"], 6), round(second["margin"], 6)) == (80.0, 30.0)
    wide = json.loads(publisher("check", designs / "lock-stair", "--variant", "wide_bases", "--json").out)["designs"][0]
    assert (wide["needs"][1]["value"], wide["needs"][1]["margin"]) == (None, None)  # open
    assert design["print_scale"]["least"] == 0.995
    assert any(f["name"] == "stair.weakest_step" and f["value"] == 18 for f in design["facts"])


def test_packs_that_meet_on_every_board_pass(publisher: Publisher, family: Callable[..., Path]) -> None:
    """20 × 5 mm = 100.0 and 21 × 3/16 in = 100.01 mm: a natural storey."""
    folder = family(
        quay=("5 mm", "100 mm", "round(height / board)"), stair=("3/16 in", "100 mm", "round(height / board)")
    )
    run = publisher("check", folder)
    assert "joints/packs-do-not-meet" not in run.err
    assert run.code == 0


def test_packs_that_do_not_meet_are_found_in_mm(publisher: Publisher, family: Callable[..., Path]) -> None:
    folder = family(quay=("5 mm", "100 mm", "round(height / board)"), stair=("5 mm", "70 mm", "round(height / board)"))
    run = publisher("check", folder)
    assert run.code == 1
    assert "deck_height: quay 100.0 mm (3.94 in), stair 70.0 mm (2.76 in): differ by 30.0 mm (1.18 in)" in run.err
    assert "deck_width" not in run.err
    assert json.loads(publisher("check", folder, "--json").out)["family"][0]["value"] == 30.0


def test_a_pack_that_fits_only_on_its_own_board_is_found_with_the_board(
    publisher: Publisher, family: Callable[..., Path]
) -> None:
    folder = family(quay=("5 mm", "100 mm", "20"), stair=("3/16 in", "100 mm", "21"))
    run = publisher("check", folder)
    assert run.code == 1
    assert "quay on 4.76 mm (0.19 in) board 95.2 mm" in run.err or "quay on 4.76 mm (0.19 in) board 95.3 mm" in run.err


def test_a_single_pack_has_nothing_to_meet(publisher: Publisher, family: Callable[..., Path]) -> None:
    folder = family(stair=("5 mm", "70 mm", "14"))
    assert publisher("check", folder).code == 0


ALIKE = {
    "good": ("title: Bollard", "title: Post"),
    "too large for the sheet": ("radius: 20 mm", "radius: 900 mm"),
    "on pages alone": ("title: Bollard", f"title: {('Bollard beside the long canal ' * 4).strip()}"),
    "too many pages": ("count: 3", "count: 90000"),
    "names": ("papers: [a4, letter]", "papers: [a4, A4]"),
    "a paper that is too small": ("papers: [a4, letter]", "papers: [{name: stamp, width: 30 mm, height: 40 mm}]"),
}


BAD = (
    *(
        pytest.param(folder, id=folder.parent.name)
        for folder in sorted((ROOT / "tests/cases/brief").glob("*/bad"))
        if (folder / "spec.yaml").is_file()
    ),
    *(pytest.param(laid_over(case["bad"].replace("⟦", "")), id=rule) for rule, case in TABLE.items()),
)


@pytest.mark.parametrize("bad", BAD)
def test_check_finds_in_a_bad_design_what_build_finds(bad: Path | str, publisher: Publisher, tmp_path: Path) -> None:
    folder = bad
    if isinstance(bad, str):
        folder = tmp_path / "laid-over"
        folder.mkdir()
        (folder / "spec.yaml").write_text(bad, encoding="utf-8")
    check, build = publisher("check", folder), publisher("build", folder, "--paper", "a4", "--out", tmp_path / "out")
    assert (check.code, check.err) == (build.code, build.err)
    assert check.err


@pytest.mark.parametrize("slug", sorted(spec.parent.name for spec in (ROOT / "designs").glob("*/spec.yaml")))
def test_check_finds_nothing_in_a_demo_as_build_does(slug: str, packs: Path) -> None:
    """Building them for ``packs`` said nothing."""
    assert (packs / slug / "packs.json").is_file()
    found = [demo_pack(slug, paper).findings for paper in ("a4", "letter")]
    assert [demo(slug).findings, *found] == [(), (), ()]


@pytest.mark.parametrize("case", ALIKE)
def test_check_finds_what_build_finds(case: str, publisher: Publisher, shelf: Path, tmp_path: Path) -> None:
    changed(shelf / "bollard", *ALIKE[case])
    check, build = publisher("check", shelf), publisher("build", shelf, "--out", tmp_path / "out")
    assert (check.code, check.err) == (build.code, build.err)
    if case == "on pages alone":
        assert "pages/title-too-long" in check.err


def test_what_falls_over_has_no_balance_in_mm() -> None:
    """What touches the table along no area has a margin of minus infinity, which is no length."""
    here = Place(Path("spec.yaml"), 1, 1, "")

    def said(balance: float, with_figures: float) -> list[str]:
        values = {"balance_margin": balance, "balance_with_figures": with_figures}
        return _deciding({key: Fact(f"house.{key}", value, "length", here) for key, value in values.items()})

    assert said(-inf, -inf) == ["balance: falls over"]
    assert said(12.0, -3.0) == ["balance 12.0 mm", "with figures -3.0 mm"]
