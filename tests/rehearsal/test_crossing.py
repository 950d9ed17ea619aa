"""Boards on edge that are slotted by half stand by their slots, letters or none, and not where a slot finds none."""

from dataclasses import replace

import numpy as np
import pytest
import shapely

from tests.rehearsal.crossing import crossed
from tests.rehearsal.notes import Note
from tests.rehearsal.parts import ReadPart
from tests.rehearsal.standing import boards_of

BOARD = 5.0


def rib(letter: str, length: float, slots: tuple[float, ...], *, above: bool, count: int) -> ReadPart:
    """Return a rib 40 mm high of 5 mm board as if it had been read, with slots 5.4 mm wide open above or below."""
    low, high = (20.0, 41.0) if above else (-1.0, 20.0)
    cuts = [shapely.box(x - 2.7, low, x + 2.7, high) for x in slots]
    area = shapely.box(0, 0, length, 40).difference(shapely.union_all(cuts))
    up = Note("top", "top", 3.0, 30.0, (0.0, 1.0))
    return ReadPart(letter, area, (1,), count, thickness=BOARD, notes=(up,))


LONG = rib("A", 200.0, (30.0, 170.0), above=True, count=2)
CROSS = rib("B", 120.0, (20.0, 100.0), above=False, count=2)


def test_a_grating_stands_by_its_slots_alone() -> None:
    """Two ribs of 200 mm with two of 120 mm across: their middles are 80 and 140 mm apart, all feet on one table."""
    ((*stood,),) = crossed(boards_of((LONG, CROSS), 0.0), (LONG, CROSS))
    feet = {"A": (100.0, 0.0), "B": (60.0, 0.0)}
    at = {"A": [], "B": []}
    for one in stood:
        at[one.board.letter].append((one.matrix @ np.array((*feet[one.board.letter], -BOARD / 2, 1.0)))[:3])
    assert (len(at["A"]), len(at["B"])) == (2, 2)
    assert np.linalg.norm(at["A"][0] - at["A"][1]) == pytest.approx(80.0)
    assert np.linalg.norm(at["B"][0] - at["B"][1]) == pytest.approx(140.0)
    ups = [one.matrix[:3, 1] for one in stood]
    assert all(up @ ups[0] == pytest.approx(1.0) for up in ups)
    assert all((at["B"][0] - at["A"][0]) @ up == pytest.approx(0.0, abs=1e-9) for up in ups)


def test_a_slot_that_finds_none_stands_nothing() -> None:
    """A third slot in the long ribs is left open by two cross ribs; and a rib with its slots elsewhere goes through another one."""
    open_one = rib("A", 200.0, (30.0, 100.0, 170.0), above=True, count=2)
    elsewhere = rib("B", 120.0, (20.0, 90.0), above=False, count=1)
    assert crossed(boards_of((open_one, CROSS), 0.0), (open_one, CROSS)) == ()
    assert crossed(boards_of((LONG, elsewhere), 0.0), (LONG, elsewhere)) == ()


def test_slots_of_another_letter_do_not_cross() -> None:
    told = replace(LONG, notes=(*LONG.notes, Note("match", "a", 40.0, 36.0), Note("match", "a", 160.0, 36.0)))
    alike = replace(CROSS, notes=(*CROSS.notes, Note("match", "a", 30.0, 4.0), Note("match", "a", 90.0, 4.0)))
    other = replace(CROSS, notes=(*CROSS.notes, Note("match", "b", 30.0, 4.0), Note("match", "b", 90.0, 4.0)))
    assert len(crossed(boards_of((told, alike), 0.0), (told, alike))[0]) == 4
    assert crossed(boards_of((told, other), 0.0), (told, other)) == ()
