"""The manual states the tolerances that the checks use, each once."""

import re
from pathlib import Path

import pytest

from publisher.proof.folder.cut_lines import CUT_TOLERANCE
from publisher.proof.measuring import (
    CARRIED_TOLERANCE,
    DRAWN_TOLERANCE,
    HEAD_AT,
    INSIDE_FROM,
    LENGTH_TOLERANCE,
    MARK_TOLERANCE,
    OUTLINE_TOLERANCE,
    SEEN_STRETCH,
    SHIFTED,
    TAPED_TOLERANCE,
)
from publisher.proof.measuring.outlines import CUT_GAP

MANUAL = Path(__file__).parents[2] / "docs" / "proof.md"
STATED = dict(re.findall(r"^\| ([^|]+) \| (\d[\d.]*) \|$", MANUAL.read_text("utf-8"), re.M))


@pytest.mark.parametrize(
    ("begins", "mm"),
    [
        ("outlines and openings", OUTLINE_TOLERANCE),
        ("squares, rulers", LENGTH_TOLERANCE),
        ("cut files", CUT_TOLERANCE),
        ("any line or word", DRAWN_TOLERANCE),
        ("a part put together", TAPED_TOLERANCE),
        ("a match mark", SHIFTED),
        ("lines to score", MARK_TOLERANCE),
        ("lines of pictures", CARRIED_TOLERANCE),
        ("an arrow's head", HEAD_AT),
        ("a gap", CUT_GAP),
        ("ink over", INSIDE_FROM),
        ("a line that pixels", SEEN_STRETCH),
    ],
)
def test_the_manual_states_each_tolerance(begins: str, mm: float) -> None:
    (stated,) = (value for what, value in STATED.items() if what.startswith(begins))
    assert float(stated) == mm
