"""The page code: what it says, how long it may be, and that a reader not ours reads it."""

from collections.abc import Callable

import numpy as np
import pytest
import zxingcpp

from publisher.basics import Box
from publisher.brief import Inputs
from publisher.brief.limits import SLUG_LETTERS
from publisher.pages.model import Fill
from publisher.pages.sheet.code import CODE_LETTERS, pack_id, page_code, page_text
from publisher.pages.sheet.draft import Context


def raster(fill: Fill, box: Box, dots: int = 10) -> np.ndarray:
    """Paint the rectangles on a white ground, ``dots`` per mm."""
    side = round(box.width * dots)
    image = np.full((side + 80, side + 80), 255, dtype=np.uint8)
    for path in fill.paths:
        xs = [round((x - box.left) * dots) for x, _ in path.points]
        ys = [round((box.top - y) * dots) for _, y in path.points]
        image[40 + min(ys) : 40 + max(ys), 40 + min(xs) : 40 + max(xs)] = 0
    return image


ID = "3f2a90c1"
LONGEST = page_text(slug="a" * SLUG_LETTERS, page=9999, total=9999, pack=ID, trial=True)


def test_it_says_slug_page_of_id_and_whether_it_is_a_trial() -> None:
    assert page_text(slug="lock-stair", page=3, total=14, pack=ID, trial=False) == "LOCK-STAIR/3/14/3F2A90C1/S"
    assert page_text(slug="lock-stair", page=3, total=14, pack=ID, trial=True) == "LOCK-STAIR/3/14/3F2A90C1/T"


def test_the_longest_slug_and_ten_thousand_pages_just_fit() -> None:
    assert len(LONGEST) == CODE_LETTERS
    with pytest.raises(ValueError, match="61 letters, this text has 62"):
        page_code(Box(0, 0, 14.5, 14.5), LONGEST + "X", 1)


def test_an_id_is_the_beginning_of_the_digest_that_names_a_pack(make_context: Callable[..., Context]) -> None:
    paper, inputs = make_context("letter").paper, Inputs("quay", papers=("a4", "letter"))
    assert len(pack_id(inputs, "wide", paper)) == 8
    assert inputs.pack_digest("wide", "letter").startswith(pack_id(inputs, "wide", paper))
    assert pack_id(inputs, "", paper) != pack_id(inputs, "wide", paper)
    assert pack_id(inputs, "wide", make_context("a4").paper) != pack_id(inputs, "wide", paper)
    assert pack_id(Inputs("quay", sets=(("board", "4.8 mm"),)), "wide", paper) != pack_id(inputs, "wide", paper)
    assert pack_id(Inputs("quay", papers=("letter",)), "wide", paper) == pack_id(inputs, "wide", paper)


@pytest.mark.parametrize("text", [page_text(slug="quay", page=1, total=9, pack=ID, trial=False), LONGEST])
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
    body = page_code(Box(0, 0, 14.5, 14.5), "LOCK-STAIR/3/14/3F2A90C1/S", 1)
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
