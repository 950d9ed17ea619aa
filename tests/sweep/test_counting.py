"""CountWalk along a size: the jumps are those of full searches at every value between."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from publisher import api
from publisher.design import size_span, work_out
from publisher.material import CountKey, count_layouts
from publisher.sweep.counting import CountWalk
from publisher.sweep.trying import Trial
from tests.searches.profile import rounds

PENTAGONS = ("shape: disc, with: {radius: radius}", "shape: regular_polygon, with: {sides: 5, radius: radius}")
SHEET = ("sheets: [20 x 30 in]", "sheets: [200 x 160 mm], knife_gap: 1 mm")


def trial_of(folder: Path, text: str) -> Trial:
    brief = api.read(folder)
    return Trial(brief.inputs, "", (size_span(text, work_out(brief, "").sizes),))


def searched(trial: Trial, value: float) -> dict[CountKey, int]:
    """Return all counts at a value by full searches that know nothing."""
    made = trial.make((value,))
    assert made.design is not None
    return {count.key: count.number for count in count_layouts(made.design, made.pieces)[0]}


def walked(trial: Trial, low: float, high: float) -> CountWalk:
    """Return the counts with both ends known."""
    counts = CountWalk(trial, ())
    for value in (low, high):
        counts.at(value)
    return counts


@pytest.mark.search
@pytest.mark.parametrize(("low", "high"), [(17.3, 18.1), (24.4, 25.4)])
def test_jumps_are_where_full_searches_at_every_value_find_less(
    design: Callable[..., Path], low: float, high: float
) -> None:
    """Pentagons, which lie in rows: against a full search beside each jump, and at values between the jumps."""
    trial = trial_of(design(PENTAGONS, SHEET), "radius = 15 mm to 30 mm")
    counts = walked(trial, low, high)
    jumps = counts.jumps(low, high)
    assert jumps
    first, last = searched(trial, low), searched(trial, high)
    for key in first:
        assert counts.marks[key][0].count.number == first[key] and counts.marks[key][-1].count.number == last[key]
    for jump in jumps:
        assert jump.first - jump.last == pytest.approx(0.01)
        for value, said in ((jump.last, jump.before), (jump.first, jump.after)):
            key = next(k for k in first if bool(k[2]) == (jump.kind == "copies"))
            assert searched(trial, value)[key] == int(said), (value, said)
    for value in between(low, high):
        for key, number in searched(trial, value).items():
            steps = [mark for mark in counts.marks[key] if mark.value <= value]
            assert number == steps[-1].count.number, (value, key)


def between(low: float, high: float) -> Iterator[float]:
    """Yield some values between two."""
    parts = rounds(2, 20) + 1
    return (round(low + (high - low) * k / parts, 2) for k in range(1, parts))


def test_a_jump_upwards_is_found_as_well(design: Callable[..., Path]) -> None:
    """Squares of 300 mm less a margin that grows: the copies fall; with their side taken from 400 mm they rise."""
    folder = design(
        (
            "shape: disc, with: {radius: radius}",
            "shape: rectangle, with: {width: 150 mm - radius, height: 150 mm - radius}",
        ),
        ("sheets: [20 x 30 in]", "sheets: [300 x 300 mm], knife_gap: 1 mm"),
    )
    trial = trial_of(folder, "radius = 40 mm to 80 mm")
    (jump,) = [j for j in walked(trial, 70.0, 76.0).jumps(70.0, 76.0) if j.kind == "copies"]
    assert (jump.last, jump.first, jump.before, jump.after) == (75.74, 75.75, "9", "16")


def test_a_value_that_cannot_be_made_counts_nothing(squares: Path) -> None:
    trial = trial_of(squares, "radius = 70 mm to 80 mm")
    counts = walked(trial, 70.0, 80.0)
    (part, _) = counts.marks
    like = counts.marks[part][0]
    assert counts._count(like, 75.0, ()).count.number == 9
    assert counts._count(like, -5.0, ()).count.number == 0
