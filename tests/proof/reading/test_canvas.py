from typing import Any

import pytest

from publisher.basics import Box
from publisher.proof.reading.canvas import Canvas
from publisher.proof.reading.layers import Layers
from publisher.proof.reading.objects import Spent, TooMuch


@pytest.fixture
def canvas() -> Canvas:
    return Canvas(
        (1.0, 0.0, 0.0, 1.0, 0.0, 0.0), Box(0.0, 0.0, 210.0, 297.0), {"/Font": {"/F": 7}}, Layers({}), Spent(), {}
    )


def test_the_state_is_kept_and_brought_back(canvas: Canvas) -> None:
    canvas.save()
    canvas.state.width = 9.0
    canvas.restore()
    assert canvas.state.width == 1.0
    canvas.restore()  # one too many is passed over, as viewers do
    assert canvas.state.width == 1.0


def test_transparency_makes_ink_paler(canvas: Canvas) -> None:
    canvas.state.stroke_grey, canvas.state.stroke_alpha = 0.2, 0.25
    canvas.state.fill_grey = None
    assert canvas.state.stroke() == pytest.approx(0.8)
    assert canvas.state.fill() == 0.5


def test_layers_hide_what_they_hold_and_are_remembered(canvas: Canvas) -> None:
    canvas.open_marked("")
    assert canvas.visible()
    canvas.open_marked("Notes")
    canvas.open_marked("")
    assert not canvas.visible()
    assert list(canvas.hidden_layers) == ["Notes"]


def test_limits_of_work(canvas: Canvas) -> None:
    for field, value in (("operators", 10**7), ("points", 10**8), ("forms", 10**5)):
        spent = Spent()
        setattr(spent, field, value)
        with pytest.raises(TooMuch):
            spent.check()
    with pytest.raises(TooMuch):
        for _ in range(1000):
            canvas.open_marked("")


@pytest.mark.parametrize("name", ["F", "G", None, 3.0])
def test_what_the_resources_lack_is_none(canvas: Canvas, name: Any) -> None:
    assert canvas.font(name) is None
    assert canvas.resource("/XObject", name) is None
