"""What must hold for every composed page, whoever drew it."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import cos, radians, sin

import numpy as np
import shapely
from shapely import affinity

from publisher.basics import Box, Check, Findings, LengthPromise, PagePromise, Place, Severity, checked, record
from publisher.pages.model import Drawn, Fill, Page, Picture, Stroke, Words
from publisher.pages.type import LEAST_SIZE, Faces

_SLACK = 1e-6  # mm, of floats
_STANDING = re.compile("[A-IK-PR-Z0-9a-fhik-or-xz .·°+×–-]*")  # no letter reaches under the line
_TOUCH = 0.2  # mm by which the boxes of words may overlap on each side: they hold accents and descenders that most words lack


@record
class Composed:
    """The pages of a pack as composed, with their promises (printable limits), the boxes round the ink of all that is drawn on
    them (``ink_box``), fonts, and where the spec names the first of its own; the lines on them that a buyer measures, and for each
    page the boxes that are kept for its square and its code."""

    pages: tuple[Page, ...]
    promises: tuple[PagePromise, ...]
    boxes: tuple[tuple[Box | None, ...], ...]
    faces: Faces
    fonts_at: Place | None = None
    lengths: tuple[LengthPromise, ...] = ()
    kept: tuple[tuple[Box, ...], ...] = ()


def words_box(faces: Faces, words: Words) -> Box:
    """Return the upright box round a line of words: from descent to the height of capitals with accents (mm)."""
    face = next((f for f in (faces.regular, faces.bold, *faces.named) if f.name == words.font), faces.regular)
    width, low, high = face.width(words.text) * words.size, -0.22 * words.size, 0.76 * words.size
    if not words.turn:
        return Box(words.x, words.y + low, words.x + width, words.y + high)
    c, s = cos(radians(words.turn)), sin(radians(words.turn))
    ends = ((a, b) for a in (0.0, width) for b in (low, high))
    return Box.round((words.x + a * c - b * s, words.y + a * s + b * c) for a, b in ends)


def ink_box(faces: Faces, thing: Drawn) -> Box | None:
    """Return the upright box round all ink of a thing in mm; None for what has none."""
    if isinstance(thing, Words):
        return words_box(faces, thing)
    if isinstance(thing, Picture):
        return thing.box
    if not isinstance(thing, Stroke | Fill):
        return None
    points = [point for path in thing.paths for point in path.points]
    if not points:
        return None
    box = Box.round(points).grown(thing.style.width / 2 if isinstance(thing, Stroke) else 0.0)
    return box if thing.clip is None else box.common(thing.clip)


@checked(
    "pages/letter-missing",
    "Every letter can be drawn",
    "a letter that no font has prints as an empty box",
    Severity.ERROR,
)
def letters_drawable(composed: Composed, check: Check[Composed]) -> Findings:
    """Look for each letter in the fonts; each that is missing is named once."""
    looked = 0
    missing: dict[str, tuple[Page, str]] = {}
    for page in composed.pages:
        for thing in page.drawn:
            if isinstance(thing, Words):
                looked += 1
                for letter in composed.faces.missing(thing.text):
                    missing.setdefault(letter, (page, thing.text))
    for letter, (page, text) in missing.items():
        yield check.found(
            f"no font has the letter “{letter}” (U+{ord(letter):04X}) of “{text[:40]}” on page {page.number}",
            subject=f"page {page.number}",
            hint="name a TrueType font that has it under fonts: in the spec, or write it otherwise; letters that a font leaves "
            "empty, or draws far larger than the others, do not count",
            place=composed.fonts_at,
        )
    return looked


CHECKS: tuple[Check[Composed], ...] = (letters_drawable,)


class PageFault(Exception):
    """Something that we placed stands where it must not: a fault of this program (exit 3), never a finding about a design."""


def own_faults(composed: Composed) -> Iterator[str]:
    """Yield in words what lies outside a page's printable limit, which words are set too small, which lie on other words, on lines to
    be measured, or in the corner of the square and the code.

    Nothing that a designer writes can bring it about: long texts are broken, long titles are findings before.
    """
    for page, promise, boxes in zip(composed.pages, composed.promises, composed.boxes, strict=True):
        here = f"page {page.number} ({page.title})"
        words: list[tuple[Words, Box]] = []
        for thing, box in zip(page.drawn, boxes, strict=True):
            if box is None:
                continue
            if (over := box.beyond(promise.limit)) > _SLACK:
                yield f"{here}: {_called(thing)} lies {over:.2f} mm outside the printable limit"
            if isinstance(thing, Words):
                words.append((thing, box))
                if thing.size < LEAST_SIZE - _SLACK:
                    yield f"{here}: {_called(thing)} is set at {thing.size:.2f} mm"
        for one, two in _on_each_other(composed.faces, words):
            yield f"{here}: {_called(one)} and {_called(two)} lie on each other"
        lines = [length for length in composed.lengths if length.page == page.number]
        for thing, length in _on_lines(composed.faces, words, lines):
            yield f"{here}: {_called(thing)} lies on a line to be measured ({length.purpose} {length.label})".rstrip()
        for thing in _in_corner(composed.faces, words, composed.kept[page.number - 1] if composed.kept else ()):
            yield f"{here}: {_called(thing)} lies in the corner that is kept for the square and the code"


def _called(thing: Drawn) -> str:
    return f"“{thing.text[:40]}”" if isinstance(thing, Words) else f"a {type(thing).__name__.lower()}"


def _in_corner(faces: Faces, words: list[tuple[Words, Box]], kept: Sequence[Box]) -> Iterator[Words]:
    """Yield words that lie in what is kept for the square and the code, whose own words are artifacts. First by upright boxes: one of
    words aslant reaches much farther than they do."""
    for thing, box in words:
        if thing.tag == "artifact" or not (near := [one for one in kept if box.grown(-_TOUCH).overlap(one) > 0.0]):
            continue
        if not thing.turn % 90.0 or any(_band(faces, thing).intersects(shapely.box(*one.sides)) for one in near):
            yield thing


def _on_each_other(faces: Faces, words: list[tuple[Words, Box]]) -> Iterator[tuple[Words, Words]]:
    """Yield words that lie on each other: first by upright boxes, then by the bands that their own letters fill."""
    if not words:
        return
    left, bottom, right, top = np.array([box.sides for _, box in words]).T
    left, bottom, right, top = left + _TOUCH, bottom + _TOUCH, right - _TOUCH, top - _TOUCH
    meet = (left[:, None] < right) & (left < right[:, None]) & (bottom[:, None] < top) & (bottom < top[:, None])
    for i, j in np.argwhere(np.triu(meet, 1)).tolist():
        one, two = words[i][0], words[j][0]
        if _band(faces, one).intersects(_band(faces, two)):
            yield one, two


def _on_lines(
    faces: Faces, words: list[tuple[Words, Box]], lines: list[LengthPromise]
) -> Iterator[tuple[Words, LengthPromise]]:
    """Yield the words that a line to be measured runs through, each once, with the line."""
    if not words or not lines:
        return
    tracks = shapely.STRtree(shapely.linestrings([(line.start, line.end) for line in lines]))
    found = tracks.query([_band(faces, thing) for thing, _ in words], predicate="intersects")
    for i, j in dict(found.T.tolist()).items():
        yield words[i][0], lines[j]


def _band(faces: Faces, words: Words) -> shapely.Polygon:
    """Return the rectangle round a line of words, turned with it; without room under the line where no letter reaches there."""
    box = words_box(faces, replace(words, turn=0.0)).grown(-_TOUCH)
    if _STANDING.fullmatch(words.text):
        box = replace(box, bottom=max(box.bottom, words.y))
    level = shapely.box(*box.sides)
    return affinity.rotate(level, words.turn, (words.x, words.y)) if words.turn else level
