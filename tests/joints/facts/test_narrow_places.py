"""Narrow places of plane areas: how wide, how long, where."""

from math import cos, radians, sin

import pytest
import shapely

from publisher.joints.facts import narrow_places

PLATE = shapely.box(0, 0, 120, 60)


def test_a_bar_is_told_with_its_width_length_and_middle() -> None:
    area = PLATE - shapely.union_all([shapely.box(25, 15, 55, 45), shapely.box(58, 15, 88, 45)])
    places = list(narrow_places(area, 5.0))
    assert {round(p.width, 2) for p in places} == {3.0}
    assert {round(p.at[0], 2) for p in places} == {56.5}
    assert max(p.long for p in places) == pytest.approx(30.0, abs=0.05)


@pytest.mark.parametrize("turn", [0, 17, 45, 90, 133])
def test_a_place_is_as_narrow_however_the_part_lies(turn: float) -> None:
    c, s = cos(radians(turn)), sin(radians(turn))
    area = shapely.transform(PLATE - shapely.box(40, 2.5, 70, 50), lambda xy: xy @ [[c, s], [-s, c]])
    assert min(p.width for p in narrow_places(area, 5.0)) == pytest.approx(2.5)


def test_a_tongue_that_is_narrowest_at_its_root_is_that_narrow() -> None:
    area = shapely.union_all([shapely.box(0, 0, 50, 50), shapely.box(45, 20, 60, 21), shapely.box(60, 18, 90, 22)])
    assert min(p.width for p in narrow_places(area, 5.0)) == pytest.approx(1.0)


def test_a_gap_is_no_board() -> None:
    """Two legs that stand 1 mm apart are wide; what is narrow between them is air."""
    assert list(narrow_places(PLATE - shapely.box(60, 10, 61, 60), 5.0)) == []


def test_convex_areas_and_no_limit_have_none() -> None:
    assert list(narrow_places(shapely.box(0, 0, 1, 60), 5.0)) == []
    assert list(narrow_places(PLATE - shapely.box(1, 1, 119, 59), 0.0)) == []


def test_a_comb_is_looked_at_once_more_however_many_tongues_it_has(monkeypatch: pytest.MonkeyPatch) -> None:
    comb = shapely.union_all(
        [shapely.box(0, 0, 120, 30), *(shapely.box(8 * n + 2, 30, 8 * n + 5 - 0.2 * n, 55) for n in range(10))]
    )
    calls = 0
    widen = shapely.buffer

    def counted(*args: object, **more: object) -> object:
        nonlocal calls
        calls += len(args) > 1 and isinstance(args[1], float) and args[1] < 0
        return widen(*args, **more)

    monkeypatch.setattr(shapely, "buffer", counted)
    assert min(p.width for p in narrow_places(comb, 5.0)) == pytest.approx(1.2, abs=0.05)
    assert calls <= 12  # each time for what is narrower still
