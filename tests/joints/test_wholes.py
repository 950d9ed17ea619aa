"""Things set down on each other, against plain geometry."""

from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.design import ThingPlan, WholePlan
from publisher.geometry import Part, polygon
from publisher.joints.footing import narrowest
from publisher.joints.panels import Panel, boards_of, foot_of, place_panels
from publisher.joints.stacks import lay_all
from publisher.joints.wholes import PlacedWhole, facts_of, locked_by, panels_of_stack, put_things
from publisher.joints.wholes.things import box_of

Things = dict[str, tuple[str, tuple[str, ...], tuple[float, float]]]


def weigh(part: Part) -> float:
    return float(polygon(part.outline).area * part.thickness)


def slabs(make: SimpleNamespace, part: Part, count: int) -> tuple[Panel, ...]:
    plan = make.stack("pile", (part.id, count, 0.0, (0.0, 0.0)))
    return panels_of_stack(lay_all((plan,), {part.id: part})[1][0], {part.id: part}, make.here)


def put(make: SimpleNamespace, panels: dict[str, tuple[Panel, ...]], things: Things, turn: float = 0.0) -> PlacedWhole:
    made = tuple(
        ThingPlan(name, of, on, at, turn if on else 0.0, True, make.here) for name, (of, on, at) in things.items()
    )
    whole = put_things(WholePlan("whole", made, make.here), panels, weigh)
    assert whole is not None
    return whole


def tent(make: SimpleNamespace, span: float = 100.0) -> tuple[Panel, ...]:
    """A roof of two slopes of 45° that stands on its eaves; their inside faces meet over the middle."""
    roof = make.wall("roof", 140, span / 2**0.5)
    plan = make.panels("tent", {"l": "roof", "r": "roof"}, "l.bottom", make.join("l.top", "r.top", corner=90.0))
    return place_panels(plan, {"roof": roof}).panels


def test_a_beam_lies_on_two_piers(make: SimpleNamespace) -> None:
    pier, beam = make.rectangle("pier", 0, 0, 30, 20), make.rectangle("beam", 0, 0, 100, 20)
    panels = {"pier": slabs(make, pier, 4), "beam": slabs(make, beam, 1)}
    whole = put(
        make, panels, {"w": ("pier", (), (-35, 0)), "e": ("pier", (), (35, 0)), "top": ("beam", ("w", "e"), (0, 0))}
    )
    low, high = box_of(whole.thing("top").panels)
    assert (low, high) == (pytest.approx([-50, -10, 20]), pytest.approx([50, 10, 25]))
    assert dict(whole.thing("top").gaps) == {"w": pytest.approx(0.0), "e": pytest.approx(0.0)}
    assert whole.thing("top").foot.bounds == pytest.approx((-50, -10, 50, 10))
    facts = {fact.name: fact.value for fact in facts_of(whole)}
    assert (facts["whole.height"], facts["whole.width"], facts["whole.top_height"]) == pytest.approx((25, 100, 20))
    assert (facts["whole.things"], facts["whole.mass"]) == (3, pytest.approx(5 * 4 * 2 * 600 + 10000))


def test_piers_of_unequal_height_leave_a_gap(make: SimpleNamespace) -> None:
    pier, beam = make.rectangle("pier", 0, 0, 30, 20), make.rectangle("beam", 0, 0, 100, 20)
    panels = {"high": slabs(make, pier, 4), "low": slabs(make, pier, 3), "beam": slabs(make, beam, 1)}
    whole = put(
        make, panels, {"w": ("high", (), (-35, 0)), "e": ("low", (), (35, 0)), "top": ("beam", ("w", "e"), (0, 0))}
    )
    assert dict(whole.thing("top").gaps) == {"w": pytest.approx(0.0), "e": pytest.approx(5.0)}
    assert whole.thing("top").foot.bounds == pytest.approx((-50, -10, -20, 10))


@pytest.mark.parametrize("turn", [0.0, 90.0])
def test_a_roof_comes_down_on_the_ridge_or_the_sides_of_a_block(make: SimpleNamespace, turn: float) -> None:
    """Inside, the slopes of 45° meet 50 mm over the eaves, less the board; a block 40 mm wide touches 20 mm from the ridge."""
    block = make.rectangle("block", 0, 0, 40, 40)
    panels = {"block": slabs(make, block, 10), "tent": tent(make)}
    whole = put(make, panels, {"b": ("block", (), (0, 0)), "roof": ("tent", ("b",), (0, 0))}, turn)
    low, high = box_of(whole.thing("roof").panels)
    inside = (high[2] - low[2]) - 5.0 * 2**0.5 - 20.0  # of the roof over its lowest corner, 20 mm from its ridge
    assert low[2] == pytest.approx(50.0 - inside, abs=1e-6)
    assert whole.thing("roof").foot.area == pytest.approx(1600.0)


