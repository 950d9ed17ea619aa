from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.joints.assembled import Assembled
from publisher.joints.checks.does_not_rest import does_not_rest

NAMES = ("bottom", "right", "right_slope", "left_slope", "left")


def house(make: SimpleNamespace, length: float = 140.0, deep: float = 75.0, corner: float = 90.0) -> Assembled:
    """Two gables of 45° and two roofs that are joined at the ridge; slopes are 50·√2 = 70.7 mm long."""
    gable = make.polygon("gable", [(0, 0), (100, 0), (100, 40), (50, 90), (0, 40)], NAMES)
    plan = make.panels(
        "house", {"front": "gable", "right": "side", "back": "gable", "l": "roof", "r": "roof"}, "front.bottom",
        make.join("front.right", "right.left"), make.join("right.right", "back.left"), make.join("l.top", "r.top", corner=corner),
        rests=(("l", ("front.left_slope", "back.right_slope")), ("r", ("front.right_slope", "back.left_slope"))),
    )  # fmt: skip
    roof = make.wall("roof", length, deep)
    roof = replace(roof, edges=tuple(replace(edge, face="inside") for edge in roof.edges))
    parts = (gable, make.wall("side", 120, 40), roof)
    return make.assembled(make.design(panels=(plan,)), *parts)


@pytest.mark.keeps("joints/does-not-rest")
def test_a_roof_that_reaches_over_both_gables_rests(make: SimpleNamespace) -> None:
    outcome = does_not_rest.run(house(make), does_not_rest)
    assert (outcome.looked_at, outcome.findings) == (4, ())


@pytest.mark.breaks("joints/does-not-rest")
@pytest.mark.parametrize(
    ("wrong", "value", "says"),
    [
        ({"length": 60.0}, 70.7, "leaves it bare along 70.7 mm (2.78 in) of its 70.7 mm (2.78 in)"),
        ({"deep": 40.0}, 30.7, "bare"),
        ({"corner": 120.0}, 35.0, "over it, at an angle of 30.00° to it"),
        ({"corner": 100.0}, 12.2, "over it, at an angle of 10.00° to it"),
    ],
)
def test_a_roof_that_does_not_lie_on_its_gables_is_found(
    make: SimpleNamespace, wrong: dict[str, float], value: float, says: str
) -> None:
    """A roof joined at 120° in place of 90° stands 70.7 mm · sin 30° over the lower end of the slope."""
    findings = does_not_rest.run(house(make, **wrong), does_not_rest).findings
    assert findings
    assert max(f.value or 0.0 for f in findings) == pytest.approx(value, abs=0.8)
    assert any(says in f.message for f in findings)


def test_a_lid_that_floats_in_the_opening_is_found(make: SimpleNamespace) -> None:
    def box(wide: float, deep: float) -> Assembled:
        plan = make.panels(
            "box", {"front": "long", "right": "short", "back": "long", "lid": "lid"}, "front.bottom",
            make.join("front.right", "right.left"), make.join("right.right", "back.left"),
            rests=(("lid", ("front.top", "back.top")),),
        )  # fmt: skip
        parts = (make.wall("long", 120, 50), make.wall("short", 80, 50), make.wall("lid", wide, deep))
        return make.assembled(make.design(panels=(plan,)), *parts)

    assert does_not_rest.run(box(120, 80), does_not_rest).findings == ()
    assert does_not_rest.run(box(80, 120), does_not_rest).findings == ()  # it is turned until it lies
    assert len(does_not_rest.run(box(30, 30), does_not_rest).findings) == 2
    assert (
        len(does_not_rest.run(box(120, 74), does_not_rest).findings) == 2
    )  # on less than half of the board's thickness
    both = does_not_rest.run(box(120, 76), does_not_rest).findings  # on 3 of 5 mm: an edge is held by one board
    assert [f.value for f in both] == [120.0, 120.0]
    assert all("leaves it held by 57% of its thickness along 120.0 mm" in f.message for f in both)  # 4 places of 7
