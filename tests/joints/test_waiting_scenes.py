"""What holds a step's work while it dries is promised: a page whose sketch leaves out weight or pins, or shows tape elsewhere, is
refused."""

import pytest

from publisher.joints import pins_from
from publisher.pages.instructions import finish_sketches
from tests.proof.refused import refused_by, worked_out


def test_a_step_promises_what_it_uses_and_how_it_goes_in() -> None:
    joined = worked_out("bridge").joined
    assert joined is not None
    kept = {name: {one.key for one in joined.pictures if one.key.endswith(f":scene:{name}")} for name in (
        "pin_out", "pressed_down", "taped_corner",
    )}  # fmt: skip
    assert all(kept.values())
    assert {pins_from(joined, int(key.split(":")[1])) for key in kept["pin_out"]} <= {"corner", "above", "below"}


@pytest.mark.parametrize(
    ("name", "other"),
    [
        ("LIES_ON", ("bricks",)),
        ("_pin", lambda *_: None),
        ("TAPE_AT_CORNER", tuple((x + 12.0, y + 12.0) for x, y in finish_sketches.TAPE_AT_CORNER)),
    ],
)
def test_a_sketch_without_what_holds_it_is_refused(name: str, other: object, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(finish_sketches, name, other)
    assert "proof/step-picture" in refused_by("bridge")
