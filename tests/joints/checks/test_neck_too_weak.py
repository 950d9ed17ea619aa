"""Narrow places against the closed form 6·F·e/(w·h²), with e the figure's way from the middle of the neck."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.design import Figure
from publisher.joints.assembled import Assembled
from publisher.joints.checks.neck_too_weak import neck_too_weak
from publisher.joints.footing import GRAVITY

FIGURE = 30.0 * GRAVITY
FOAM = 0.03 * GRAVITY  # N for each cm³


def column(make: SimpleNamespace, side: float, radius: float = 70.0, **board: float) -> Assembled:
    """A disc on twelve square layers, on a plinth."""
    parts = (
        make.disc("plinth"),
        make.rectangle("post", -side / 2, -side / 2, side / 2, side / 2),
        make.disc("top", radius),
    )
    rows = ("plinth", 1, 0.0, (0, 0)), ("post", 12, 0.0, (0, 0)), ("top", 1, 0.0, (0, 0))
    made: Assembled = make.assembled(
        make.design(stacks=(make.stack("s", *rows),), boards=(make.board(**board),)), *parts
    )
    return made


@pytest.mark.breaks("joints/neck-too-weak")
def test_a_slim_column_under_a_wide_disc_breaks_with_its_stress_by_hand(make: SimpleNamespace) -> None:
    (found,) = neck_too_weak.run(column(make, 6.0), neck_too_weak).findings
    assert found.severity is Severity.ERROR
    # square to a side; along its diagonal the same: a square bends alike every way but at its corners
    square = 6 * FIGURE * 70.0 / 6.0**3
    assert square * 1.3 < found.value < square * 2**0.5 * 1.001
    assert "s breaks between layer" in found.message and "at the edge of layer 14" in found.message
    assert "0.345 MPa assumed" in found.message and "6.0 × 6.0 mm" in found.message


@pytest.mark.keeps("joints/neck-too-weak")
def test_a_column_as_thick_as_a_thumb_bears_it(make: SimpleNamespace) -> None:
    outcome = neck_too_weak.run(column(make, 12.0), neck_too_weak)
    assert outcome.looked_at == 13 and outcome.findings == ()


def test_the_width_that_the_hint_names_bears_it_and_a_millimetre_less_does_not(make: SimpleNamespace) -> None:
    (found,) = neck_too_weak.run(column(make, 6.0), neck_too_weak).findings
    wide = float(found.hint.split("make it ")[1].split(" mm")[0])
    assert neck_too_weak.run(column(make, wide), neck_too_weak).findings == ()
    assert neck_too_weak.run(column(make, wide - 1.0), neck_too_weak).findings


def test_just_at_the_strength_of_its_board_it_bears(make: SimpleNamespace) -> None:
    (found,) = neck_too_weak.run(column(make, 6.0), neck_too_weak).findings
    assert neck_too_weak.run(column(make, 6.0, bending=found.value + 1e-6), neck_too_weak).findings == ()
    (again,) = neck_too_weak.run(column(make, 6.0, bending=found.value - 1e-6), neck_too_weak).findings
    assert "assumed)" not in again.message.split("MPa")[-2]


def test_figures_are_as_heavy_as_their_bases_say(make: SimpleNamespace) -> None:
    light = column(make, 12.0)
    assert neck_too_weak.run(light, neck_too_weak).findings == ()
    heavy = make.assembled(replace(light.design, figure=Figure(50.0, 150.0)), *light.parts)
    (found,) = neck_too_weak.run(heavy, neck_too_weak).findings
    assert "a figure of 150 g" in found.message


def test_what_lies_loose_has_no_neck(make: SimpleNamespace) -> None:
    """A loose section tips where a glued one bends: the joint under it is not judged."""
    glued = column(make, 6.0)
    report = glued.stacks[0]
    loose = replace(report, stack=replace(report.stack, loose=frozenset(range(14))))
    assert neck_too_weak.run(replace(glued, stacks=(loose,)), neck_too_weak).looked_at == 0
