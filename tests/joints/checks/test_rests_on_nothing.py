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
