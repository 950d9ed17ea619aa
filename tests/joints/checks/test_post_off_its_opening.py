from types import SimpleNamespace
from typing import Any

import pytest

from publisher.joints.checks.post_off_its_opening import post_off_its_opening
from tests.joints.panels.test_posts import box, posted

ID = "joints/post-off-its-opening"
SOCKET = box(30, 30, 20.4, 5.4)


@pytest.mark.keeps(ID)
@pytest.mark.parametrize("said", [{}, {"face": "inside"}, {"turn": 180.0}])
def test_a_post_square_in_its_opening_stands(make: SimpleNamespace, said: dict[str, Any]) -> None:
    outcome = post_off_its_opening.run(posted(make, SOCKET, **said), post_off_its_opening)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks(ID)
@pytest.mark.parametrize(
    ("said", "words", "value"),
    [
        ({"turn": 30.0}, "turned by 30.00° against its sides", 30.0),
        ({"opening": "sockel"}, "has no opening of that name", None),
    ],
)
def test_a_post_that_is_askew_or_in_nothing_is_found(
    make: SimpleNamespace, said: dict[str, Any], words: str, value: float | None
) -> None:
    (found,) = post_off_its_opening.run(posted(make, SOCKET, **said), post_off_its_opening).findings
    assert words in found.message
    assert value is None or found.value == pytest.approx(value)


def test_what_is_not_there_is_told_what_is(make: SimpleNamespace) -> None:
    (found,) = post_off_its_opening.run(posted(make, SOCKET, opening="sockel"), post_off_its_opening).findings
    assert found.hint.startswith("did you mean “socket”? it has: socket")


def test_an_opening_of_another_form_and_a_post_that_joins_hold_are_found(make: SimpleNamespace) -> None:
    pointed = ((20.0, 20.0), (20.0, 30.0), (30.0, 40.0), (40.0, 30.0), (40.0, 20.0))
    (form,) = post_off_its_opening.run(posted(make, pointed), post_off_its_opening).findings
    assert "neither round nor square" in form.message
    (held,) = post_off_its_opening.run(
        posted(make, SOCKET, make.join("front.right", "post.left")), post_off_its_opening
    ).findings
    assert "from the middle of it" in held.message or "turned by" in held.message
