"""A list of what a step takes in hand that lacks a picture, a tool or its heading is refused, and so is a page under another title."""

from dataclasses import replace
from typing import Any

import pytest

from publisher.pages.front import cautions
from publisher.pages.instructions import step_block
from tests.proof.refused import refused_by

BROKEN, NAMED = step_block.broken, step_block.named_things


def test_a_part_of_which_only_a_scrap_is_shown_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    def scraps(drawing: Any) -> Any:
        made = BROKEN(drawing)
        near = replace(made.lines[0], points=made.lines[0].points[:1] * 2)
        return replace(made, lines=(near,))

    monkeypatch.setattr(step_block, "broken", scraps)
    assert "proof/needed" in refused_by("quay")


def test_a_list_that_leaves_out_a_tool_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(step_block, "named_things", lambda context, step: NAMED(context, step)[:-1])
    assert "proof/needed" in refused_by("quay")


def test_a_list_without_its_heading_and_a_page_under_the_title_of_another_are_refused(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(cautions, "TITLE", "How it is done")
    assert "proof/saying" in refused_by("quay")
