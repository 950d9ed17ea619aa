from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.need_of_another_kind import need_of_another_kind


@pytest.mark.keeps("joints/need-of-another-kind")
def test_a_length_against_a_length_and_a_number_against_a_count_pass(make: SimpleNamespace) -> None:
    plan = make.design(needs=(make.need("w.width", 10.0), make.need("w.count", 1.0, kind="number")))
    outcome = need_of_another_kind.run(make.assembled(plan, make.wall("w", 60, 40)), need_of_another_kind)
    assert (outcome.looked_at, outcome.findings) == (2, ())


@pytest.mark.breaks("joints/need-of-another-kind")
def test_a_plain_number_against_a_length_is_found(make: SimpleNamespace) -> None:
    plan = make.design(needs=(make.need("w.width", 10.0, kind="number"),))
    (found,) = need_of_another_kind.run(make.assembled(plan, make.wall("w", 60, 40)), need_of_another_kind).findings
    assert found.severity is Severity.ERROR
    assert found.message == "w.width is a length, but this need's limit is a plain number"
    assert found.hint == "write a length, such as 25 mm"
