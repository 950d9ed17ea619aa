"""Stacks in pictures, against heights, widths and places that follow from the view by hand."""

from dataclasses import replace
from math import cos, radians, sin
from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.design import BracePlan
from publisher.geometry import Part
from publisher.joints.drawings import draw
from publisher.joints.drawings.lines import Sketch, merge
from publisher.joints.drawings.stack_views import STACK_ARROW, exploded_view, plan_view, whole_view
from publisher.joints.drawings.view import STACK_VIEW
from publisher.joints.stacks.knees import Knee
from publisher.joints.stacks.layers import LaidStack, lay
from tests.joints.conftest import assembled

UP = cos(radians(STACK_VIEW.above))
FLAT = sin(radians(STACK_VIEW.above))


def discs(make: SimpleNamespace, count: int, radius: float = 50.0) -> tuple[LaidStack, dict[str, Part]]:
    parts = {"plinth": make.disc(radius=radius)}
    return lay(make.stack("s", ("plinth", count, 0.0, (0, 0))), parts, None), parts


def stairs(make: SimpleNamespace, count: int = 4) -> tuple[LaidStack, dict[str, Part]]:
    parts = {"step": make.stair_layer(notch_at=19.0)}
    return lay(make.stack("s", ("step", count, 20.0, (0, 0))), parts, None), parts


def box(sketch: Sketch, weight: str = "outline") -> tuple[float, float]:
    left, bottom, right, top = shapely.total_bounds(np.array(sketch.lines[weight]))
    return float(right - left), float(top - bottom)


@pytest.mark.parametrize("count", [1, 3, 8])
def test_a_column_of_discs_is_as_high_as_it_looks(make: SimpleNamespace, count: int) -> None:
    """An upright length h looks h cos e high and a circle 2 r sin e, seen from e degrees above the level."""
    width, height = box(whole_view(*discs(make, count)))
    assert width == pytest.approx(100.0, abs=0.1)
    assert height == pytest.approx(5.0 * count * UP + 100.0 * FLAT, abs=0.1)


def test_layers_drawn_apart_stand_higher_by_the_same_gap(make: SimpleNamespace) -> None:
    """Between two discs of 100 mm the gap is at most 0.4 of the width; between many, 1.4 widths in all."""
    for count, lifted in ((2, 40.0), (8, 140.0)):
        _, height = box(exploded_view(*discs(make, count)))
        assert height == pytest.approx((5.0 * count + lifted) * UP + 100.0 * FLAT, abs=0.1)


def test_letters_stand_right_of_everything(make: SimpleNamespace) -> None:
    sketch = exploded_view(*discs(make, 5))
    assert [text for text, *_ in sketch.labels] == ["P", "P"]
    right = float(shapely.total_bounds(np.array(sketch.lines["outline"]))[2])
    assert all(x >= right + 5.9 for _, x, _ in sketch.labels)
    assert sketch.labels[0][2] < sketch.labels[1][2]


def test_a_plan_of_the_lowest_layer_has_nothing_below(make: SimpleNamespace) -> None:
    sketch = plan_view(*stairs(make), 1)
    assert sketch is not None
    assert "ghost" not in sketch.lines
    assert "cue" not in sketch.lines
    assert [text for text, *_ in sketch.labels] == ["S"]


def test_a_plan_of_a_layer_above_or_below_all_is_none(make: SimpleNamespace) -> None:
    assert plan_view(*stairs(make), 0) is None
    assert plan_view(*stairs(make), 5) is None


def test_the_arrow_comes_from_outside_along_the_notch(make: SimpleNamespace) -> None:
    """The notch of the layer below (turned by 0) lies at 19 degrees: the arrow's shaft lies on that ray, off the rim."""
    sketch = plan_view(*stairs(make), 2)
    assert sketch is not None
    shaft, *barbs = sketch.lines["cue"]
    ends = np.asarray(shaft.coords)
    away = np.hypot(ends[:, 0], ends[:, 1])
    assert np.degrees(np.arctan2(ends[:, 1], ends[:, 0])) == pytest.approx([19.0, 19.0], abs=0.05)
    assert away[0] - away[1] == pytest.approx(STACK_ARROW, abs=1e-6)
    assert 92.0 < away[1] < 94.0
    assert len(barbs) == 2


