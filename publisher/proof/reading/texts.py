"""Runs of letters put together to lines as they are read, and whether a reader can see them."""

import re
import unicodedata
from functools import lru_cache
from math import hypot
from typing import Any

import numpy as np
import shapely

from publisher.basics import Box, Point, record
from publisher.proof.reading.areas import COVERS_FROM, Cover
from publisher.proof.reading.model import PageRead, TextRun
from publisher.proof.reading.objects import TooMuch

MOST_MET = 20_000
PALEST_WORDS = 0.7
JOINS = 0.6  # em: runs that follow each other closer than this are one line
BLANK = 0.15  # em: a gap that reads as a blank


@record
class TextLine:
    """A line of words as read, its baseline (mm) and em."""

    text: str
    x: float
    y: float
    end_x: float
    end_y: float
    size: float

    def area(self) -> Any:
        """Return the band from the baseline to 0.7 em above it."""
        return _band(self.x, self.y, self.end_x, self.end_y, self.size)

    def middle(self) -> Point:
        """Return the middle of that band."""
        dx, dy = self.end_x - self.x, self.end_y - self.y
        up = 0.35 * self.size / hypot(dx, dy) if dx or dy else 0.0
        return (self.x + self.end_x) / 2 - dy * up, (self.y + self.end_y) / 2 + dx * up


@lru_cache(maxsize=20_000)  # each check asks for the same lines again
def normal(text: str) -> str:
    """Return text with compatibility forms resolved and blanks single: what a reader would say is the same."""
    return re.sub(r"\s+", " ", unicodedata.normalize("NFKC", text).replace("\u00ad", "")).strip()


def says(line: str, wanted: str) -> bool:
    """Say whether a line contains these words, as whole words and whole numbers."""
    at = line.find(wanted)
    while at >= 0:
        before, after = line[:at], line[at + len(wanted) :]
        starts = not (before and _joined(before[-1], wanted[0])) and not re.search(r"\d[.,]$", before)
        ends = not (after and _joined(wanted[-1], after[0])) and not (
            wanted[-1].isdigit() and re.match(r"[.,]\d", after)
        )
        if (starts or not wanted[0].isalnum()) and (ends or not wanted[-1].isalnum()):
            return True
        at = line.find(wanted, at + 1)
    return False


def _joined(left: str, right: str) -> bool:
    return left.isalnum() and right.isalnum()


def why_hidden(page: PageRead, covers: tuple[Cover, ...]) -> tuple[str, ...]:
    """Return for each run of the page why a reader cannot see it, or "". Raises TooMuch over thousands of covered words."""
    boxes = np.array([box.sides for _, _, box, _ in covers]).reshape(-1, 4)
    found, met = [], 0
    for run in page.texts:
        box = _box(run)
        near = (
            (boxes[:, 0] <= box.right)
            & (boxes[:, 2] >= box.left)
            & (boxes[:, 1] <= box.top)
            & (boxes[:, 3] >= box.bottom)
        )
        here = [covers[i] for i in np.flatnonzero(near)]
        met += len(here)
        if met > MOST_MET:
            raise TooMuch("areas lie under and over thousands of its words")
        found.append(_why(run, here))
    return tuple(found)


def _why(run: TextRun, areas: list[Cover]) -> str:
    if not run.text.strip():
        return ""
    if run.invisible:
        return "is set in invisible letters"
    if not run.visible:
        return "lies on a layer that is off"
    if _box(run).overlap(run.clip.box) < 0.0:
        return "lies outside the area that is shown"
    return _against_the_ground(run, areas)


def _against_the_ground(run: TextRun, areas: list[Cover]) -> str:
    """Say whether a run is covered by what was painted later, or as light as what was painted before."""
    ground, box, band = 1.0, _box(run), None
    for order, grey, _, area in areas:
        later = order > run.order
        if not later and grey is None:
            continue  # words over a picture: its grey is not known
        if later and grey is not None and abs(grey - run.grey) <= COVERS_FROM:
            continue
        band = band if band is not None else _band(run.x, run.y, run.end_x, run.end_y, run.size)
        share = shapely.intersection(band, area(box)).area / band.area if band.area else 0.0
        if later and share > 0.3:
            return "lies under something painted later"
        if not later and share > 0.6 and grey is not None:
            ground = grey
    return "is as light as what lies behind it" if abs(ground - run.grey) < 1.0 - PALEST_WORDS else ""


def text_lines(page: PageRead, hidden: tuple[str, ...]) -> tuple[TextLine, ...]:
    """Return the visible lines of a page, in the order in which they were painted."""
    lines: list[TextLine] = []
    for run, why in zip(page.texts, hidden, strict=True):
        if why:
            continue
        last = lines[-1] if lines else None
        gap = _gap(last, run) if last else None
        if last is not None and gap is not None:
            text = last.text + (" " if gap > BLANK * run.size else "") + run.text
            lines[-1] = TextLine(text, last.x, last.y, run.end_x, run.end_y, max(last.size, run.size))
        else:
            lines.append(TextLine(run.text, run.x, run.y, run.end_x, run.end_y, run.size))
    return tuple(TextLine(normal(t.text), t.x, t.y, t.end_x, t.end_y, t.size) for t in lines if t.text.strip())


def _gap(line: TextLine, run: TextRun) -> float | None:
    """Return the gap between a line's end and a run that goes on with it; None when the run does not."""
    dx, dy = line.end_x - line.x, line.end_y - line.y
    length = hypot(dx, dy)
    if length <= 0 or abs(line.size - run.size) > 0.01 * run.size:
        return None
    gx, gy = run.x - line.end_x, run.y - line.end_y
    along, across = (gx * dx + gy * dy) / length, abs(gx * dy - gy * dx) / length
    return along if across < 0.05 * run.size and -0.05 * run.size < along < JOINS * run.size else None


def _band(x: float, y: float, end_x: float, end_y: float, size: float) -> Any:
    length = hypot(end_x - x, end_y - y)
    if length <= 0:
        return shapely.Point(x, y).buffer(size / 4)
    ux, uy = (end_x - x) / length, (end_y - y) / length
    hx, hy = -uy * 0.7 * size, ux * 0.7 * size
    return shapely.polygons([(x, y), (end_x, end_y), (end_x + hx, end_y + hy), (x + hx, y + hy)])


def _box(run: TextRun) -> Box:
    return Box(
        min(run.x, run.end_x) - run.size * 0.3,
        min(run.y, run.end_y) - run.size * 0.3,
        max(run.x, run.end_x) + run.size * 0.3,
        max(run.y, run.end_y) + run.size * 0.8,
    )
