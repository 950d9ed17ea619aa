"""Degrees in a picture of the steps are those of a template or of a turn; others are the angle of nothing."""

import pytest
import shapely

from tests.rehearsal.acts import Act
from tests.rehearsal.angles import unlike_angles
from tests.rehearsal.notes import Note
from tests.rehearsal.pages import Line, ReadPage
from tests.rehearsal.parts import ReadPart

BOARD = shapely.box(0, 0, 60, 40)


@pytest.mark.parametrize(
    ("degrees", "said"),
    [
        ("45°", False),
        ("90°", False),
        ("20°", False),
        ("120°", False),
        ("0°", False),
        ("50°", True),
        ("95°", True),
        ("25°", True),
    ],
)
def test_an_angle_is_cut_folded_opened_or_turned_by(degrees: str, said: bool) -> None:
    slope = ReadPart("C", BOARD, (1,), 2, notes=(Note("bevel", "45 out", 30, 38),))
    folded = ReadPart("D", BOARD, (1,), 1, words=("Fold 120°: V-groove from inside, 5.77 mm wide",))
    page = ReadPage(
        9, (Line("Steps 8 to 10", 11, 270, 60.0, 4.6, bold=True), Line(degrees, 60, 100, 5.0, 2.7, bold=True))
    )
    found = list(unlike_angles((page,), (slope, folded), (Act(9, "Wind up", 1, (), turn=20.0),)))
    assert found == ([f"page 9: {degrees} is the angle of nothing"] if said else [])
