"""Steps send to the cautions of what they take in hand, in each language; one that does not is refused."""

from dataclasses import replace
from typing import Any

import pytest

from publisher.pages.instructions import step_block
from publisher.pages.sheet.caution_words import cautions_for
from publisher.pages.type import Tongue
from publisher.proof.checks.sayings import titles_for
from tests.proof.refused import refused_by

CHECK = "proof/caution-named"


@pytest.mark.parametrize(
    "key", ["craft_knife", "pins", "file", "hot_glue", "spray_paint", "superglue", "magnets", "stick_glue"]
)
def test_titles_are_those_of_the_pages_in_each_language(key: str) -> None:
    wanted = [caution.title for caution in cautions_for((key,), always=False)]
    assert [*titles_for(key, "en")] == wanted
    assert [*titles_for(key, "de-AT")] == [Tongue("de").say(title) for title in wanted]


@pytest.mark.keeps(CHECK)
def test_the_demos_send_to_all_of_them() -> None:
    assert CHECK not in refused_by("lock-stair")


@pytest.mark.breaks(CHECK)
def test_a_step_that_sends_to_none_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(step_block, "cautions_for", lambda *_, **__: ())
    assert CHECK in refused_by("lock-stair")


def test_the_act_that_cuts_templates_sends_to_the_knife(monkeypatch: pytest.MonkeyPatch) -> None:
    column = step_block._act_column

    def bare(context: Any, acts: Any, *more: Any) -> Any:
        return column(context, tuple(replace(act, uses=()) for act in acts), *more)

    monkeypatch.setattr(step_block, "_act_column", bare)
    assert CHECK in refused_by("quay")
