import re
from collections.abc import Callable
from dataclasses import replace
from random import Random
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.design import FaceSeat
from publisher.joints.assembled import Assembled
from publisher.joints.checks.glued_too_little import glued_too_little
from tests.joints.building.conftest import assembled

__all__ = ["assembled"]

ID = "joints/glued-too-little"


def pair(make: SimpleNamespace, upper: tuple[float, float], by: float, *, loose: bool = False) -> Assembled:
    """A slab of 60 × 60 mm and one of another size on it, shifted by ``by`` mm."""
    low = make.stack("s_low", ("slab", 1, 0.0, (0, 0)))
    top = make.stack("s_top", ("top", 1, 0.0, (by, 0)), on="s_low", loose=loose)
    parts = (make.rectangle("slab", 0, 0, 60, 60), make.rectangle("top", 0, 0, *upper))
    return make.assembled(make.design(stacks=(low, top)), *parts)


@pytest.mark.keeps(ID)
@pytest.mark.parametrize(("upper", "by"), [((60, 60), 0), ((60, 60), 44), ((6, 6), 0)])
def test_a_layer_that_lies_on_enough_of_the_other_holds(
    make: SimpleNamespace, upper: tuple[float, float], by: float
) -> None:
    """All of a small part, more than a quarter of the smaller one."""
    assert glued_too_little.run(pair(make, upper, by), glued_too_little).findings == ()


@pytest.mark.breaks(ID)
def test_slivers_are_found(make: SimpleNamespace) -> None:
    (thin,) = glued_too_little.run(
        pair(make, (20, 60), 53), glued_too_little
    ).findings  # 7 of 20 mm: 35 % in a strip of 7 mm
    assert thin.severity is Severity.WARNING
    assert (thin.value, thin.limit) == (pytest.approx(7.0, abs=0.05), 8.0)
    (share,) = glued_too_little.run(pair(make, (60, 60), 50), glued_too_little).findings
    assert "17% of the smaller" in share.message
    assert (
        glued_too_little.run(pair(make, (60, 60), 50, loose=True), glued_too_little).findings == ()
    )  # nothing is glued there
    assert (
        glued_too_little.run(pair(make, (60, 60), 61), glued_too_little).looked_at == 0
    )  # it hangs in the air: another finding


@pytest.mark.parametrize("seed", range(25))
def test_random_pairs_against_plain_rectangles(make: SimpleNamespace, seed: int) -> None:
    rng = Random(seed)
    upper, by = (rng.uniform(10, 60), rng.uniform(10, 60)), rng.uniform(0, 58)
    wide = min(60.0, by + upper[0]) - by
    share = wide * upper[1] / (upper[0] * upper[1])
    bad = share < 0.99 and (share < 0.25 or min(wide, upper[1]) < 8.0)
    assert bool(glued_too_little.run(pair(make, upper, by), glued_too_little).findings) == bad


def on_a_frame(make: SimpleNamespace, bar: float, wide: float = 40.0) -> Assembled:
    """A sign on a wall whose opening leaves ``bar`` mm of board under either side of the sign."""
    half = wide / 2 - bar
    opening = ((50 - half, 5.0), (50 - half, 55.0), (50 + half, 55.0), (50 + half, 5.0))
    wall = make.polygon("wall", [(0, 0), (100, 0), (100, 60), (0, 60)], holes=(opening,))
    plan = make.panels("hut", {"front": "wall", "sign": "sign"}, "front.e0")
    seat = FaceSeat("sign", "front", "outside", "", (50.0, 30.0), 0.0, None, make.here)
    return make.assembled(make.design(panels=(replace(plan, seats=(seat,)),)), wall, make.wall("sign", wide, 20))


@pytest.mark.breaks(ID)
def test_a_panel_on_a_face_is_glued_by_strips_too(make: SimpleNamespace) -> None:
    (found,) = glued_too_little.run(on_a_frame(make, 6.0), glued_too_little).findings
    assert "sign lies on front with a strip 6.00 mm (0.24 in) wide; 8.00 mm" in found.message
    assert (found.value, found.limit) == (pytest.approx(6.0, abs=0.05), 8.0)


@pytest.mark.keeps(ID)
def test_a_panel_on_enough_of_a_face_holds(make: SimpleNamespace) -> None:
    assert glued_too_little.run(on_a_frame(make, 9.0), glued_too_little).findings == ()
    assert (
        glued_too_little.run(on_a_frame(make, 3.0), glued_too_little).findings == ()
    )  # 15 %: a finding of what lies off its face


MOUND = """
sizes: {board: 5 mm}
parts:
  hill: {name: Hill layer, board: foam, shape: hill, layers: LAYERS, with: {length: LONG, width: LONG, inset: 15 mm, lap: LAP}}
assembly:
  mound: {stack: [{part: hill}]}
"""


@pytest.mark.parametrize(("layers", "long"), [("2", "120 mm"), ("2", "330 mm"), ("4", "240 mm")])
def test_where_a_wider_lap_would_do_the_hint_names_it_and_it_does(assembled: Callable, layers: str, long: str) -> None:
    """Two layers with a solid top, small and large, and four of which the inner ones are hollow above and below."""
    text = MOUND.replace("LAYERS", layers).replace("LONG", long)
    (finding,) = glued_too_little.run(assembled(text.replace("LAP", "3 mm")), glued_too_little).findings
    found = re.match(r"make the lap of hill ([0-9.]+) mm or more: ", finding.hint)
    assert found is not None and float(found[1]) > 3.0
    assert glued_too_little.run(assembled(text.replace("LAP", f"{found[1]} mm")), glued_too_little).findings == ()


def test_where_there_is_no_lap_none_is_named(make: SimpleNamespace) -> None:
    (finding,) = glued_too_little.run(pair(make, (60, 60), 50), glued_too_little).findings
    assert "lap" not in finding.hint and "at: centre" in finding.hint
