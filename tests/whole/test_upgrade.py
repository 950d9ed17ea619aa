"""Specs of format 1 rewritten: the parts that they gave then (``tests/cases/upgrade/figures.json``) are those that they give now."""

import json
import shutil
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from publisher import api
from publisher.basics import Refusal
from publisher.design import work_out
from publisher.geometry import make_parts
from publisher.upgrade import Upgraded, upgrade, with_unit, with_units_in_sum
from tests.whole.conftest import Run

CASES = Path(__file__).parents[1] / "cases" / "upgrade"
FIGURES: dict[str, dict[str, list[float]]] = json.loads((CASES / "figures.json").read_text())
DESIGNS = sorted({name.partition("/")[0] for name in FIGURES})

DISC = """\
format: 1   # old
title: Disc
version: 1.0.0
use: trace
sizes: {board: 5 mm, reach: 20}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  disc: {name: Disc, board: foam, shape: disc, with: {radius: reach}}
assembly:
  pile: {stack: [{part: disc, count: 3}]}
"""
STAIR = DISC.replace(
    "assembly:\n  pile: {stack: [{part: disc, count: 3}]}",
    """  step: {name: Step, board: foam, shape: rectangle, with: {width: 60 mm, height: 20 mm}}
assembly:
  pile: {brace: {run: 9 mm, drop: 5 mm, every: 2}, stack: [{part: step, count: steps, turn: 30 deg}]}""",
).replace("reach: 20}", "reach: 20, steps: 6}")


@cache
def of_case(name: str) -> Upgraded:
    return upgrade(CASES / name)


@pytest.fixture
def tried(tmp_path: Path) -> Callable[[str], Upgraded]:
    """Upgrade a spec's text."""

    def run(text: str) -> Upgraded:
        (tmp_path / "old").mkdir(exist_ok=True)
        (tmp_path / "old" / "spec.yaml").write_text(text)
        return upgrade(tmp_path / "old")

    return run


def figures(folder: Path, variant: str) -> dict[str, list[float]]:
    """What ``figures.json`` holds of a variant's parts: counts, thickness, box, lengths of all rings and of all template rings.

    The figures are older than the parts that braces bring along.
    """
    found = {}
    design = work_out(api.read(folder), variant)
    braces = {stack.brace.part for stack in design.stacks if stack.brace}
    for p in (part for part in make_parts(design)[0] if part.id not in braces):
        box = p.outline.outer.box
        rings = [path.length for path in (*p.outline.paths, *p.template.paths)]
        found[p.id] = [p.count, p.spare, p.thickness, box.left, box.bottom, box.right, box.top, *rings]
    return found


@pytest.mark.keeps("upgrade/by-hand")
@pytest.mark.keeps("upgrade/parts-differ")
@pytest.mark.parametrize("name", DESIGNS)
def test_a_rewritten_design_has_the_parts_that_it_had(name: str, tmp_path: Path) -> None:
    folder = tmp_path / name
    shutil.copytree(CASES / name, folder)
    upgraded = of_case(name)
    assert upgraded.complete
    api.keep_spec(replace(upgraded, folder=folder))
    for key, expected in FIGURES.items():
        design, _, variant = key.partition("/")
        if design == name:
            found = figures(folder, "" if variant == api.STANDARD else variant)
            assert found.keys() == expected.keys()
            for part, row in expected.items():
                assert found[part] == pytest.approx(row, abs=2e-6), part
    again = upgrade(folder)
    assert (again.difference, again.findings) == ("", ())


