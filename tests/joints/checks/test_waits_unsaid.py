"""Times to dry that only words say."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.design import StepPlan, TextPlan
from publisher.joints.checks.waits_unsaid import waits_unsaid

ID = "joints/waits-unsaid"


def said(make: SimpleNamespace, say: str, wait: str = "") -> list[str]:
    step = StepPlan(TextPlan(("Glue",), make.here), "glue", TextPlan((say,), make.here), (), (), None, make.here)
    design = replace(make.design(), steps=(replace(step, wait=wait),))
    return [f.message for f in waits_unsaid.run(make.assembled(design), waits_unsaid).findings]


@pytest.mark.keeps(ID)
@pytest.mark.parametrize(
    ("say", "wait"),
    [
        ("Leave it for 24 h on a flat table.", "24 h"),
        ("Let it dry.", ""),
        ("Let the card soak for 5 min.", ""),
        ("Cut 24 holes.", ""),
    ],
)
def test_a_time_that_is_a_wait(make: SimpleNamespace, say: str, wait: str) -> None:
    assert said(make, say, wait) == []


@pytest.mark.breaks(ID)
@pytest.mark.parametrize("say", ["Leave it for 24 h.", "Nach 24 h die Nadeln ziehen.", "Weigh it down for 24 hours."])
def test_a_time_that_no_clock_shows(make: SimpleNamespace, say: str) -> None:
    assert said(make, say) == ["the step says “24 h” in words and has no wait: no clock shows that time"]
