from collections.abc import Callable

import pytest

from publisher.joints.checks.rests_on_nothing import rests_on_nothing
from tests.joints.building.conftest import BOX, assembled

__all__ = ["assembled"]

YARD = """
  pile: {stack: [{part: lid, count: 3}]}
  yard: {things: {step: {assembly: pile}, house: {assembly: box, on_top_of: [step]}}}
"""


@pytest.mark.keeps("joints/rests-on-nothing")
def test_each_on_what_stands(assembled: Callable) -> None:
    subject = assembled(BOX + YARD, "box", "pile", "yard.step, yard.house")
    outcome = rests_on_nothing.run(subject, rests_on_nothing)
    assert outcome.looked_at == 10 and outcome.findings == ()


@pytest.mark.breaks("joints/rests-on-nothing")
@pytest.mark.parametrize(
    ("adds", "says"),
    [
        (("box.left, box.lid, box.front, box.right, box.back", "pile", "yard.step, yard.house"), "lid of box meets nothing that stands"),
        (("box", "pile 1, pile 3, pile 2", "yard.step, yard.house"), "layer 3 of pile rests on layer 2, and no step before has added it"),
        (("box", "pile", "yard.house, yard.step"), "house of yard rests on step"),
        (("pile", "yard.step, yard.house", "box"), "house of yard is set down before anything of box is put together"),
    ],
)  # fmt: skip
def test_on_what_is_not_there(assembled: Callable, adds: tuple[str, ...], says: str) -> None:
    (finding,) = rests_on_nothing.run(assembled(BOX + YARD, *adds), rests_on_nothing).findings
    assert says in finding.message and finding.hint


RESTING = BOX.replace(
    """      - {edges: [lid.bottom, front.top], joint: butt, runs_through: lid}
      - {edges: [lid.top, back.top], joint: butt, runs_through: lid}
""",
    "      - {place: lid, rests_on: [front.top, back.top]}\n",
)


@pytest.mark.parametrize(
    ("text", "first", "said"),
    [
        (RESTING, "lid", "lid of box rests on front, back, and no step before has added them"),
        (RESTING, "front", ""),
        (BOX, "lid", ""),  # joined alone: it lies on the table with its face, and the box is built upside down
    ],
)
def test_walls_are_not_pushed_under_a_roof(assembled: Callable, text: str, first: str, said: str) -> None:
    names = [first, *(name for name in ("front", "left", "right", "back", "lid") if name != first)]
    subject = assembled(text, ", ".join(f"box.{name}" for name in names))
    assert [found.message for found in rests_on_nothing.run(subject, rests_on_nothing).findings] == (
        [said] if said else []
    )


BRACED = """
sizes: {board: 5 mm}
parts:
  plinth: {name: Plinth, board: foam, shape: disc, with: {radius: 70 mm}}
  step: {name: Step, board: foam, shape: spiral_stair_layer, with: {core_radius: 25 mm, reach: 70 mm, step_angle: 72 deg, turn: -36 deg}}
assembly:
  pile:
    stack: [{part: plinth}, {part: step, count: 12, turn: -36 deg}]
    brace: {run: 22 mm, drop: 30 mm, under: [10, 11]}
"""


def test_knee_braces_come_when_the_layers_stand_that_they_lean_on(assembled: Callable) -> None:
    early = assembled(BRACED, "pile 1", "pile.braces", "pile 2 to top")
    (finding,) = rests_on_nothing.run(early, rests_on_nothing).findings
    assert finding.message.startswith("the knee braces of pile stand against layers 5 to ")
    assert finding.hint.startswith("add pile 5 to ") and finding.hint.endswith(" before them")
    below = finding.hint.removeprefix("add pile 5 to ").removesuffix(" before them")
    for adds in (
        ("pile",),
        ("pile 1 to top", "pile.braces"),
        (f"pile 1 to {below}", "pile.braces", f"pile {int(below) + 1} to top"),
    ):
        assert rests_on_nothing.run(assembled(BRACED, *adds), rests_on_nothing).findings == ()
