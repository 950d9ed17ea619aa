from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.need_not_met import need_not_met


@pytest.mark.keeps("joints/need-not-met")
def test_needs_that_hold_pass_also_exactly_at_the_limit(make: SimpleNamespace) -> None:
    plan = make.design(needs=(make.need("w.width", 60.0, 60.0), make.need("w.height", None, 50.0)))
    outcome = need_not_met.run(make.assembled(plan, make.wall("w", 60, 40)), need_not_met)
    assert (outcome.looked_at, outcome.findings) == (2, ())


@pytest.mark.breaks("joints/need-not-met")
def test_a_need_that_is_not_met_says_value_limit_and_size(make: SimpleNamespace) -> None:
    plan = make.design(needs=(make.need("w.width", 62.0, adjust="reach"),))
    (found,) = need_not_met.run(make.assembled(plan, make.wall("w", 60, 40)), need_not_met).findings
    assert found.severity is Severity.ERROR
    assert found.message == "w.width is 60.0 mm (2.36 in); at least 62.0 mm (2.45 in) is needed"
    assert found.hint == "make “reach” larger"
    assert (found.value, found.limit, found.place) == (60.0, 62.0, make.here)


def test_too_much_is_found_too(make: SimpleNamespace) -> None:
    plan = make.design(needs=(make.need("w.height", None, 39.0, adjust="eaves"),))
    (found,) = need_not_met.run(make.assembled(plan, make.wall("w", 60, 40)), need_not_met).findings
    assert "at most 39.0 mm" in found.message
    assert found.hint == "make “eaves” smaller"
