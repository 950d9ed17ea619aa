"""Where parts are glued on faces: found in an assembly, drawn on the part that carries them."""

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.basics import LineKind, Purpose
from publisher.design import FaceSeat
from publisher.joints.panels.place import PanelAssembly, place_panels
from publisher.joints.panels.seatings import seat_marks, seatings_of


def hut(make: SimpleNamespace, *seats: tuple[str, str, tuple[float, float]], **said: Any) -> PanelAssembly:
    plan = make.panels("hut", {"f": "w", "r": "s", "k": "w", "one": "sign", "two": "sign"}, "f.bottom",
                       make.join("f.right", "r.left"), make.join("r.right", "k.left"))  # fmt: skip
    made = tuple(FaceSeat(place, host, "outside", "", at, 0.0, None, make.here) for place, host, at in seats)
    parts = {"w": make.wall("w", 60, 40), "s": make.wall("s", 30, 40), "sign": make.wall("sign", 20, 10)}
    return place_panels(replace(plan, seats=tuple(replace(seat, **said) for seat in made)), parts)


def test_what_every_place_of_a_part_carries_is_drawn_once(make: SimpleNamespace) -> None:
    assembly = hut(make, ("one", "f", (30.0, 20.0)), ("two", "k", (30.0, 20.0)))
    assert [panel.name for panel in assembly.panels if panel.seated] == ["one", "two"]
    marks = seat_marks(assembly, seatings_of(assembly))["w"]
    assert [(m.kind, m.purpose, m.text) for m in marks] == [
        (LineKind.GLUE, Purpose.LAP, ""),
        (LineKind.REFERENCE, Purpose.MATCH, "S"),
    ]
    assert marks[0].path.closed
    box = marks[0].path.box
    assert (box.left, box.bottom, box.right, box.top) == pytest.approx((20.0, 15.0, 40.0, 25.0))


def test_what_one_place_of_a_part_carries_is_drawn_with_its_name(make: SimpleNamespace) -> None:
    assembly = hut(make, ("one", "f", (30.0, 20.0)), face="inside")
    (text,) = [mark.text for mark in seat_marks(assembly, seatings_of(assembly))["w"] if mark.text]
    assert text == "S on f, inside"
    assert assembly.unplaced == ("two",)


def test_a_post_has_its_letter_beside_its_opening_with_the_place_where_not_all_have_one(make: SimpleNamespace) -> None:
    hole = ((20.0, 10.0), (20.0, 15.0), (40.0, 15.0), (40.0, 10.0))
    wall = make.polygon("w", [(0, 0), (60, 0), (60, 40), (0, 40)], ("bottom", "right", "top", "left"), holes=(hole,))
    parts = {"w": wall, "s": make.wall("s", 30, 40), "post": make.wall("post", 19, 30)}
    places = {"f": "w", "r": "s", "k": "w", "one": "post", "two": "post"}
    plan = make.panels("hut", places, "f.bottom", make.join("f.right", "r.left"), make.join("r.right", "k.left"))
    both = [
        FaceSeat(p, h, "outside", "bottom", None, 0.0, None, make.here, "hole") for p, h in (("one", "f"), ("two", "k"))
    ]
    for seats, text in ((both, "P"), (both[:1], "P on f")):
        marks = seat_marks(place_panels(replace(plan, seats=tuple(seats)), parts), ())["w"]
        assert [mark.text for mark in marks] == [text]
        assert marks[0].path.points == ((30.0, 20.0),)  # over the opening, where most board is
