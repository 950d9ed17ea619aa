"""Whether a picture says that glue is taken: by what its step uses, and what is taped, lifts off or is tried; no page decides it anew."""

from dataclasses import replace

import pytest

from publisher.joints import glue_said
from publisher.joints.glue_signs import glue_signs
from publisher.pages.instructions import act_cells
from tests.proof.refused import refused_by, worked_out

GLUED, LOOSE, TRIED = "step:7:act:2", "step:7:act:3", "step:5:act:1"  # of the toll house


@pytest.mark.parametrize(("picture", "glued"), [(GLUED, True), (LOOSE, False), (TRIED, False), ("step:7:act:1", None)])
def test_glue_is_taken_where_the_step_has_it_and_nothing_is_taped_or_lifts_off(
    picture: str, glued: bool | None
) -> None:
    joined = worked_out("toll-house").joined
    assert joined is not None and glue_said(joined, picture) is glued


def test_a_step_without_glue_has_no_sign_for_it() -> None:
    worked = worked_out("toll-house")
    assert worked.design is not None and worked.joined is not None
    steps = tuple(replace(step, uses=()) for step in worked.design.steps)
    found = {sign.key for sign in glue_signs(replace(worked.design, steps=steps), worked.joined.drawings)}
    assert f"{GLUED}:glue" not in found and {f"{LOOSE}:glue", f"{TRIED}:glue"} <= found


@pytest.mark.parametrize("said", [lambda *_: None, lambda *_: True, lambda *_: False])
def test_a_page_that_shows_another_sign_is_refused(monkeypatch: pytest.MonkeyPatch, said: object) -> None:
    monkeypatch.setattr(act_cells, "glue_said", said)
    assert "proof/step-picture" in refused_by("toll-house")


def test_a_sign_that_is_not_asked_for_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    real = act_cells.glue_said
    monkeypatch.setattr(
        act_cells, "glue_said", lambda joined, picture: real(joined, picture) or picture.endswith("7:act:1")
    )
    assert "proof/step-picture" in refused_by("toll-house")
