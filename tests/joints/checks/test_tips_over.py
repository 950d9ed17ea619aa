from dataclasses import replace
from math import inf
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.design import Figure, ThingPlan, WholePlan
from publisher.joints.assembled import Assembled
from publisher.joints.checks.tips_over import tips_over
from publisher.joints.put_together import assemble
from publisher.joints.stacks.facts import report_on
from publisher.joints.stacks.layers import lay_all


@pytest.mark.keeps("joints/tips-over")
def test_a_stair_on_a_wide_plinth_passes(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("plinth", 1, 0.0, (0, 0)), ("step", 14, 20.0, (0, 0))),))
    outcome = tips_over.run(make.assembled(plan, make.disc(), make.stair_layer()), tips_over)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/tips-over")
def test_a_light_stair_without_a_plinth_tips_with_figures(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("step", 14, 20.0, (0, 0))),))
    (found,) = tips_over.run(make.assembled(plan, make.stair_layer()), tips_over).findings
    assert found.severity is Severity.ERROR
    assert (
        "s tips over with 2 figures of 30 g (assumed, by its base of 25.0 mm) where they tip it most" in found.message
    )
    assert "radius 76.0 mm" in found.hint


def test_what_falls_over_empty_is_another_finding(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("base", 1, 0.0, (0, 0)), ("beam", 1, 0.0, (0, 0))),))
    parts = make.rectangle("base", 0, 0, 20, 20), make.rectangle("beam", 0, 0, 100, 20)
    assert tips_over.run(make.assembled(plan, *parts), tips_over).findings == ()


def test_a_glued_section_stands_or_falls_with_the_one_below(make: SimpleNamespace) -> None:
    low = make.stack("s_low", ("plinth", 1, 0.0, (0, 0)))
    glued = make.stack("s_top", ("step", 14, 20.0, (0, 0)), on="s_low")
    plan = make.design(stacks=(low, glued))
    parts = (make.disc(), make.stair_layer())
    by_id, boards = {p.id: p for p in parts}, {"foam": make.board()}
    sections, whole = lay_all(plan.stacks, by_id)
    reports = tuple(report_on(s, by_id, boards, inf, make.here, s in whole) for s in (*sections, *whole))
    subject = replace(make.assembled(plan, *parts), stacks=reports)
    assert reports[1].balance.with_figures < 0  # by itself it would tip
    assert tips_over.run(subject, tips_over).findings == ()


def test_a_loose_section_is_named_with_what_it_lies_on(make: SimpleNamespace) -> None:
    low = make.stack("s_low", ("plinth", 1, 0.0, (0, 0)), ("step", 2, 20.0, (0, 0)))
    loose = make.stack("s_top", ("step", 5, 20.0, (0, 0)), on="s_low", turn=20.0, loose=True)
    plan = make.design(stacks=(low, loose), boards=(make.board(mass=150.0),))
    (found,) = tips_over.run(make.assembled(plan, make.disc(), make.stair_layer()), tips_over).findings
    assert "section s_top, loose on layer 3, tips over with 2 figures" in found.message
    assert "glue it to the section below" in found.hint
    assert "assumed" not in found.hint


def box(make: SimpleNamespace, deck: float) -> Assembled:
    """Four walls of 60 × 60 mm in a ring, and on them a deck that begins at the front one and is ``deck`` mm deep."""
    names = ("front", "right", "back", "left")
    ring = [make.join(f"{a}.right", f"{b}.left") for a, b in zip(names, (*names[1:], names[0]), strict=True)]
    plan = make.panels(
        "box",
        dict.fromkeys(names, "wall") | {"deck": "deck"},
        "front.bottom",
        *ring,
        make.join("front.top", "deck.bottom"),
    )
    figure = Figure(25.0, 30.0, assumed=False)
    parts = make.wall("wall", 60, 60), make.wall("deck", 60, deck)
    return make.assembled(replace(make.design(panels=(plan,)), figure=figure), *parts)


@pytest.mark.keeps("joints/tips-over")
def test_a_box_with_its_deck_stands(make: SimpleNamespace) -> None:
    outcome = tips_over.run(box(make, 60.0), tips_over)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/tips-over")
def test_panels_tip_with_a_figure_at_the_worst_edge(make: SimpleNamespace) -> None:
    """By hand: walls of 2.16 g about 30 mm, a deck of 1.08 g about 60 mm, a figure of 30 g at 120 mm, a foot of 60 mm."""
    subject = box(make, 120.0)
    (found,) = tips_over.run(subject, tips_over).findings
    assert found.value == pytest.approx(60.0 - (2.16 * 30.0 + 1.08 * 60.0 + 30.0 * 120.0) / 33.24, abs=0.01)
    assert "box tips over with a figure of 30 g at the edge of deck: its weight falls 52.2 mm" in found.message
    assert "let its foot reach 53.0 mm" in found.hint
    # moments about the edge at 60 mm: 33.24 g · 52.2 mm against washers 30 mm inside it
    assert "60 g of washers on the middle of its foot" in found.hint


