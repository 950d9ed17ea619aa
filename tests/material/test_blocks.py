"""Equal rectangles in blocks: against full searches of small sheets, and against the bound."""

import random
from collections import Counter
from functools import cache

import pytest

from publisher.material.blocks import LaidBox, lay_boxes
from publisher.material.box_bound import most_boxes
from tests.searches.profile import dice, rounds, seeds

MM = 10  # units


def rectangles(boxes: tuple[LaidBox, ...], long: int, short: int) -> list[tuple[int, int, int, int]]:
    """Return left, bottom, right, top of each."""
    sides = {False: (long, short), True: (short, long)}
    return [(b.x, b.y, b.x + sides[b.upright][0], b.y + sides[b.upright][1]) for b in boxes]


def insist_that_it_holds(boxes: tuple[LaidBox, ...], width: int, height: int, long: int, short: int) -> None:
    """Fail unless all lie on the sheet, none on another: in whole numbers, without any tolerance."""
    laid = rectangles(boxes, long, short)
    assert all(left >= 0 and right <= width and low >= 0 and top <= height for left, low, right, top in laid)
    for i, one in enumerate(laid):
        for two in laid[i + 1 :]:
            assert one[2] <= two[0] or two[2] <= one[0] or one[3] <= two[1] or two[3] <= one[1]


def most_by_search(width: int, height: int, long: int, short: int) -> int:
    """Return the true most by trying everything: the lowest free cell is left empty, or a rectangle's corner lies in it."""

    @cache
    def most(line: tuple[int, ...]) -> int:
        # line: how far up each column of cells is filled; what is left out below is filled with nothing
        low = min(line)
        if low >= height:
            return 0
        at = line.index(low)
        best = most((*line[:at], low + 1, *line[at + 1 :]))
        for wide, high in {(long, short), (short, long)}:
            if at + wide <= width and low + high <= height and all(c <= low for c in line[at : at + wide]):
                best = max(best, 1 + most((*line[:at], *(low + high,) * wide, *line[at + wide :])))
        return best

    return most((0,) * width)


@pytest.mark.search
@seeds(6, 400)
def test_small_sheets_against_a_full_search(seed) -> None:
    """Nothing above the truth is claimed, nothing below the bound's truth is promised, and blocks reach the truth."""
    chance = random.Random(seed)
    width, height = chance.randint(3, 8), chance.randint(3, 9)
    short = chance.randint(1, 4)
    long = chance.randint(short, 5)
    truth = most_by_search(width, height, long, short)
    boxes = lay_boxes(width, height, long, short)
    insist_that_it_holds(boxes, width, height, long, short)
    assert len(boxes) == truth <= most_boxes(width, height, long, short)


@pytest.mark.parametrize(
    ("wide", "high", "copies"),
    [
        (80, 95, 48), (75, 85, 54), (156, 108.9, 21), (60, 200, 28), (123, 77, 38),
        (141, 59, 43), (97, 53, 71), (210, 63, 25), (111, 89, 36),
    ],
)  # fmt: skip
def test_sizes_whose_best_is_known(wide, high, copies) -> None:
    """On 20 × 30 in with a gap of 1 mm and a margin of 3 mm: as many as the least area over all equivalent problems allows
    (Martins and Dell, *Solving the pallet loading problem*, European Journal of Operational Research 184, 2008)."""
    room = tuple(round((side - 6 + 1) * MM) for side in (508, 762))
    sides = sorted((round((wide + 1) * MM), round((high + 1) * MM)), reverse=True)
    boxes = lay_boxes(*room, *sides)
    insist_that_it_holds(boxes, *room, *sides)
    assert len(boxes) == most_boxes(*room, *sides) == copies


@pytest.mark.search
def test_random_sizes_come_to_the_bound() -> None:
    """5 to 100 copies a sheet: at the bound in 95 %, and never more than one below it."""
    chance, below = dice(1), Counter[int]()
    for _ in range(rounds(10, 10_000)):
        width, height = chance.choice([(5030, 7570), (2920, 4150), (10_010, 7010), (6000, 3000)])
        copies = chance.uniform(5.0, 100.0)
        long = round((width * height / copies / chance.uniform(0.15, 1.0)) ** 0.5)
        short = max(1, round(width * height / copies / long))
        long, short = max(long, short), min(long, short)
        boxes, most = lay_boxes(width, height, long, short), most_boxes(width, height, long, short)
        insist_that_it_holds(boxes, width, height, long, short)
        below[most - len(boxes)] += 1
    print(f"copies below the bound: {dict(sorted(below.items()))}")
    assert min(below) >= 0
    assert max(below) <= 1
    assert below[0] >= 0.95 * below.total()


def test_many_small_ones_and_none() -> None:
    """6,000 copies are laid at once; one too large for the sheet is not laid."""
    boxes = lay_boxes(7570, 5030, 105, 61)
    insist_that_it_holds(boxes[:200], 7570, 5030, 105, 61)
    assert 0.985 * most_boxes(7570, 5030, 105, 61) < len(boxes) == len(set(boxes))
    assert lay_boxes(100, 50, 101, 10) == ()
    assert lay_boxes(100, 50, 60, 51) == ()
