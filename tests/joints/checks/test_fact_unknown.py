from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.fact_unknown import fact_unknown


@pytest.mark.keeps("joints/fact-unknown")
def test_facts_that_there_are_pass(make: SimpleNamespace) -> None:
    plan = make.design(needs=(make.need("w.width", 10.0),))
    outcome = fact_unknown.run(make.assembled(plan, make.wall("w", 60, 40)), fact_unknown)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/fact-unknown")
def test_the_nearest_known_fact_is_proposed(make: SimpleNamespace) -> None:
    plan = make.design(needs=(make.need("w.widht", 10.0),))
    (found,) = fact_unknown.run(make.assembled(plan, make.wall("w", 60, 40)), fact_unknown).findings
    assert found.severity is Severity.ERROR
    assert found.hint == "did you mean “w.width”?"
    assert found.place == make.here


def test_known_facts_are_listed_when_none_is_near(make: SimpleNamespace) -> None:
    plan = make.design(needs=(make.need("w.zzzz", 10.0), make.need("gone.height", 1.0)))
    first, second = fact_unknown.run(make.assembled(plan, make.wall("w", 60, 40)), fact_unknown).findings
    assert first.hint.startswith("known facts: w.width, w.height")
    assert second.hint == "did you mean “w.height”?" or "could not be made" in second.hint
