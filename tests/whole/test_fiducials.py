"""The fiducial marks of a finished file, found in pixels by a stranger who knows the record alone."""

import json
from typing import Any

import numpy as np
import pypdfium2
import pytest

from publisher.brief import read_brief
from publisher.pages import Pack
from publisher.pipeline import compose_packs, work
from publisher.press import write_pdf
from tests.whole.conftest import small_design

DPI = 300
NEAR = 0.4  # mm beside the middle line of a mark: less than what is kept white
Grey = np.ndarray[Any, np.dtype[np.float64]]


@pytest.fixture(scope="module")
def packs(tmp_path_factory: pytest.TempPathFactory) -> tuple[Pack, ...]:
    folder = small_design(tmp_path_factory.mktemp("shelf"), "bollard")
    return compose_packs(work(read_brief(folder)), ("a4", "letter"))[0]


class Scan:
    """A page as a picture; places in mm from its lower left, as PDFium fills whole pixels with it."""

    def __init__(self, pdf: pypdfium2.PdfDocument, page: dict[str, Any]) -> None:
        shown = pdf[page["number"] - 1].render(scale=DPI / 72, grayscale=True).to_numpy()
        self.ink: Grey = 1.0 - shown.reshape(shown.shape[:2]).astype(float) / 255.0
        self.width, self.height = page["width"], page["height"]
        high, wide = self.ink.shape
        self.x, self.y = (
            (np.arange(wide) + 0.5) * self.width / wide,
            (high - np.arange(high) - 0.5) * self.height / high,
        )

    def middle(self, across: tuple[float, float], up: tuple[float, float]) -> tuple[float, float]:
        """Return the middle of the ink in a box of the page."""
        columns, rows = np.searchsorted(self.x, across), np.searchsorted(-self.y, [-up[1], -up[0]])
        part = self.ink[slice(*rows), slice(*columns)]
        x, y = self.x[slice(*columns)], self.y[slice(*rows)]
        return float(part.sum(axis=0) @ x / part.sum()), float(part.sum(axis=1) @ y / part.sum())


def found(scan: Scan, mark: dict[str, Any]) -> tuple[float, float]:
    """Return the centre of a mark near its place, of which a stranger knows no more than tenths of a millimetre."""
    x, y = (round(value, 1) for value in mark["centre"])
    arm = mark["size"]
    if mark["gap"]:
        reach = arm / 2 + NEAR
        level = mark["place"] in ("bottom", "top")
        over, up = (reach, NEAR) if level else (NEAR, reach)
        return scan.middle((x - over, x + over), (y - up, y + up))
    right, top = (1 if x < scan.width / 2 else -1), (1 if y < scan.height / 2 else -1)

    def along(at: float, way: int) -> tuple[float, float]:
        low, high = sorted((at + way * 2.0, at + way * (arm - 1.0)))
        return low, high

    return (
        scan.middle((x - NEAR, x + NEAR), along(y, top))[0],
        scan.middle(along(x, right), (y - NEAR, y + NEAR))[1],
    )


def test_a_stranger_finds_all_eight_centres_to_a_fiftieth_of_a_millimetre(packs: tuple[Pack, ...]) -> None:
    looked = 0
    for pack in packs:
        document = pypdfium2.PdfDocument(write_pdf(pack))
        record = json.loads(pack.attachments[0].data)
        for page in record["pages"]:
            if not page["fiducials"]:
                assert page["kind"] not in ("print_check", "templates", "tiles")
                continue
            scan = Scan(document, page)
            assert len({mark["place"] for mark in page["fiducials"]}) == 8
            for mark in page["fiducials"]:
                assert found(scan, mark) == pytest.approx(mark["centre"], abs=0.02), (page["number"], mark["place"])
                looked += 1
        document.close()
    assert looked == 2 * 2 * 8
