from types import SimpleNamespace

import pytest

from publisher.joints.panels.matings import matings_of
from publisher.joints.panels.place import place_panels


def slotted(make: SimpleNamespace, *, at: float = 10.0, width: float = 5.3, first: float = 12.35) -> object:
    """A wall 100 × 100 with two slots for a panel whose outside face lies ``at`` mm from the right edge."""
    right, left = 100 - at + 0.15, 100 - at + 0.15 - width
    holes = tuple(
        tuple(reversed(((left, y), (right, y), (right, y + 25.3), (left, y + 25.3)))) for y in (first, first + 50)
    )
    return make.polygon("a", [(0, 0), (100, 0), (100, 100), (0, 100)], ("bottom", "right", "top", "left"), holes=holes)


def tabbed(make: SimpleNamespace) -> object:
    """A wall with its left edge 5 mm short and two tabs 25 long that reach the nominal edge."""
    outline = [
        (5, 0),
        (80, 0),
        (80, 100),
        (5, 100),
        (5, 87.5),
        (0, 87.5),
        (0, 62.5),
        (5, 62.5),
        (5, 37.5),
        (0, 37.5),
        (0, 12.5),
        (5, 12.5),
    ]
    part = make.polygon("b", outline)
    return make.wall("b", 80, 100).__class__(
        **{f: getattr(part, f) for f in part.__dataclass_fields__} | {"edges": make.wall("b", 80, 100).edges}
    )


def mating(make: SimpleNamespace, a: object, b: object) -> object:
    plan = make.panels(
        "x", {"a": "a", "b": "b"}, "a.bottom", make.join("a.right", "b.left", "tab_and_slot", inset=10.0)
    )
    (found,) = matings_of(place_panels(plan, {"a": a, "b": b}))  # type: ignore[dict-item]
    return found


def test_tabs_go_into_slots_of_their_size(make: SimpleNamespace) -> None:
    found = mating(make, slotted(make), tabbed(make))
    assert found.tab_misses == 0.0  # type: ignore[attr-defined]
    assert (found.length_a, found.length_b) == (100.0, 100.0)  # type: ignore[attr-defined]
    assert found.corner == pytest.approx(90)  # type: ignore[attr-defined]


@pytest.mark.parametrize("fault", [{"at": 12.0}, {"width": 4.0}, {"first": 20.0}])
def test_slots_in_the_wrong_place_or_size_are_seen(make: SimpleNamespace, fault: dict[str, float]) -> None:
    assert mating(make, slotted(make, **fault), tabbed(make)).tab_misses > 0.5  # type: ignore[attr-defined]


def test_no_slot_at_all(make: SimpleNamespace) -> None:
    assert mating(make, make.wall("a", 100, 100), tabbed(make)).tab_misses == pytest.approx(5, abs=0.1)  # type: ignore[attr-defined]


def test_lengths_that_differ_do_not_hide_behind_a_gap(make: SimpleNamespace) -> None:
    plan = make.panels("x", {"a": "a", "b": "b"}, "a.bottom", make.join("a.right", "b.left"))
    (found,) = matings_of(place_panels(plan, {"a": make.wall("a", 50, 60), "b": make.wall("b", 50, 60.5)}))
    assert (found.length_a, found.length_b, found.gap) == pytest.approx((60, 60.5, 0))


def test_crossings_are_measured_at_the_floors_of_their_slots(make: SimpleNamespace) -> None:
    matings = matings_of(place_panels(*make.crate()))
    assert [(round(m.length_a, 9), round(m.length_b, 9), m.tab_misses) for m in matings] == [(40.0, 40.0, None)] * 4
    assert max(m.gap for m in matings) < 1e-9
    assert [round(m.corner, 6) for m in matings] == [90.0] * 4
    off = matings_of(place_panels(*make.crate(second=71.0)))
    assert [round(m.gap, 6) for m in off] == [0.0, 0.0, 0.0, 1.0]  # the last one closes the ring
