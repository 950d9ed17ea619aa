"""Needs that are not met, through the rooms: what size meets them, which cannot be met, which contradict."""

from dataclasses import replace
from pathlib import Path

import pytest

from publisher.basics import Finding
from publisher.brief import read_brief
from publisher.design import Fact, Size, work_out
from publisher.geometry import make_parts
from publisher.joints import Tried, put_together, suggest
from publisher.pipeline import try_out, work

SPEC = """\
format: 2
title: Steps
version: 1.0.0
use: trace
sizes: {board: 5 mm, base: 25 mm, reach: 92 mm, core: 30 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  step: {name: Step, board: foam, shape: spiral_stair_layer, with: {core_radius: core, reach: reach, step_angle: 30 deg, turn: 15 deg}}
  plinth: {name: Plinth, board: foam, shape: disc, with: {radius: 110 mm}}
assembly: {stair: {stack: [{part: plinth}, {part: step, count: 6, turn: 15 deg}]}}
needs:
"""


def found_with(folder: Path, *needs: str) -> tuple[Finding, ...]:
    design = folder / "steps"
    design.mkdir()
    (design / "spec.yaml").write_text(SPEC + "".join(f"  - {{{need}}}\n" for need in needs))
    return tuple(f for f in work(read_brief(design)).findings if f.check.startswith("joints/need"))


def test_the_size_that_meets_a_need_is_named_and_meets_it(tmp_path: Path) -> None:
    """b = 25, α = 15°: reach 108.266, so 108.3; printed at 99.5 %: 108.266 / 0.995 = 108.81."""
    (found,) = found_with(tmp_path, "fact: stair.base_that_stands, at_least: base, adjust: reach")
    assert "stair.base_that_stands is 21.2 mm" in found.message
    assert "make “reach” 108.3 mm (4.27 in) or more (now 92.0 mm (3.62 in))" in found.hint
    assert "108.9 mm (4.29 in) or more holds also when it prints at 99.5 %" in found.hint
    assert found.place is not None
    assert found.place.line == 12
    brief = read_brief(tmp_path / "steps")
    reach = next(size for size in work_out(brief).sizes if size.name == "reach")
    for value, holds in ((108.3, True), (108.2, False)):
        tried = try_out(brief, "", replace(reach, value=value))
        assert tried is not None
        base = next(f.value for f in tried[1] if f.name == "stair.base_that_stands")
        assert (base >= 25.0) is holds


def test_a_need_without_a_solution_says_the_range(tmp_path: Path) -> None:
    (found,) = found_with(tmp_path, "fact: stair.height, at_least: 60 mm, adjust: core")
    assert "no “core” within 7.50 mm (0.30 in) … 120.0 mm (4.72 in) satisfies it" in found.hint


def test_needs_that_pull_a_size_both_ways_contradict_each_other(tmp_path: Path) -> None:
    both = (
        "fact: stair.base_that_stands, at_least: base, adjust: reach",
        "fact: step.area, at_most: 5000 mm * 1 mm, adjust: reach",
    )
    found = found_with(tmp_path, *both)
    (clash,) = [f for f in found if f.check == "joints/needs-contradict"]
    assert "takes “reach” 108.3 mm (4.27 in) or more; there step.area is" in clash.message
    assert "no “reach” meets both" in clash.message
    assert "12" in str(clash.place)


def test_needs_that_one_size_meets_together_do_not(tmp_path: Path) -> None:
    both = (
        "fact: stair.base_that_stands, at_least: base, adjust: reach",
        "fact: stair.width, at_most: 300 mm, adjust: reach",
        "fact: step.area, at_least: 6000 mm * 1 mm, adjust: reach",
    )
    found = found_with(tmp_path, *both)
    assert {f.check for f in found} == {"joints/need-not-met"}


@pytest.mark.parametrize("adjust", ["", ", adjust: board"])
def test_a_need_that_is_met_is_left_alone(tmp_path: Path, adjust: str) -> None:
    assert found_with(tmp_path, f"fact: stair.height, at_least: 30 mm{adjust}") == ()


WIDE = (
    SPEC.replace("core: 30 mm}", "core: 30 mm, foot: 110 mm}")
    .replace("radius: 110 mm", "radius: foot")
    .replace("20 x 30 in", "230 x 700 mm")
)
NEED = "  - {{fact: plinth.{}, at_least: {} mm, adjust: foot}}\n"


def hints(folder: Path, text: str) -> list[str]:
    (folder / "steps").mkdir(exist_ok=True)
    (folder / "steps" / "spec.yaml").write_text(text)
    worked = work(read_brief(folder / "steps"))
    return [f.hint for f in worked.findings if f.check == "joints/need-not-met"]


def test_what_gets_worse_at_a_value_is_said_with_it(tmp_path: Path) -> None:
    (hint,) = hints(tmp_path, WIDE + NEED.format("width", 240))
    assert "make “foot” 120.0 mm" in hint
    assert "; but at 120.7 mm (4.75 in) something else is wrong: " in hint
    assert "Plinth" in hint  # it no longer goes on the sheet


def test_nothing_is_added_where_nothing_gets_worse(tmp_path: Path) -> None:
    (hint,) = hints(tmp_path, WIDE.replace("230 x 700", "300 x 700") + NEED.format("width", 240))
    assert "make “foot” 120.0 mm" in hint
    assert "wrong" not in hint


@pytest.mark.parametrize(("most", "tried"), [(1, 1), (None, 2)])
def test_a_check_tries_few_values_whole_and_all_when_asked(tmp_path: Path, most: int | None, tried: int) -> None:
    (tmp_path / "steps").mkdir()
    (tmp_path / "steps" / "spec.yaml").write_text(WIDE + NEED.format("width", 230) + NEED.format("height", 240))
    design = work_out(brief := read_brief(tmp_path / "steps"))
    joined = put_together(design, make_parts(design)[0])
    values: list[float] = []

    def whole(size: Size) -> Tried:
        values.append(size.value)
        return Tried()

    def facts_at(size: Size) -> tuple[Fact, ...] | None:
        found = try_out(brief, "", size)
        return found[1] if found else None

    said = suggest(design, joined, facts_at, whole, most).findings
    assert len(values) == tried
    assert sum("check with --advise" in finding.hint for finding in said) == 2 - tried
