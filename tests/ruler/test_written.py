"""Lengths as people write them down."""

import pytest

from publisher.basics import Refusal
from publisher.ruler import read_length, take_reading


@pytest.mark.parametrize(
    ("text", "mm", "step"),
    [
        ("97", 97.0, 1.0),
        ("97.3", 97.3, 0.5),
        ("97,3", 97.3, 0.5),
        (" 97 mm ", 97.0, 1.0),
        ("97,30mm", 97.3, 0.5),
        ("9.7 cm", 97.0, 1.0),
        ("9,73 centimetres", 97.3, 0.5),
        ("10 cm", 100.0, 10.0),
        ("3 15/16 in", 100.0125, 1.5875),
        ("3-15/16″", 100.0125, 1.5875),
        ("3 - 15/16 inches", 100.0125, 1.5875),
        ('3½"', 88.9, 1.5875),
        ("3 15⁄16 in", 100.0125, 1.5875),
        ("3 29/32 in", 99.21875, 0.79375),
        ("63/16 in", 100.0125, 1.5875),
        ("4 in", 101.6, 1.5875),
        ("3.9375 in", 100.0125, 1.5875),
        ("3.94 in", 100.076, 1.5875),
        ("3.91 in", 99.314, 0.79375),
        ("3.93 in", 99.822, 0.508),
        ("3.9 in", 99.06, 2.54),
    ],
)
def test_readings_are_taken_as_people_write_them(text: str, mm: float, step: float) -> None:
    written = read_length(text, "mm")
    assert written is not None
    assert (written.mm, written.step) == pytest.approx((mm, step))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "mm",
        "97 m",
        "97 mm mm",
        "3 15/0 in",
        "3 17/16 in",
        "-97",
        "1e2",
        "nan",
        "97.3.1",
        "9 7",
        "1/2/3",
        "0",
        "0 in",
        "9" * 41,
    ],
)
@pytest.mark.breaks("ruler/reading-unusable")
def test_what_is_no_length_is_refused_with_the_ways_of_writing(text: str) -> None:
    assert read_length(text, "mm") is None
    with pytest.raises(Refusal) as caught:
        take_reading("across", text, "mm", 100.0, "ruler")
    assert "3 15/16 in" in caught.value.findings[0].hint
