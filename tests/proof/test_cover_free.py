"""The picture of the finished piece on a cover stands free of words."""

from types import SimpleNamespace
from typing import Any

import pytest
import shapely

from publisher.basics import Box, Carried
from publisher.proof.checks import drawings


def words(text: str, *sides: float) -> Any:
    return SimpleNamespace(text=text, area=lambda: shapely.box(*sides))


@pytest.mark.parametrize(
    ("sides", "said"),
    [((20, 90, 60, 94), "Print plan"), ((20, 99.2, 60, 103), ""), ((20, 101, 60, 105), ""), ((99.5, 50, 120, 54), "")],
)
def test_words_under_a_picture_are_found(sides: tuple[float, ...], said: str) -> None:
    """Inside it; reaching into its box by less than a millimetre, over it, beside it."""
    case: Any = SimpleNamespace(lines=lambda page: [words("Print plan", *sides)] if page == 1 else [])
    assert drawings._under(case, Carried("cover:whole:house", 1, Box(10.0, 40.0, 100.0, 100.0))) == said


def test_only_the_finished_piece_on_a_cover_bears_no_words(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(drawings, "_fault", lambda *_: "")
    case: Any = SimpleNamespace(lines=lambda _: [words("Print plan", 20, 90, 60, 94)])
    where = Carried("cover:whole:house", 1, Box(10.0, 40.0, 100.0, 100.0))
    for key, fault in (("cover:whole:house", "lies over “Print plan”"), ("cover:front:house", "")):
        promise: Any = SimpleNamespace(key=key)
        assert drawings._drawn_wrong(case, promise, where) == fault
