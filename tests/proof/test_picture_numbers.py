"""Pictures of a step that are not numbered from 1 on are refused, and so is a pack's own act that sends to no caution."""

from typing import Any

import pytest

from publisher.pages.instructions import pack_acts, step_block, trade_acts
from tests.proof.refused import refused_by

ROWS = step_block.act_rows


@pytest.mark.parametrize("by", [1, -1])
def test_pictures_that_count_otherwise_are_refused(by: int, monkeypatch: pytest.MonkeyPatch) -> None:
    def rows(context: Any, acts: Any, first: int, of: int, *rest: Any) -> Any:
        return ROWS(context, acts, first + by, of, *rest)

    monkeypatch.setattr(step_block, "act_rows", rows)
    assert "proof/picture-number" in refused_by("quay")


def test_pictures_without_numbers_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    def rows(context: Any, acts: Any, first: int, of: int, *rest: Any) -> Any:
        return ROWS(context, acts, first, 1, *rest)

    monkeypatch.setattr(step_block, "act_rows", rows)
    assert "proof/picture-number" in refused_by("quay")


def test_the_act_that_cuts_a_strip_of_board_sends_to_its_caution(monkeypatch: pytest.MonkeyPatch) -> None:
    act = pack_acts.Act

    def without(key: str, *rest: Any, **named: Any) -> Any:
        made = act(key, *rest, **named)
        return act(made.key, made.title, made.say, made.check, (), made.sketch) if key == "act:board" else made

    monkeypatch.setattr(pack_acts, "Act", without)
    assert {"proof/caution-named"} == refused_by("quay")


def test_a_guide_stands_at_the_pencil_line_where_templates_are_traced(monkeypatch: pytest.MonkeyPatch) -> None:
    told = trade_acts.TradeAct

    def other(name: str, title: str, say: str, *rest: Any) -> Any:
        return told(name, title, say.replace("pencil line, fingers", "cut line, fingers"), *rest)

    monkeypatch.setattr(trade_acts, "TradeAct", other)
    assert "proof/saying" in refused_by("toll-house")