@pytest.mark.parametrize("span", [float(wide) for wide in np.random.default_rng(7).uniform(80, 180, 12)])
def test_a_slab_touches_a_ridge_in_a_line_whatever_its_span(make: SimpleNamespace, span: float) -> None:
    panels = {"tent": tent(make, span), "slab": slabs(make, make.rectangle("slab", 0, 0, 200, 100), 1)}
    whole = put(make, panels, {"t": ("tent", (), (0, 0)), "s": ("slab", ("t",), (0, 0))})
    assert narrowest(whole.thing("s").foot) < 1e-6


def test_what_reaches_over_a_thing_locks_it(make: SimpleNamespace) -> None:
    small, wide = make.rectangle("small", 0, 0, 30, 30), make.rectangle("wide", 0, 0, 60, 30)
    panels = {"small": slabs(make, small, 1), "wide": slabs(make, wide, 1), "post": slabs(make, small, 2)}
    things: Things = {
        "low": ("small", (), (-40, 0)),
        "post": ("post", (), (0, 0)),
        "lid": ("small", ("low",), (0, 0)),
        "eave": ("wide", ("post",), (-20, 0)),
    }
    whole = put(make, panels, things)
    assert (locked_by(whole, "lid"), locked_by(whole, "eave")) == (("eave",), ())
    assert locked_by(put(make, panels, {**things, "eave": ("wide", ("post",), (15, 0))}), "lid") == ()


def test_what_stands_on_a_thing_alone_weighs_on_it(make: SimpleNamespace) -> None:
    square = make.rectangle("square", 0, 0, 30, 30)
    panels = {"one": slabs(make, square, 1)}
    whole = put(make, panels, {"a": ("one", (), (0, 0)), "b": ("one", ("a",), (10, 0)), "c": ("one", ("b",), (10, 0))})
    mass, at = whole.load("b")
    assert (mass, at[0]) == (pytest.approx(9000.0), pytest.approx(15.0))
    assert np.allclose(whole.load("a")[1], [10.0, 0.0])


def ring(make: SimpleNamespace, name: str, lengths: tuple[float, ...], turn: float) -> tuple[Panel, ...]:
    """Walls of 40 mm, mitred in a closed ring that turns by the same angle at every corner."""
    walls = {f"{name}{i}": make.wall(f"{name}{i}", long, 40) for i, long in enumerate(lengths)}
    names = tuple(walls)
    joins = [
        make.join(f"{a}.right", f"{b}.left", corner=180.0 - turn)
        for a, b in zip(names, (*names[1:], names[0]), strict=True)
    ]
    return place_panels(make.panels(name, {n: n for n in names}, f"{names[0]}.bottom", *joins), walls).panels


@pytest.mark.parametrize("sides", [3, 5, 7, 9, 11])
@pytest.mark.parametrize("turn", [0.0, 17.0])
def test_regular_things_with_odd_sides_have_one_axis(make: SimpleNamespace, sides: int, turn: float) -> None:
    """The farthest corners of the upper one, half as wide, lie round the point over which ``at`` puts it, as those of the lower one do."""
    panels = {name: ring(make, name, (wide,) * sides, 360.0 / sides) for name, wide in (("low", 80.0), ("top", 40.0))}
    whole = put(make, panels, {"low": ("low", (), (0, 0)), "top": ("top", ("low",), (3, 0))}, turn)
    for name, wide, at in (("low", 80.0, 0.0), ("top", 40.0, 3.0)):
        corners = shapely.get_coordinates(foot_of(boards_of(whole.thing(name).panels)))[:-1] - (at, 0.0)
        away, radius = np.hypot(corners[:, 0], corners[:, 1]), wide / 2 / np.sin(np.pi / sides)
        assert away.max() == pytest.approx(radius, abs=1e-6)
        assert (np.abs(away - radius) < 1e-6).sum() >= sides


@pytest.mark.parametrize("lengths", [(80.0, 50.0) * 3, (80.0, 84.0, 80.0, 80.0, 84.0, 80.0), (70.0,) * 6])
def test_the_middle_of_others_is_that_of_their_rectangle(make: SimpleNamespace, lengths: tuple[float, ...]) -> None:
    """A ring of long and short sides in turn is regular by thirds; one of two longer sides, or of six alike, is as wide on both
    sides of its middle."""
    low, high = box_of(put(make, {"one": ring(make, "one", lengths, 60.0)}, {"a": ("one", (), (0, 0))}).panels)
    middle = ((low + high) / 2.0)[:2]
    assert np.allclose(middle, 0.0, atol=1e-6) == (lengths[:2] != (80.0, 50.0))


def test_nothing_is_put_where_a_thing_is_missing(make: SimpleNamespace) -> None:
    plan = WholePlan("whole", (ThingPlan("a", "gone", (), (0, 0), 0.0, False, make.here),), make.here)
    assert put_things(plan, {}, weigh) is None
