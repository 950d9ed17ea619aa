"""A cover that has room for the picture of the finished piece has it: beside its elevation and plan there is that room."""

from typing import Any

import pytest

from publisher.pages.front import finished
from publisher.pages.sheet import Body
from tests.proof.refused import refused_by


@pytest.mark.parametrize("slug", ["quay", "toll-house"])
def test_a_cover_without_its_picture_is_refused(slug: str, monkeypatch: pytest.MonkeyPatch) -> None:
    def none(*_: Any) -> Body:
        return Body()

    monkeypatch.setattr(finished, "finished_piece", none)
    assert "proof/step-picture" in refused_by(slug)
