"""The heads of arrows are small black triangles; nothing else that is black is one."""

from collections.abc import Callable
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

from publisher.proof.measuring.arrow_heads import arrow_heads

HEAD = np.array(((10.0, 10.0), (12.6, 9.1), (12.6, 10.9), (10.0, 10.0)))


def page(ring: Any, grey: float | None = 0.0, visible: bool = True) -> Any:
    lines: Callable[[], list[Any]] = lambda: [np.asarray(ring)]  # noqa: E731
    return SimpleNamespace(pieces=[SimpleNamespace(fill_grey=grey, visible=visible, lines=lines)])


def test_a_head_is_told_by_its_corners() -> None:
    (head,) = arrow_heads(page(HEAD))
    assert head.tolist() == HEAD[:3].tolist()


@pytest.mark.parametrize(
    "other",
    [
        page(HEAD, grey=0.9),
        page(HEAD, grey=None),
        page(HEAD, visible=False),
        page(HEAD * 3.0),
        page(((10.0, 10.0), (12.0, 10.0), (14.0, 10.0), (10.0, 10.0))),
        page(((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0), (0.0, 0.0))),
    ],
)
def test_what_is_pale_large_flat_or_of_four_corners_is_none(other: Any) -> None:
    assert arrow_heads(other) == []
