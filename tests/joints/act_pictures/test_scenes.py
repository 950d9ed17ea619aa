"""Scenes of acts: what stands of what, what is named, how it lies on the bench."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np

from publisher.brief import read_brief
from publisher.design import work_out
from publisher.geometry import make_parts
from publisher.joints import as_glued
from publisher.joints.assembled import Assembled
from publisher.joints.put_together import assemble
from tests.joints.act_pictures.conftest import LID, WALLS, scenes
from tests.joints.building.conftest import BOX, BRACED

PILE = "\n  pile: {stack: [{part: lid}, {part: lid, count: 6, turn: 15 deg}]}\n"


def test_what_was_put_up_dry_is_not_shown_again_with_glue(assembled: Callable[..., Assembled]) -> None:
    assert list(scenes(assembled(BOX, f"dry:{WALLS}", WALLS, LID))) == ["act:1:1", "act:1:2", "act:3:1"]


def test_a_level_way_in_becomes_the_way_down_where_what_stands_also_lies(box: Assembled) -> None:
    walls, back, lid = scenes(box).values()
    assert np.allclose(walls.way, (0, 0, -1)) and np.allclose(back.way, (0, 0, -1))
    assert not np.allclose(walls.turn, np.eye(3)) and np.allclose(walls.turn, back.turn)
    assert np.allclose(lid.turn, np.eye(3)), "a lid comes from above as the box stands"


def test_layers_are_shown_on_the_two_below_and_all_are_counted(assembled: Callable[..., Assembled]) -> None:
    found = scenes(assembled(BOX + PILE, "pile 1 to 3", f"pile 4 to top, {WALLS}, {LID}"))["act:2:1"]
    assert [solid.name for solid in found.before] == ["layer_2", "layer_3"]
    assert [solid.name for solid in found.added] == ["layer_4"]
    assert [label.text for label in found.labels] == ["4 × C"]


def test_match_letters_stand_where_both_edges_meet(box: Assembled) -> None:
    for scene in scenes(box).values():
        for letter in scene.letters:
            assert np.linalg.norm(letter.there - letter.new) < 12.0, letter.text
    assert scenes(box)["act:1:1"].letters


def test_a_turned_layer_says_by_how_much_and_one_that_is_not_is_crossed_out(
    assembled: Callable[..., Assembled],
) -> None:
    spiral = """
  stair: {stack: [{part: tread, count: 4, turn: 20 deg}, {part: tread}]}
"""
    tread = "  tread: {name: Tread, board: foam, shape: wall_panel, with: {width: 90 mm, height: 30 mm}}\n"
    text = BOX.replace("assembly:\n", tread + "assembly:\n") + spiral
    found = scenes(assembled(text, "stair 1 to 2", "stair 3 to 4", f"stair 5 to top, {WALLS}, {LID}"))
    turned, still = found["act:2:1"].sweep, found["act:3:1"].sweep
    assert turned is not None and (turned.text, turned.wrong) == ("20°", False)
    assert still is not None and (still.text, still.wrong) == ("0°", True)
    assert all(scene.sweep is None for key, scene in found.items() if key.startswith("act:3:") and key != "act:3:1")


def test_a_layer_turned_about_its_middle_is_shown_alone_with_its_angle(assembled: Callable[..., Assembled]) -> None:
    """Two triangles crosswise on a disc were shown in one picture without their angle; with no corner on what is below them the upper one
    seemed to lie loose."""
    star = """
  star: {stack: [{part: plate}, {part: tooth, count: 2, turn: -45 deg}]}
"""
    parts = (
        "  plate: {name: Plate, board: foam, shape: disc, with: {radius: 60 mm}}\n"
        "  tooth: {name: Tooth, board: foam, shape: regular_polygon, with: {sides: 3, radius: 55 mm}}\n"
    )
    text = BOX.replace("assembly:\n", parts + "assembly:\n") + star
    first, second = (
        found for key, found in scenes(assembled(text, "star", f"{WALLS}, {LID}")).items() if key.startswith("act:1:")
    )
    assert (first.sweep, [label.text for label in first.labels]) == (None, ["1 × D", "1 × E"])
    assert second.sweep is not None and (second.sweep.text, second.sweep.wrong) == ("45°", False)
    assert ([solid.name for solid in second.before], [label.text for label in second.labels]) == (
        ["layer_1", "layer_2"],
        ["1 × E"],
    )
    assert len(second.goal) > 3


def test_what_is_rolled_in_a_sketch_goes_in_bent_and_lies_flat_nowhere_beside_it() -> None:
    """A flat strip whose ends curl up, after a sketch that bends them down, said nothing of being turned over."""
    design = work_out(read_brief(Path("designs/bridge")))
    plain = replace(
        design,
        steps=tuple(replace(step, acts=() if "roll" in (step.acts or ()) else step.acts) for step in design.steps),
    )
    for one, flat in ((design, 0), (plain, 1)):
        subject = assemble(one, as_glued(one, make_parts(one)[0]))[0]
        assert len([scene for scene in scenes(subject).values() if scene.strip is not None]) == flat


def test_braces_are_shown_under_all_that_stands_and_the_last_of_them_goes_in(
    assembled: Callable[..., Assembled],
) -> None:
    """They were lifted off each other as layers are, over the top of the last two."""
    subject = assembled(BRACED, "stair")
    scene = list(scenes(subject).values())[-1]
    assert [solid.name for solid in scene.before] == [f"layer_{n}" for n in range(1, 14)] + ["brace_7", "brace_8"]
    assert [solid.name for solid in scene.added] == ["brace_12"] and [label.text for label in scene.labels] == ["3 × C"]
    assert scene.under and not scene.pile and scene.sweep is None
    core = scene.added[0].frame.axes[:, 0]
    assert np.allclose(scene.way, -core, atol=1e-6), "each has its own way, and this is that of the last"