def test_every_former_form_is_rewritten_and_every_comment_stays() -> None:
    found = of_case("old-forms")
    lines = found.after.splitlines()
    assert [line.partition("#")[2] for line in lines] == [line.partition("#")[2] for line in found.before.splitlines()]
    said = {line.strip().partition(" #")[0].strip() for line in lines}
    assert said >= {
        "format: 2",
        "board: 5 mm",
        'core: "30 mm"',
        "layers: 12",
        "going: 360 deg / 18",
        "both: 4",
        "span: 2 * reach - 74 mm",
        "lift: 40 mm * sin(30 deg)",
        "low: 0",
        "brace: {run: 20 mm, drop: 15 mm, under: [6, 9, 12]}",
        "- place: left_roof",
        "rests_on: [front.left_slope, back.right_slope]",
        '- {"place": right_roof, "rests_on": [front.right_slope, back.left_slope]}',
        "- {edges: [left_roof.ridge, right_roof.ridge], joint: mitre, corner: 180 deg - 2 * pitch}",
        "broad: {title: broad, sizes: {reach: 100 mm}}",
    }
    assert "notch: both * 1 mm" in found.after  # a count elsewhere: the size stays plain
    assert "{section: upper, stands_on: lower, loose: true, turn: 20 deg" in found.after
    assert "margins: [5 mm, 5 mm, 5 mm, 5 mm]" in found.after


@pytest.mark.breaks("upgrade/text-prints-unit")
def test_a_text_that_prints_a_size_with_a_unit_is_named(tried: Callable[[str], Upgraded]) -> None:
    (found,) = tried(DISC + "summary: A disc of {reach} mm.\n").findings
    assert (found.check, found.subject, found.place and found.place.line) == ("upgrade/text-prints-unit", "reach", 11)


@pytest.mark.keeps("upgrade/text-prints-unit")
def test_a_text_that_prints_another_size_says_the_same(tried: Callable[[str], Upgraded]) -> None:
    assert tried(DISC + "summary: Board of {board}.\n").findings == ()


@pytest.mark.parametrize(
    ("text", "line", "says"),
    [
        (STAIR + "variants: {high: {title: high, sizes: {steps: 7}}}\n", 11, "other steps in each variant"),
        (STAIR.replace("every: 2", "every: steps / 3"), 11, "cannot be told"),
    ],
)
@pytest.mark.breaks("upgrade/by-hand")
def test_steps_that_cannot_be_numbered_are_left(
    tried: Callable[[str], Upgraded], text: str, line: int, says: str
) -> None:
    found = tried(text)
    assert not found.complete
    (left,) = [f for f in found.findings if f.check == "upgrade/by-hand"]
    assert says in left.message
    assert "under: weak" in left.hint
    assert left.place is not None
    assert left.place.line == line
    with pytest.raises(ValueError, match="not written"):
        api.keep_spec(found)


def test_a_value_on_two_lines_and_a_name_that_editors_misread_are_left(tried: Callable[[str], Upgraded]) -> None:
    (folded,) = tried(DISC.replace("radius: reach", "radius: 3\n      + 4")).findings
    assert (folded.check, folded.place and folded.place.line) == ("design/no-unit", 8)
    (name,) = tried(DISC.replace("reach", "y")).findings
    assert (name.check, name.place and name.place.line) == ("brief/bad-key", 5)
    assert "many editors" in name.message


def test_mistakes_of_the_designer_stay_and_nothing_is_guessed(tried: Callable[[str], Upgraded]) -> None:
    ratio = tried(DISC.replace("radius: reach", "radius: reach * 1 mm / board"))
    assert [f.check for f in ratio.findings] == ["design/ratio-as-size"]  # an error then and now
    angle = tried(DISC.replace("radius: reach", "radius: 30 deg"))
    assert [f.check for f in angle.findings] == ["design/wrong-kind"]
    assert "radius: 30 deg" in angle.after