def test_ghost_lines_stay_outside_the_upper_layer(make: SimpleNamespace) -> None:
    stack, parts = stairs(make)
    sketch = plan_view(stack, parts, 3)
    assert sketch is not None
    points = stack.layers[2].pose.apply_all(parts["step"].outline.outer.points)
    upper = shapely.Polygon(points)
    ghosts = shapely.union_all(np.array(sketch.lines["ghost"]))
    assert ghosts.length > 80.0
    assert shapely.intersection(ghosts, upper).length < 0.5


def test_a_braced_step_is_drawn_with_its_brace_and_apart_with_its_letter(make: SimpleNamespace) -> None:
    """A single step far up on its core: the brace under it shows, 25 mm high and 40 mm long."""
    core, step = make.disc("core", radius=20.0), make.rectangle("step", -20, -20, 90, 20)
    parts = {"core": core, "step": step, "knee": make.wall("knee", 40, 25)}
    stack = lay(make.stack("s", ("core", 8, 0.0, (0, 0)), ("step", 1, 0.0, (0, 0))), parts, None)
    stack = replace(stack, brace=BracePlan(40.0, 25.0, (), False, make.here, "knee"))
    knee = Knee(8, (20.0, 0.0), 0.0, 40.0)
    plain, braced = (box(whole_view(stack, parts, knees)) for knees in ((), (knee,)))
    assert braced == pytest.approx(plain, abs=0.2)  # it stands within the outline of the whole
    drawn = whole_view(stack, parts, (knee,))
    lines = shapely.get_coordinates(np.array(drawn.lines["outline"]))
    low = (STACK_VIEW.axes() @ np.array([20.0, -2.5, 15.0]))[:2]  # the foot of its near corner, before the core
    assert (np.hypot(*(lines - low).T) < 0.2).any()
    assert len(lines) > len(shapely.get_coordinates(np.array(whole_view(stack, parts).lines["outline"])))
    assert "K" in {label for label, *_ in exploded_view(stack, parts, (knee,)).labels}


def test_layers_that_lie_flush_are_drawn_with_one_line_between_them_beside_a_brace_too(make: SimpleNamespace) -> None:
    """A column of turned stair layers with a brace holds about as many points as without one, and not several for each chord."""
    parts = {"step": make.stair_layer(), "knee": make.wall("knee", 40, 25)}
    stack = lay(make.stack("s", ("step", 12, 23.0, (0, 0))), parts, None)
    stack = replace(stack, brace=BracePlan(40.0, 25.0, (), False, make.here, "knee"))
    plain, braced = (
        len(shapely.get_coordinates(np.array(merge(whole_view(stack, parts, knees).lines["outline"]))))
        for knees in ((), (Knee(11, (30.0, 0.0), 270.0, 40.0),))
    )
    assert braced < 1.5 * plain


def test_an_elevation_shows_layers_alone_and_no_braces_through_them(make: SimpleNamespace) -> None:
    """A beam on eight layers that a brace holds from below: nine oblongs, as without the brace."""
    rows = ("base", 8, 0.0, (0, 0)), ("beam", 1, 0.0, (0, 0))
    parts = make.rectangle("base", 0, 0, 60, 80), make.rectangle("beam", 0, 0, 110, 80), make.wall("knee", 40, 30)
    plain = make.stack("s", *rows)
    braced = replace(plain, brace=BracePlan(40.0, 30.0, (), False, make.here, "knee"))
    subjects = [assembled(make.design(stacks=(one,)), *parts) for one in (plain, braced)]
    assert [len([knee for knee in one.stacks[0].knees if not knee.blocked]) for one in subjects] == [0, 1]
    bare, held = ({drawing.name: drawing for drawing in draw(one)} for one in subjects)
    assert held["front:s"].lines == bare["front:s"].lines and held["whole:s"].lines != bare["whole:s"].lines
