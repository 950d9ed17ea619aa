"""A sweep as a whole: what cannot be read is refused, the size as it stands is known."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher import api
from publisher.basics import Refusal


def test_the_size_as_it_stands_is_looked_at_where_the_range_holds_it(squares: Path) -> None:
    brief = api.read(squares, (("radius", "74.1 mm"),))
    sweep = api.vary(brief, "", ("radius = 74 mm to 75 mm",), values=2)
    assert sweep.now is not None and sweep.now.values == (74.1,) and sweep.now.sheets[0].copies == (("A", 16),)
    assert [row.values for row in sweep.rows] == [(74.0,), (75.0,)]


def test_a_design_that_is_wrong_is_refused(design: Callable[..., Path]) -> None:
    folder = design(("radius: 20 mm}", "radius: 20 mm, reach: radios}"))
    with pytest.raises(Refusal, match="radios"):
        api.vary(api.read(folder), "", ("radius = 74 mm to 75 mm",))
