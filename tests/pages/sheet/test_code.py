"""The page code: what it says, how long it may be, and that a reader not ours reads it."""

import numpy as np
import pytest
import zxingcpp

from publisher.basics import Box
from publisher.pages.model import Fill
from publisher.pages.sheet.code import page_code, page_text


def raster(fill: Fill, box: Box, dots: int = 10) -> np.ndarray:
    """Paint the rectangles on a white ground, ``dots`` per mm."""
    side = round(box.width * dots)
    image = np.full((side + 80, side + 80), 255, dtype=np.uint8)
    for path in fill.paths:
        xs = [round((x - box.left) * dots) for x, _ in path.points]
        ys = [round((box.top - y) * dots) for _, y in path.points]
        image[40 + min(ys) : 40 + max(ys), 40 + min(xs) : 40 + max(xs)] = 0
    return image


@pytest.mark.parametrize(
    "text",
    [
        "stair|1.0.0||a4|3|14",
        "x" * 42,
        "x" * 43,
        "x" * 53,
        page_text(slug="a" * 80, version="1.0.0", variant="ü", paper="a4", page=7, total=12),
    ],
)
def test_a_reader_of_another_house_reads_it(text: str) -> None:
    box = Box(20, 30, 34.5, 44.5)
    body = page_code(box, text, 3)
    (fill,) = body.drawn
    assert isinstance(fill, Fill)
    (found,) = zxingcpp.read_barcodes(raster(fill, box))
    assert found.text == text
    (promise,) = body.codes
    assert promise.text == text
    module, dots = box.width / len(promise.modules), raster(fill, box)
    for row, modules in enumerate(promise.modules):
        middles = [
            (40 + round((row + 0.5) * module * 10), 40 + round((i + 0.5) * module * 10)) for i in range(len(modules))
        ]
        assert "".join("01"[bool(dots[at] == 0)] for at in middles) == modules
    assert found.format == zxingcpp.BarcodeFormat.QRCode
    assert body.codes[0].text == text
    assert body.codes[0].box == box


def test_modules_are_half_a_millimetre_and_few_rectangles_cover_them() -> None:
    body = page_code(Box(0, 0, 14.5, 14.5), "stair|1.0.0||a4|3|14", 1)
    (fill,) = body.drawn
    assert isinstance(fill, Fill)
    for path in fill.paths:
        for x, y in path.points:
            assert (x / 0.5) == pytest.approx(round(x / 0.5))
            assert (y / 0.5) == pytest.approx(round(y / 0.5))
    area = sum((p.points[2][0] - p.points[0][0]) * (p.points[2][1] - p.points[0][1]) for p in fill.paths)
    covered = np.zeros((29, 29), dtype=int)
    for path in fill.paths:
        (left, bottom), _, (right, top), _ = path.points
        covered[round(bottom * 2) : round(top * 2), round(left * 2) : round(right * 2)] += 1
    assert covered.max() == 1  # no module twice: even-odd filling would leave it white
    assert area == pytest.approx(covered.sum() * 0.25)
    assert len(fill.paths) < 200


def test_long_names_are_cut_but_stay_apart() -> None:
    one, two = (
        page_text(
            slug="a-very-long-name-of-a-design-" + end,
            version="12.10.3",
            variant="wide_bases",
            paper="letter",
            page=10,
            total=40,
        )
        for end in ("north", "south")
    )
    assert one != two
    assert len(one.encode()) <= 53
    assert one.endswith("|10|40")
    short = page_text(slug="quay", version="1.0.0", variant="", paper="a4", page=1, total=9)
    assert short == "quay|1.0.0||a4|1|9"


def test_a_text_that_no_symbol_of_this_size_holds_is_an_error() -> None:
    with pytest.raises(ValueError, match="53 bytes"):
        page_code(Box(0, 0, 14.5, 14.5), "x" * 54, 1)