def test_the_ballast_just_holds(make: SimpleNamespace) -> None:
    balance = box(make, 120.0).panels[0].balance
    assert balance is not None
    held = balance.ballast
    assert 57.0 < held < 58.0
    assert (3.24 * 40.0 + 30.0 * 120.0 + held * 30.0) / (33.24 + held) == pytest.approx(60.0)


def test_a_push_at_half_height_tips_or_slides(make: SimpleNamespace) -> None:
    """F · 30 mm = 3.24 g · 20 mm by the moments about the edge; it slides at 0.4 of its weight."""
    balance = box(make, 120.0).panels[0].balance
    assert balance is not None
    assert balance.tip == pytest.approx(3.24 * 9.80665e-3 * 20.0 / 30.0, rel=1e-6)
    assert balance.slide == pytest.approx(0.4 * 3.24 * 9.80665e-3, rel=1e-6)


@pytest.mark.parametrize(
    ("piers", "margin"),
    [
        pytest.param((-35.0, 35.0), None, marks=pytest.mark.keeps("joints/tips-over")),
        pytest.param((0.0,), 15.0 - 60.0 * 50.0 / 60.66, marks=pytest.mark.breaks("joints/tips-over")),
    ],
)
def test_things_on_things_stand_as_one_with_a_figure_on_them(
    make: SimpleNamespace, piers: tuple[float, ...], margin: float | None
) -> None:
    """A plank of 100 mm (0.3 g) on piers of 30 mm (0.36 g each): on one in the middle figures at its end tip it all."""
    stacks = make.stack("pier", ("slab", 4, 0.0, (0.0, 0.0))), make.stack("beam", ("plank", 1, 0.0, (0.0, 0.0)))
    parts = make.rectangle("slab", 0, 0, 30, 20), make.rectangle("plank", 0, 0, 100, 20)
    on = tuple(f"p{i}" for i in range(len(piers)))
    things = [ThingPlan(name, "pier", (), (x, 0.0), 0.0, False, make.here) for name, x in zip(on, piers, strict=True)]
    things.append(ThingPlan("top", "beam", on, (0.0, 0.0), 0.0, False, make.here))
    plan = replace(make.design(stacks=stacks), wholes=(WholePlan("crossing", tuple(things), make.here),))
    subject = assemble(plan, parts)[0]
    found = [f for f in tips_over.run(subject, tips_over).findings if f.subject == "crossing"]
    assert [f.value for f in found] == ([] if margin is None else [pytest.approx(margin, abs=0.01)])
    tips = subject.fact("crossing.balance_with_figures")
    assert tips is not None and (tips.value < 0.0) is (margin is not None)
    assert subject.fact("crossing.push_to_tip") is not None


def lid_on_base(make: SimpleNamespace, wide: float, lifts_off: bool = True) -> Assembled:
    """A pile of layers 120 × 80, 80 mm high, and a lid on it, as two things."""
    stacks = make.stack("base", ("layer", 16, 0.0, (0, 0))), make.stack("lid", ("slab", 1, 0.0, (0, 0)))
    things = (
        ThingPlan("b", "base", (), (0, 0), 0.0, False, make.here),
        ThingPlan("t", "lid", ("b",), (0, 0), 0.0, lifts_off, make.here),
    )
    design = replace(make.design(stacks=stacks), wholes=(WholePlan("all", things, make.here),))
    parts = make.rectangle("layer", 0, 0, 120, 80), make.rectangle("slab", 0, 0, wide, 80)
    return assemble(design, parts)[0]


def test_a_loose_thing_that_a_figure_tips_off_is_found(make: SimpleNamespace) -> None:
    """Two figures of 30 g at 80 mm from the middle and a lid of 1.92 g: (60 · 80) / 61.92 = 77.5, and it lies on 60 mm."""
    (found,) = tips_over.run(lid_on_base(make, 160), tips_over).findings
    assert found.value == pytest.approx(60 - 60 * 80 / 61.92)
    assert "t of all, loose on b, tips over with 2 figures of 30 g" in found.message


def test_a_loose_thing_that_hardly_overhangs_and_a_glued_one_stand(make: SimpleNamespace) -> None:
    """(60 · 61) / (60 + 1.464) = 59.5."""
    assert tips_over.run(lid_on_base(make, 122), tips_over).findings == ()
    assert tips_over.run(lid_on_base(make, 160, lifts_off=False), tips_over).findings == ()
