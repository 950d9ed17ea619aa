"""Board between cuts."""

import pytest

from publisher.basics import Place, circle
from publisher.geometry.making.board_left import Void, wall_findings
from publisher.geometry.paths.rings import straight

PLACE = Place("spec.yaml", 7, 1)


def box(x: float, y: float, w: float, h: float, name: str = "v") -> Void:
    return Void(_corners(x, y, w, h), name, PLACE)


def _corners(x: float, y: float, w: float, h: float) -> tuple:  # type: ignore[type-arg]
    corners = ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
    return straight(tuple(zip(corners, ("bottom", "right", "top", "left"), strict=True)))


BODY = _corners(0.0, 0.0, 100.0, 50.0)


def checks(*voids: Void, thickness: float = 5.0) -> list[tuple[str, float | None]]:
    return [(f.check.partition("/")[2], f.value) for f in wall_findings(voids, BODY, "part p", thickness)]


def test_three_millimetres_are_enough() -> None:
    assert checks(box(3.0, 3.0, 20.0, 44.0), box(26.0, 3.0, 71.0, 44.0)) == []


def test_card_is_cut_to_narrower_bars() -> None:
    assert checks(box(2.0, 2.0, 20.0, 44.0), thickness=1.0) == []
    assert checks(box(0.5, 2.0, 20.0, 44.0), thickness=1.0) == [("thin-wall", 0.5)]


@pytest.mark.parametrize(
    ("voids", "found"),
    [
        ((box(2.5, 10.0, 20.0, 20.0),), [("thin-wall", 2.5)]),
        ((box(10.0, 10.0, 20.0, 20.0), box(31.0, 10.0, 20.0, 20.0)), [("thin-wall", 1.0)]),
        ((box(10.0, 10.0, 20.0, 20.0), box(20.0, 10.0, 20.0, 20.0)), [("openings-overlap", None)]),
        ((box(-5.0, 10.0, 20.0, 20.0),), [("opening-over-edge", 100.0)]),
        ((box(200.0, 10.0, 20.0, 20.0),), [("opening-over-edge", 400.0)]),
    ],
)
def test_findings(voids: tuple[Void, ...], found: list[tuple[str, float | None]]) -> None:
    got = checks(*voids)
    assert [check for check, _ in got] == [check for check, _ in found]
    assert [v for _, v in got if v is not None] == pytest.approx([v for _, v in found if v is not None])


def test_a_door_may_touch_its_own_edge_only() -> None:
    door = _corners(40.0, 0.0, 20.0, 30.0)
    assert checks(Void(door, "d", PLACE, open_at="bottom")) == []
    assert checks(Void(door, "d", PLACE)) == [("thin-wall", 0.0)]
    high = Void(_corners(40.0, 0.0, 20.0, 48.0), "d", PLACE, open_at="bottom")
    assert checks(high) == [("thin-wall", pytest.approx(2.0))]


def test_round_voids_are_measured_on_the_arc() -> None:
    hole = Void(circle((50.0, 25.0), 22.0, "hole"), "hole", PLACE)
    assert checks(hole) == []
    ((check, value),) = checks(Void(circle((50.0, 25.0), 22.5, "hole"), "hole", PLACE))
    assert check == "thin-wall" and value == pytest.approx(2.5, abs=0.01)