@pytest.mark.breaks("upgrade/parts-differ")
def test_another_part_would_be_found(tried: Callable[[str], Upgraded], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(
        "publisher.upgrade.solving.with_unit", lambda text, unit: with_unit(text.replace("20", "21"), unit)
    )
    assert [f.check for f in tried(DISC).findings] == ["upgrade/parts-differ"]


def test_other_formats_and_broken_specs(tried: Callable[[str], Upgraded], tmp_path: Path) -> None:
    for text, checks in (
        (DISC.replace("format: 1", "format: 3"), ["brief/unknown-format"]),
        (DISC.replace("format: 1   # old\n", ""), ["brief/missing-key"]),
        (DISC.replace("format: 1", "format: 2").replace("reach: 20", "reach: 20 mm"), []),
    ):
        found = tried(text)
        assert [f.check for f in found.findings] == checks
        assert found.difference == ""
    with pytest.raises(Refusal, match="quotation mark"):
        tried(DISC + 'summary: "never closed\n')
    with pytest.raises(Refusal, match="does not exist"):
        upgrade(tmp_path / "nowhere")


def test_bytes_before_and_between_lines_stay(tmp_path: Path) -> None:
    (tmp_path / "spec.yaml").write_bytes(b"\xef\xbb\xbf" + DISC.replace("\n", "\r\n").encode())
    written = api.keep_spec(upgrade(tmp_path)).read_bytes()
    wanted = DISC.replace("format: 1", "format: 2").replace("reach: 20", "reach: 20 mm").replace("\n", "\r\n")
    assert written == b"\xef\xbb\xbf" + wanted.encode()


@pytest.mark.parametrize(
    ("text", "unit", "new"),
    [
        ("4", "mm", "4 mm"),
        (" 3/16 ", "mm", "3/16 mm"),
        ("1 1/2", "mm", "1 1/2 mm"),
        ("-2", "mm", "-2 mm"),
        ("2 * 25", "mm", "2 * 25 mm"),
        ("360 / 18", "deg", "360 deg / 18"),
        ("40 * sin(30 deg)", "mm", "40 mm * sin(30 deg)"),
        ("20 + 3 * 4", "mm", "20 mm + 3 * 4 mm"),
        ("reach", "mm", "reach * 1 mm"),
        ("2 * reach - 74", "mm", "(2 * reach - 74) * 1 mm"),
        ("max(reach - 3, 4)", "mm", "max(reach - 3, 4) * 1 mm"),
    ],
)
def test_expressions_get_a_unit(text: str, unit: str, new: str) -> None:
    assert with_unit(text, unit) == new


def test_numbers_that_are_added_get_a_unit() -> None:
    assert with_units_in_sum("180 - 2 * pitch", "deg") == "180 deg - 2 * pitch"
    assert with_units_in_sum("reach + (3 - 1)", "mm") == "reach + (3 - 1)"


def test_the_command_shows_first_and_writes_when_asked(publisher: Callable[..., Run], tmp_path: Path) -> None:
    folder = tmp_path / "disc"
    folder.mkdir()
    (folder / "spec.yaml").write_text(DISC)
    refused = publisher("check", folder)
    assert refused.code == 1
    assert "spec.yaml:1:9: error: the spec says format “1”" in refused.err
    assert f"“publisher upgrade {folder}”" in refused.err
    assert refused.err.count("error:") == 1  # by the words of another format nothing else is said
    shown = publisher("upgrade", folder)
    assert shown.code == 0
    assert "-format: 1   # old\n+format: 2   # old\n" in shown.out
    assert "Nothing is written yet: add --write" in shown.out
    assert (folder / "spec.yaml").read_text() == DISC
    assert "written; the parts are the same" in publisher("upgrade", folder, "--write").out
    assert "reach: 20 mm" in (folder / "spec.yaml").read_text()
    assert "nothing to do" in publisher("upgrade", folder).out


def test_the_command_writes_nothing_of_what_it_cannot_rewrite_whole(
    publisher: Callable[..., Run], tmp_path: Path
) -> None:
    folder = tmp_path / "stair"
    folder.mkdir()
    (folder / "spec.yaml").write_text(text := STAIR.replace("every: 2", "every: steps / 3"))
    run = publisher("upgrade", folder, "--write")
    assert run.code == 1
    assert "not written: first do by hand" in run.out
    assert (folder / "spec.yaml").read_text() == text
    document = json.loads(publisher("upgrade", folder, "--json").out)
    assert [(one["complete"], one["written"]) for one in document["specs"]] == [(False, False)]
    assert publisher("upgrade", tmp_path / "nowhere").code == 2
