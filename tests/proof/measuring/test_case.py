from typing import Any

import pytest

from publisher.proof.measuring.case import Case
from publisher.proof.reading.objects import TooMuch
from publisher.proof.reading.reader import read_file


def case_of(data: bytes, promises: Any = None) -> Case:
    return Case(data, read_file(data, "test.pdf"), promises)


def test_readings_are_taken_once(kit: Any) -> None:
    pack = kit.good()
    case = case_of(pack.write(), pack.promises)
    assert case.lengths() is case.lengths()
    assert case.outlines() is case.outlines()
    assert case.pixels() is case.pixels()
    assert case.ink(2) is case.ink(2)
    assert len(case.areas(2)) == len(case.lines(2)) > 0


@pytest.mark.parametrize("number", [0, 5, -1])
def test_pages_that_are_not_there(kit: Any, number: int) -> None:
    case = case_of(kit.good().write())
    assert case.page(number) is None
    assert case.ink(number) is None
    assert case.lines(number) == ()
    assert case.hidden(number) == ()


def test_a_page_that_was_given_up_is_not_tried_again(kit: Any) -> None:
    case = case_of(kit.raw_pdf(b"10 0 50 100 re W n " + b"0 20 m 100 20 l S " * 7000))
    for _ in range(2):
        with pytest.raises(TooMuch, match="thousands"):
            case.ink(1)


def test_a_picture_of_a_billion_pixels_is_not_given_to_the_second_reader(kit: Any) -> None:
    image = kit.raw_stream(
        b"x", b"/Type /XObject /Subtype /Image /Width 30000 /Height 30000 /BitsPerComponent 8 /ColorSpace /DeviceGray"
    )
    data = kit.raw_pdf(b"99 0 0 99 0 0 cm /I Do", resources=b"/XObject << /I 5 0 R >>", objects=((5, image),))
    assert "million pixels" in case_of(data, kit.good().promises).pixels().trouble
