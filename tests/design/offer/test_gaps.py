"""Gaps of a pack that could be built: each is found, at its line, and whole instructions bring nothing."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from publisher.basics import Place, Severity
from publisher.brief import Brief, read_brief
from publisher.design import gaps, unsigned, work_out
from publisher.pipeline import release, work

SIGNED = "designer: Ebbwater Patterns\nlicence: CC-BY-NC-4.0\n"
DESIGNS = Path(__file__).parents[3] / "designs"


def steps(*rows: tuple[str, str]) -> str:
    """Return steps of these stages, each with the parts that it lists."""
    lines = (
        f"  - {{title: Step {n}, stage: {stage}, say: Do it., parts: [{parts}]}}"
        for n, (stage, parts) in enumerate(rows, 1)
    )
    return SIGNED + "steps:\n" + "\n".join(lines)


WHOLE = (("print", ""), ("glue_templates", "wall, slab"), ("cut", "wall, slab"), ("glue", "wall, slab"), ("paint", ""))


@pytest.fixture
def said(brief_of: Callable[[str], Brief]) -> Callable[[str], list[tuple[str, str]]]:
    def found(more: str) -> list[tuple[str, str]]:
        brief = brief_of(more)
        return [(f.check, f.message) for f in gaps(work_out(brief), brief.fields)]

    return found


@pytest.mark.keeps("design/no-steps", "design/part-in-no-step", "design/stage-order", "design/unsigned")
def test_whole_instructions_bring_nothing(said: Callable[[str], Any]) -> None:
    assert said(steps(*WHOLE)) == []


@pytest.mark.parametrize("slug", ["bridge", "island", "lock-stair", "quay", "toll-house"])
def test_the_demos_have_no_gaps(slug: str) -> None:
    brief = read_brief(DESIGNS / slug)
    assert gaps(work_out(brief), brief.fields) == ()


@pytest.mark.breaks("design/no-steps")
def test_no_steps_at_all(said: Callable[[str], Any]) -> None:
    assert [check for check, _ in said(SIGNED)] == ["design/no-steps"]


def test_printing_and_mounting_need_no_step_as_the_pack_says_both(said: Callable[[str], Any]) -> None:
    assert said(steps(*WHOLE[2:])) == []


@pytest.mark.breaks("design/part-in-no-step")
def test_a_part_that_no_step_mentions_is_found_at_its_line(brief_of: Callable[[str], Brief]) -> None:
    brief = brief_of(steps(("print", ""), ("cut", "slab")))
    design = work_out(brief)
    (found,) = gaps(design, brief.fields)
    assert (found.check, found.message) == ("design/part-in-no-step", "no step mentions the part wall")
    assert found.severity is Severity.WARNING
    assert found.place == design.parts[0].place
    assert "parts: [wall]" in found.hint


@pytest.mark.parametrize(
    "step",
    [
        "{title: Walls, say: Cut the two walls.}",
        "{title: Cut part A, say: Cut it.}",
        "{title: Cut, say: 'It is {wall.width} wide.'}",
        "{title: Cut, say: Cut it., picture: {part: wall}}",
    ],
)
def test_words_facts_and_pictures_mention_a_part(said: Callable[[str], Any], step: str) -> None:
    assert said(f"{steps(('print', ''), ('cut', 'slab'))}\n  - {step}") == []


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        ((WHOLE[4], *WHOLE[:4]), "“Step 1” (stage paint) comes before the first of the stage print"),
        ((*WHOLE[1:3], WHOLE[0], *WHOLE[3:]), "(stage glue_templates) comes before the first of the stage print"),
        ((WHOLE[0], WHOLE[1], WHOLE[3], WHOLE[2], WHOLE[4]), "(stage glue) comes before the first of the stage cut"),
        ((*WHOLE[:3], WHOLE[4], WHOLE[3]), "(stage paint) comes before the first of the stage glue"),
        (
            (*WHOLE[:2], ("cut", "slab"), ("glue", "slab, wall"), ("cut", "wall"), ("glue", "slab"), WHOLE[4]),
            "“Step 4” (stage glue) comes before the first of the stage cut",
        ),
    ],
)
@pytest.mark.breaks("design/stage-order")
def test_steps_before_what_they_need(said: Callable[[str], Any], rows: tuple[tuple[str, str], ...], says: str) -> None:
    assert any(check == "design/stage-order" and says in message for check, message in said(steps(*rows)))


@pytest.mark.parametrize(
    "rows",
    [
        (*WHOLE[:2], ("dry_fit", "slab"), *WHOLE[2:]),  # the coupon
        (*WHOLE[:3], ("texture", "wall"), *WHOLE[3:]),
        (*WHOLE[:2], ("texture", "wall"), *WHOLE[2:]),
        (*WHOLE[:3], ("paint", "wall"), *WHOLE[3:]),  # the inside, before it is closed
        (*WHOLE[:3], ("glue", "slab"), ("cut", "wall"), ("glue", "wall"), WHOLE[4]),
        (WHOLE[0], WHOLE[1], ("cut", ""), ("glue", "slab"), ("cut", "slab, wall"), WHOLE[4]),
    ],
)
@pytest.mark.keeps("design/stage-order")
def test_orders_that_can_be_worked_in(said: Callable[[str], Any], rows: tuple[tuple[str, str], ...]) -> None:
    assert said(steps(*rows)) == []


@pytest.mark.breaks("design/unsigned")
@pytest.mark.parametrize("missing", ["designer", "licence"])
def test_who_signs_is_a_warning_and_for_a_release_an_error(missing: str, tmp_path: Path) -> None:
    spec = (DESIGNS / "quay/spec.yaml").read_text(encoding="utf-8").splitlines(keepends=True)
    folder = tmp_path / "quay"
    folder.mkdir()
    (folder / "spec.yaml").write_text("".join(line for line in spec if not line.startswith(missing)), encoding="utf-8")
    brief = read_brief(folder)
    (found,) = unsigned(brief.fields)
    assert (found.check, found.subject, found.severity) == ("design/unsigned", missing, Severity.WARNING)
    assert isinstance(found.place, Place) and found.place.line
    released = release(brief, tmp_path / "releases")
    assert released.bundle is None and not (tmp_path / "releases").exists()
    assert [(f.check, f.severity) for f in released.builds[0].findings] == [("design/unsigned", Severity.ERROR)]


def test_gaps_are_among_the_findings_of_the_work() -> None:
    assert work(read_brief(DESIGNS / "quay")).findings == ()
