from dataclasses import replace
from math import inf
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.tips_over import CHECK
from publisher.joints.stacks.facts import report_on
from publisher.joints.stacks.layers import lay_all


@pytest.mark.keeps("joints/tips-over")
def test_a_stair_on_a_wide_plinth_passes(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("plinth", 1, 0.0, (0, 0)), ("step", 14, 20.0, (0, 0))),))
    outcome = CHECK.run(make.assembled(plan, make.disc(), make.stair_layer()), CHECK)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/tips-over")
def test_a_light_stair_without_a_plinth_tips_with_figures(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("step", 14, 20.0, (0, 0))),))
    (found,) = CHECK.run(make.assembled(plan, make.stair_layer()), CHECK).findings
    assert found.severity is Severity.WARNING
    assert "s tips over with two figures of 30 g on its two worst treads" in found.message
    assert "radius 76.0 mm" in found.hint


def test_what_falls_over_empty_is_another_finding(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("base", 1, 0.0, (0, 0)), ("beam", 1, 0.0, (0, 0))),))
    parts = make.rectangle("base", 0, 0, 20, 20), make.rectangle("beam", 0, 0, 100, 20)
    assert CHECK.run(make.assembled(plan, *parts), CHECK).findings == ()


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
    assert CHECK.run(subject, CHECK).findings == ()


def test_a_loose_section_is_named_with_what_it_lies_on(make: SimpleNamespace) -> None:
    low = make.stack("s_low", ("plinth", 1, 0.0, (0, 0)), ("step", 2, 20.0, (0, 0)))
    loose = make.stack("s_top", ("step", 5, 20.0, (0, 0)), on="s_low", turn=20.0, loose=True)
    plan = make.design(stacks=(low, loose), boards=(make.board(mass=150.0),))
    (found,) = CHECK.run(make.assembled(plan, make.disc(), make.stair_layer()), CHECK).findings
    assert "section s_top, loose on layer 3, tips over with two figures" in found.message
    assert "glue it to the section below" in found.hint
    assert "assumed" not in found.hint
