"""The print-scale budget is one and the same in joints, on paper and for those who measure a print."""

from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.pipeline import compose_packs, work
from publisher.ruler.judge import budget_of
from publisher.ruler.pack_facts import Met

DESIGNS = Path(__file__).parents[2] / "designs"


@pytest.mark.parametrize("slug", ["lock-stair", "quay"])
def test_the_recorded_budget_agrees_with_the_one_that_a_ruler_works_out(slug: str) -> None:
    worked = work(read_brief(DESIGNS / slug))
    assert worked.joined is not None
    meetings = worked.joined.meetings
    assert meetings
    own = budget_of(tuple(Met(m.what, m.printed, m.unprinted_least, m.loosest) for m in meetings))
    said = worked.joined.budget
    assert (own.least, own.most) == pytest.approx((said.least, said.most), abs=1e-9)
    for name, words in ((said.least_by, own.least_by), (said.most_by, own.most_by)):
        meeting = worked.joined.meeting(name)
        assert words == (meeting.what if meeting else "the general limit")
    packs, _ = compose_packs(worked, ("a4",))
    (record,) = [a.data for a in packs[0].attachments if a.name == "facts.json"]
    assert b'"budget": {' in record
