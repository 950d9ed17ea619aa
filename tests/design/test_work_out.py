"""The whole room on small specs, and on the demo designs as read from their folders."""

import re
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from publisher.basics import Finding, Place, errors
from publisher.brief import Brief, Table, read_brief
from publisher.design import Design, variants, work_out
from tests.searches.profile import dice, rounds

DESIGNS = Path(__file__).parents[2] / "designs"
THIN = (("board", "3/16 in"),)


def demo(slug: str, variant: str = "", sets: tuple[tuple[str, str], ...] = ()) -> Design:
    brief = read_brief(DESIGNS / slug, sets)
    assert errors(brief.findings) == ()
    design = work_out(brief, variant)
    assert errors(design.findings) == ()
    return design


def sizes(design: Design) -> dict[str, float]:
    return {size.name: size.value for size in design.sizes}


def parameters(design: Design, part: str) -> dict[str, float | str]:
    plan = next(p for p in design.parts if p.id == part)
    return {parameter.name: parameter.value for parameter in plan.parameters}


def test_the_small_spec(tried: Callable[..., Any]) -> None:
    design = tried("designer: Ebbwater Patterns\nlicence: CC-BY-NC-4.0").design
    assert design.findings == ()
    assert (design.slug, design.title, design.version, design.use, design.language) == (
        "test-piece", "Test piece", "1.0.0", "trace", "en",
    )  # fmt: skip
    assert (design.designer, design.licence, design.variant) == ("Ebbwater Patterns", "CC-BY-NC-4.0", "")
    assert [part.letter for part in design.parts] == ["A", "B"]


def test_an_empty_brief_does_not_raise() -> None:
    design = work_out(Brief("nothing", Table((), Place("spec.yaml", 1, 1)), (), ()))
    assert (design.parts, design.sizes, design.title) == ((), (), "nothing")


# Demo table of the first packs: heights and layer counts follow the board
@pytest.mark.parametrize(("sets", "layers", "height"), [((), 18, 100.0), (THIN, 19, 100.0125)])
def test_the_stair_follows_the_board(sets: tuple[tuple[str, str], ...], layers: int, height: float) -> None:
    design = demo("lock-stair", "", sets)
    step = next(part for part in design.parts if part.id == "step")
    assert (step.count, step.spare) == (layers + 1, 1)  # the top step is doubled
    assert (step.count + 1) * step.thickness == pytest.approx(height, abs=1e-9)  # on the plinth: level with the quay
    assert parameters(design, "step")["step_angle"] == 40.0
    assert parameters(design, "step")["turn"] == 20.0
    assert parameters(design, "step")["joints"] in (27.0, 45.0)
    # the plinth is a stack layer of its own part
    assert [row.part for row in design.stacks[0].rows] == ["plinth", "step", "step"]


@pytest.mark.parametrize(("sets", "inside", "slot"), [((), 130.0, 5.3), (THIN, 130.475, 5.0625)])
def test_the_toll_house_follows_the_board(sets: tuple[tuple[str, str], ...], inside: float, slot: float) -> None:
    design = demo("toll-house", "", sets)
    by_id = {part.id: part for part in design.parts}
    assert {part.id: part.count for part in design.parts} == {"gable": 2, "side": 2, "roof": 2}
    board = sizes(design)["board"]
    side = {t.edge: t for t in by_id["side"].treatments}
    assert float(parameters(design, "side")["width"]) - side["left"].take_off - side["right"].take_off == pytest.approx(
        inside
    )
    slots = {t.edge: t.slots for t in by_id["gable"].treatments}
    for edge in ("left", "right"):
        (row,) = slots[edge]
        assert row.inset == 10.0
        assert row.mate + row.play == pytest.approx(slot)
        assert row.inset >= 2 * board
    assert {t.edge: t.bevel for t in by_id["roof"].treatments} == {"ridge": 45.0}
    door = next(o for o in by_id["gable"].openings if o.name == "door")
    assert {p.name: p.value for p in door.parameters}["width"] == 32.0


@pytest.mark.parametrize(("sets", "boards", "height"), [((), 20, 100.0), (THIN, 21, 100.0125)])
def test_the_quay_is_a_whole_number_of_boards_high(
    sets: tuple[tuple[str, str], ...], boards: int, height: float
) -> None:
    design = demo("quay", "", sets)
    assert sizes(design)["height"] == pytest.approx(height, abs=1e-9)
    assert sizes(design)["height"] / sizes(design)["board"] == pytest.approx(boards)
    assert {part.id: part.count for part in design.parts} == {"side": 2, "deck": 1, "rib": 4}


def test_variants_of_the_demos_are_clean_on_both_boards() -> None:
    for folder in sorted(DESIGNS.iterdir()):
        if (folder / "spec.yaml").exists():
            for variant in ("", *variants(read_brief(folder))):
                for sets in ((), THIN):
                    assert demo(folder.name, variant, sets).variant == variant


def found_in(folder: Path) -> tuple[Finding, ...]:
    """Return the errors of a spec, as far as they can be found without a part being made."""
    brief = read_brief(folder)
    return errors(brief.findings) or errors(work_out(brief).findings)


@pytest.mark.parametrize(
    ("slug", "old", "new", "says"),
    [
        ("quay", "\n  rib: {", "\n  ribb: {", "there is no part “rib”, and 20 that follow (lines 42, 45, 46,"),
        ("lock-stair", "\n  step: {", "\n  stepp: {", "there is no part “step”, and 9 that follow"),
        ("bridge", "\n  span: ", "\n  spam: ", "there is no size “span”, and 8 that follow"),
        (
            "bridge",
            "\n  pier:\n    stack",
            "\n  piers:\n    stack",
            "there is no part or assembly “pier”, and 6 that follow",
        ),
    ],
)
def test_one_misspelt_name_is_one_finding(slug: str, old: str, new: str, says: str, tmp_path: Path) -> None:
    folder = shutil.copytree(DESIGNS / slug, tmp_path / slug)
    spec = folder / "spec.yaml"
    text = spec.read_text(encoding="utf-8")
    assert text.count(old) == 1
    spec.write_text(text.replace(old, new), encoding="utf-8")
    (finding,) = found_in(folder)
    assert says in finding.message and "did you mean" in finding.hint


@pytest.mark.search
def test_no_misspelt_key_is_more_than_two_findings(tmp_path: Path) -> None:
    """Two where a key of sizes or parts is misspelt whose new name is wrong as well."""
    keys = []
    for slug in ("lock-stair", "toll-house", "quay", "bridge", "island"):
        folder = shutil.copytree(DESIGNS / slug, tmp_path / slug)
        text = (folder / "spec.yaml").read_text(encoding="utf-8")
        keys += [(folder, text, *found.span(1)) for found in re.finditer(r"\b([a-z_]{3,})(?=:[ \n])", text)]
    for folder, text, start, end in dice(5).sample(keys, min(rounds(20, 600), len(keys))):
        word = text[start:end]
        swapped = word[:-2] + word[-1] + word[-2] if word[-1] != word[-2] else word + "x"
        (folder / "spec.yaml").write_text(text[:start] + swapped + text[end:], encoding="utf-8")
        found = found_in(folder)
        assert len(found) <= 2, (folder.name, word, [f.message for f in found])
        (folder / "spec.yaml").write_text(text, encoding="utf-8")
