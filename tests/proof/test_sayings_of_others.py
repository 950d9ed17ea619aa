"""What holds of other designs alone is refused: the footer of a pack that is pasted, remedies for slots that no part has."""

from typing import Any

import pytest

from publisher.pages.instructions import trade_acts
from publisher.pages.sheet import page_furniture
from publisher.pages.sheet.editions import Edition
from publisher.proof.checks.sayings import sayings, sayings_table
from publisher.proof.checks.sayings_of_others import contraries
from publisher.proof.measuring.circumstances import CIRCUMSTANCES
from tests.proof.refused import refused_by


def test_the_footer_of_a_pack_that_is_pasted_is_refused_where_templates_are_traced(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(page_furniture, "WAYS", dict.fromkeys((True, False), page_furniture.WAYS[False]))
    assert "proof/saying-of-others" in refused_by("quay")


def test_a_sentence_about_pasting_on_a_page_of_acts_is_refused_where_templates_are_traced(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    told = trade_acts.TradeAct

    def other(name: str, title: str, say: str, *rest: Any) -> Any:
        return told(name, title, say.replace("at the pencil line, fingers", "at the cut line, fingers"), *rest)

    monkeypatch.setattr(trade_acts, "TradeAct", other)
    assert "proof/saying-of-others" in refused_by("toll-house")


def test_what_sayings_hang_on_are_circumstances_that_there_are() -> None:
    assert set(sayings_table()["alone"]) <= {one.name for one in sayings() if one.when}
    assert {one.when.removeprefix("not ") for one in contraries()} <= set(CIRCUMSTANCES)
    assert all(len(dict(one.forms)["en"]) == len(dict(one.forms)["de"]) for one in contraries())


def test_board_with_other_faces_is_not_what_shops_are_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Edition, "called", lambda edition, faces: dict(edition.boards)["paper"])
    assert "proof/board-said" in refused_by("quay")
