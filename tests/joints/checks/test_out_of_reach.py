from collections.abc import Callable

import pytest

from publisher.joints.checks.out_of_reach import out_of_reach
from tests.joints.building.conftest import assembled
from tests.joints.building.test_reach import BOOKS

__all__ = ["assembled"]

PAINT = "  - {title: Paint, say: Paint it., stage: paint, parts: [wall]}\n"


@pytest.mark.breaks("joints/out-of-reach")
def test_a_wall_close_before_another_one(assembled: Callable) -> None:
    subject = assembled(BOOKS.format(at=80), "shelf", after=PAINT)
    (finding,) = out_of_reach.run(subject, out_of_reach).findings
    assert "a brush does not reach the face of one of shelf: other stands" in finding.message
    assert finding.hint == "do it before other is put in"


@pytest.mark.keeps("joints/out-of-reach")
@pytest.mark.parametrize(("at", "adds"), [(40, ("shelf",)), (80, ("shelf.floor, shelf.one",))])
def test_room_before_it_or_nothing_yet(assembled: Callable, at: int, adds: tuple[str, ...]) -> None:
    after = PAINT + ("" if adds == ("shelf",) else "  - {title: Last, say: Glue it., adds: [shelf.other]}\n")
    outcome = out_of_reach.run(assembled(BOOKS.format(at=at), *adds, after=after), out_of_reach)
    assert outcome.looked_at and outcome.findings == ()
