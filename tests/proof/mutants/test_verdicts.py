"""What a mutant may do to a page, and a buyer acts on nothing else."""

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.basics import Layer, polyline
from publisher.pages.model import LineStyle, Stroke, StructureElement, Words
from tests.proof.mutants.verdicts import FARTHEST, misspelt, slight

LINE = Stroke(LineStyle("cut", 0.35), (polyline(((0.0, 0.0), (10.0, 0.0), (10.0, 8.0))),), Layer.PAGE, tag="figure:a")
LABEL = Words("blade", "regular", 2.3, 2.0, 3.0, Layer.PAGE, tag="figure:a")
SAID = Words("Press a pile of 12 scraps together", "regular", 2.3, 40.0, 60.0, Layer.PAGE)
SHAPE = (StructureElement("Figure", (0, 1), alt="a"), StructureElement("P", (2,)))


def pack(*drawn: Any, true: bool = False) -> Any:
    page = SimpleNamespace(number=1, drawn=drawn, structure=SHAPE)
    promised = SimpleNamespace(pages=(SimpleNamespace(page=1, true_size=true),))
    return SimpleNamespace(pages=(page,), promises=promised)


def moved(thing: Any, x: float, y: float = 0.0) -> Any:
    if isinstance(thing, Words):
        return replace(thing, x=thing.x + x, y=thing.y + y)
    from publisher.basics import Pose

    return replace(thing, paths=tuple(path.placed(Pose(x, y)) for path in thing.paths))


RIGHT = pack(LINE, LABEL, SAID)


@pytest.mark.parametrize(
    ("drawn", "verdict"),
    [
        ((LINE, LABEL, SAID), ""),
        ((moved(LINE, 1.0), moved(LABEL, 1.0), SAID), "moved"),
        ((moved(LINE, FARTHEST + 1), moved(LABEL, FARTHEST + 1), SAID), ""),
        ((LINE, LABEL, moved(SAID, 0.0, -2.0)), "moved"),
        ((replace(LINE, style=LineStyle("cut", 0.5)), LABEL, SAID), "looks"),
        ((replace(LINE, style=LineStyle("cut", 0.9)), LABEL, SAID), ""),
        ((LINE, moved(LABEL, 2.0), SAID), "redrawn"),
        ((LINE, moved(LABEL, 4.0), SAID), ""),
        ((LINE, replace(LABEL, text="guide"), SAID), ""),
        ((LINE, LABEL, replace(SAID, text="Press a pile of 13 scraps together")), ""),
        ((LINE, LABEL, replace(SAID, text="Press a pyle of 12 scraps together")), "misspelt"),
        ((LINE, LABEL, replace(SAID, text="Press a pile of 12 scraps")), ""),
    ],
)
def test_what_is_let_go(drawn: tuple[Any, ...], verdict: str) -> None:
    assert slight([pack(*drawn)], [RIGHT]) == verdict


def test_nothing_is_redrawn_on_a_page_that_prints_true() -> None:
    drawn = (LINE, moved(LABEL, 2.0), SAID)
    assert slight([pack(*drawn, true=True)], [pack(LINE, LABEL, SAID, true=True)]) == ""


def test_a_word_that_became_another_one_is_no_misprint() -> None:
    assert misspelt("Mrke the templates", "Make the templates", {"make", "the", "templates"})
    assert not misspelt("Take the templates", "Make the templates", {"make", "take"})
    assert not misspelt("on the back", "in the back", {"in"})
