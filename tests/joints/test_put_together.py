"""The demo designs, recomputed to the last printed digit of the table that they were planned by."""

from functools import cache
from pathlib import Path

import pytest

from publisher.basics import errors
from publisher.brief import read_brief
from publisher.design import work_out
from publisher.geometry import make_parts
from publisher.joints import Joined, put_together

DESIGNS = Path(__file__).parents[2] / "designs"
THIN = (("board", "3/16 in"),)


@cache
def together(name: str, sets: tuple[tuple[str, str], ...] = ()) -> Joined:
    return anew(name, sets)


def anew(name: str, sets: tuple[tuple[str, str], ...] = ()) -> Joined:
    design = work_out(read_brief(DESIGNS / name, sets))
    parts, findings = make_parts(design)
    assert errors((*design.findings, *findings)) == ()
    return put_together(design, parts)


def printed(joined: Joined, name: str, digits: int = 1) -> str:
    fact = joined.fact(name)
    assert fact is not None, name
    return f"{fact.value:.{digits}f}"


@pytest.mark.parametrize(("sets", "steps", "climb"), [((), "18", "90.0"), (THIN, "19", "90.5")])
def test_the_stair(sets: tuple[tuple[str, str], ...], steps: str, climb: str) -> None:
    joined = together("lock-stair", sets)
    assert joined.findings == ()
    assert (printed(joined, "stair.steps", 0), printed(joined, "stair.climb")) == (steps, climb)
    assert printed(joined, "stair.base_that_stands") == "27.2"
    assert printed(joined, "stair.joint_stagger", 2) == "0.50"
    plinth = joined.fact("stair.least_plinth_radius")
    assert plinth is not None
    assert 71 < plinth.value <= 72


@pytest.mark.parametrize(
    ("sets", "inside", "ridge", "slot"),
    [((), ("100.0", "130.0"), "142.1", "5.30"), (THIN, ("100.5", "130.5"), "141.7", "5.06")],
)
def test_the_toll_house(sets: tuple[tuple[str, str], ...], inside: tuple[str, str], ridge: str, slot: str) -> None:
    joined = together("toll-house", sets)
    assert joined.findings == ()
    assert (printed(joined, "house.inside_width"), printed(joined, "house.inside_depth")) == inside
    assert printed(joined, "house.ridge") == printed(joined, "house.height") == ridge
    assert printed(joined, "gable.slot_width", 2) == slot
    assert (printed(joined, "gable.door.width"), printed(joined, "gable.door.height")) == ("32.0", "50.0")
    assert {m.part for m in joined.meetings} == {"gable"}


@pytest.mark.parametrize(("sets", "height"), [((), "100.00"), (THIN, "100.01")])
def test_the_quay(sets: tuple[tuple[str, str], ...], height: str) -> None:
    joined = together("quay", sets)
    assert joined.findings == ()
    assert printed(joined, "box.height", 2) == height
    assert (printed(joined, "box.width"), printed(joined, "box.depth")) == ("480.0", "80.0")
    assert len(dict(joined.placed)["box"]) == 7


def test_every_picture_that_a_step_asks_for_is_drawn() -> None:
    assert {d.name for d in together("lock-stair").drawings} == {
        "whole:stair",
        "plan:stair:3",
        "act:5:1",
        "act:6:1",
        "act:6:2",
        "front:stair",
        "above:stair",
        "part:step",
        "part:plinth",
    }
    assert {"whole:house", "act:5:1", "part:gable"} <= {d.name for d in together("toll-house").drawings}


def test_the_same_design_gives_the_same_result() -> None:
    assert anew("toll-house") == together("toll-house")
    assert repr(anew("lock-stair")) == repr(together("lock-stair"))


def test_parts_that_could_not_be_drawn_are_left_out() -> None:
    design = work_out(read_brief(DESIGNS / "toll-house"))
    parts, _ = make_parts(design)
    joined = put_together(design, tuple(p for p in parts if p.id != "side"))
    assert [f.check for f in joined.findings if f.check == "joints/fact-unknown"]
    assert joined.drawing("part:gable") is not None
    assert put_together(design, ()).drawings == ()


def test_an_assembly_with_a_section_has_the_height_of_the_whole(tmp_path: Path) -> None:
    """A plinth and two layers, and a loose section of three on them: 30 mm; what is found is found once."""
    folder = tmp_path / "pile"
    folder.mkdir()
    (folder / "spec.yaml").write_text(PILE)
    design = work_out(read_brief(folder))
    parts, _ = make_parts(design)
    joined = put_together(design, parts)
    values = {f.name: f.value for f in joined.facts}
    assert (values["pile.height"], values["pile.layers"]) == (30.0, 6)
    assert (values["pile_top.height"], values["pile_top.underside"], values["pile_top.seat_turn"]) == (15.0, 15.0, 15.0)
    assert len({f.name for f in joined.facts}) == len(joined.facts)
    assert len(joined.findings) == len({f.message for f in joined.findings})


PILE = """\
format: 2
title: Pile
version: 1.0.0
use: paste
sizes: {board: 5 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts: {slab: {name: Slab, board: foam, shape: rectangle, with: {width: 80 mm, height: 60 mm}}}
assembly:
  pile:
    stack:
      - {part: slab, count: 3}
      - {section: top, turn: 15 deg, loose: true, stack: [{part: slab, count: 3}]}
"""
