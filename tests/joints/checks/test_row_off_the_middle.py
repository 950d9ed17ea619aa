from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.assembled import Assembled
from publisher.joints.checks.row_off_the_middle import row_off_the_middle

ID = "joints/row-off-the-middle"


def pile(
    make: SimpleNamespace, centred: tuple[bool, ...], shift: tuple[float, float] = (0.0, 0.0), on: str = ""
) -> Assembled:
    """A plinth and rows of one slab, whose origin is its corner; the last of them shifted. ``on``: that one in a section of its own."""
    plan = make.stack("s", ("plinth", 1, 0.0, (0, 0)), *(("slab", 1, 0.0, (0, 0)) for _ in centred))
    rows = [plan.rows[0], *(replace(row, centred=it) for row, it in zip(plan.rows[1:], centred, strict=True))]
    rows[-1] = replace(rows[-1], shift=shift)
    plans = (replace(plan, rows=tuple(rows)),)
    if on:
        plans = (
            replace(plan, name=f"s_{on}", rows=tuple(rows[:-1])),
            replace(plan, name="s_upper", rows=tuple(rows[-1:]), on=on),
        )
    made: Assembled = make.assembled(make.design(stacks=plans), make.disc(), make.rectangle("slab", 0, 0, 30, 40))
    return made


@pytest.mark.keeps(ID)
@pytest.mark.parametrize("centred", [(False, False), (True, True), (False, True)])
def test_rows_that_all_say_it_or_lie_on_an_origin_are_as_said(make: SimpleNamespace, centred: tuple[bool, ...]) -> None:
    assert row_off_the_middle.run(pile(make, centred), row_off_the_middle).findings == ()


@pytest.mark.breaks(ID)
@pytest.mark.parametrize("on", ["", "lower"])
def test_one_that_does_not_say_it_after_one_that_does_lies_aside(make: SimpleNamespace, on: str) -> None:
    """Half of the diagonal of 30 × 40 mm."""
    (found,) = row_off_the_middle.run(pile(make, (True, False), on=on), row_off_the_middle).findings
    assert found.severity is Severity.WARNING
    assert found.value == pytest.approx(25.0) and "25.0 mm (0.98 in) aside" in found.message


def test_one_with_a_shift_of_its_own_is_meant_so_and_one_about_its_axis_lies_over_it(make: SimpleNamespace) -> None:
    assert row_off_the_middle.run(pile(make, (True, False), (-15.0, -20.0)), row_off_the_middle).findings == ()
    plan = make.stack("s", ("slab", 1, 0.0, (0, 0)), ("plinth", 1, 0.0, (0, 0)))
    rows = replace(plan.rows[0], centred=True), plan.rows[1]
    made = make.assembled(
        make.design(stacks=(replace(plan, rows=rows),)), make.rectangle("slab", 0, 0, 30, 40), make.disc()
    )
    outcome = row_off_the_middle.run(made, row_off_the_middle)
    assert (outcome.looked_at, outcome.findings) == (1, ())
