"""Things on things, as a spec says them."""

from collections.abc import Callable
from typing import Any

import pytest

HEAD = (
    "parts: {wall: {board: foam, shape: wall_panel}, slab: {board: foam, shape: disc}}\n"
    "assembly:\n  pier: {stack: [{part: slab, count: 3}]}\n"
    "  box: {panels: {front: wall}, stands_on: front.bottom, joins: []}\n"
    "  crossing:\n    things:\n"
)


def crossing(**things: str) -> str:
    return HEAD + "".join(f"      {name}: {{{said}}}\n" for name, said in things.items())


@pytest.mark.keeps("design/things")
def test_things_come_after_what_carries_them_and_are_counted(tried: Callable[..., Any]) -> None:
    said = tried(
        crossing(
            top="assembly: box, on_top_of: [west, east], at: [2 mm, 1 in], turn: 90 deg, lifts_off: true",
            west="assembly: pier, at: [-50 mm, 0 mm]",
            east="assembly: pier",
        )
    )
    assert said.found == []
    (whole,) = said.design.wholes
    assert [(one.name, one.assembly, one.on, one.lifts_off) for one in whole.things] == [
        ("west", "pier", (), False),
        ("east", "pier", (), False),
        ("top", "box", ("west", "east"), True),
    ]
    assert (whole.things[2].at, whole.things[2].turn) == (pytest.approx((2.0, 25.4)), 90.0)
    assert {part.id: part.count for part in said.design.parts} == {"wall": 1, "slab": 6}


@pytest.mark.breaks("design/things")
@pytest.mark.parametrize(
    ("things", "words"),
    [
        ({"west": "assembly: peir"}, "“peir” is no assembly"),
        ({"west": "assembly: crossing"}, "“crossing” is made of things itself"),
        ({"west": "assembly: pier", "top": "assembly: box, on_top_of: [wst]"}, "top stands on “wst”"),
        ({"one": "assembly: pier, on_top_of: [two]", "two": "assembly: box, on_top_of: [one]"}, "in the end on itself"),
    ],
)
def test_things_that_cannot_stand(tried: Callable[..., Any], things: dict[str, str], words: str) -> None:
    said = tried(crossing(**things))
    assert said.found == ["design/things"]
    assert words in said.design.findings[0].message
