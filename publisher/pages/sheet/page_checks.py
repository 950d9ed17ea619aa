"""What must hold for every composed page, whoever drew it."""

from math import cos, radians, sin

import numpy as np

from publisher.basics import Box, Check, Findings, PagePromise, Severity, checked, record
from publisher.pages.model import Drawn, Fill, Page, Picture, Stroke, Words
from publisher.pages.type import LEAST_SIZE, Faces

_SLACK = 1e-6  # mm, of floats
_TOUCH = 0.2  # mm by which the boxes of words may overlap on each side: they hold accents and descenders that most words lack


@record
class Composed:
    """The pages of a pack as composed, with their promises (printable limits), the boxes round the ink of all that is drawn on
    them (``ink_box``), and fonts."""

    pages: tuple[Page, ...]
    promises: tuple[PagePromise, ...]
    boxes: tuple[tuple[Box | None, ...], ...]
    faces: Faces


def words_box(faces: Faces, words: Words) -> Box:
    """Return the upright box round a line of words: from descent to the height of capitals with accents (mm)."""
    face = next((f for f in (faces.regular, faces.bold, *faces.named) if f.name == words.font), faces.regular)
    width, low, high = face.width(words.text) * words.size, -0.22 * words.size, 0.76 * words.size
    if not words.turn:
        return Box(words.x, words.y + low, words.x + width, words.y + high)
    c, s = cos(radians(words.turn)), sin(radians(words.turn))
    xs = [words.x + a * c - b * s for a in (0.0, width) for b in (low, high)]
    ys = [words.y + a * s + b * c for a in (0.0, width) for b in (low, high)]
    return Box(min(xs), min(ys), max(xs), max(ys))


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
    xs, ys = zip(*points, strict=True)
    half = thing.style.width / 2 if isinstance(thing, Stroke) else 0.0
    box = Box(min(xs) - half, min(ys) - half, max(xs) + half, max(ys) + half)
    if thing.clip is None:
        return box
    clip = thing.clip
    return Box(
        max(box.left, clip.left), max(box.bottom, clip.bottom), min(box.right, clip.right), min(box.top, clip.top)
    )


@checked(
    "pages/over-the-limit",
    "Nothing is drawn outside the printable limit",
    "what lies outside may be lost on a printer that cannot reach it, and nobody would know",
    Severity.ERROR,
)
def inside_the_limit(composed: Composed, check: Check[Composed]) -> Findings:
    """Compare the reach of all ink with the limit of its page."""
    looked = 0
    for page, promise, boxes in zip(composed.pages, composed.promises, composed.boxes, strict=True):
        limit = promise.limit
        for thing, box in zip(page.drawn, boxes, strict=True):
            if box is None:
                continue
            looked += 1
            over = max(limit.left - box.left, limit.bottom - box.bottom, box.right - limit.right, box.top - limit.top)
            if over > _SLACK:
                what = (
                    f"the words “{thing.text[:40]}”"
                    if isinstance(thing, Words)
                    else f"a {type(thing).__name__.lower()}"
                )
                yield check.found(
                    f"page {page.number} ({page.title}): {what} lies {over:.2f} mm outside the printable limit",
                    subject=f"page {page.number}",
                    hint="shorten the text, or use a larger paper",
                    value=over,
                    limit=0.0,
                )
    return looked


@checked(
    "pages/words-too-small",
    "No words are set too small to read",
    f"under {LEAST_SIZE:g} mm the x-height is less than the 1.2 mm that labels may have by Regulation (EU) 1169/2011, article 13",
    Severity.ERROR,
)
def words_readable(composed: Composed, check: Check[Composed]) -> Findings:
    """Look at the size of all words."""
    looked = 0
    for page in composed.pages:
        for thing in page.drawn:
            if not isinstance(thing, Words):
                continue
            looked += 1
            if thing.size < LEAST_SIZE - _SLACK:
                yield check.found(
                    f"page {page.number} ({page.title}): “{thing.text[:40]}” is set at {thing.size:.2f} mm",
                    subject=f"page {page.number}",
                    hint="shorten the text",
                    value=thing.size,
                    limit=LEAST_SIZE,
                )
    return looked


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
            hint="name a TrueType font that has it under fonts: in the spec, or write it otherwise",
        )
    return looked


_OURS = 8  # letters of a part, its copy or a distance, as drawn in figures


@checked(
    "pages/words-collide",
    "No words lie on other words",
    "two words in one place cannot be read, and a letter of a part misread spoils the board",
    Severity.WARNING,
)
def words_apart(composed: Composed, check: Check[Composed]) -> Findings:
    """Compare the boxes of all words of a page with each other."""
    looked = 0
    for page, boxes in zip(composed.pages, composed.boxes, strict=True):
        words = [(thing, box) for thing, box in zip(page.drawn, boxes, strict=True) if box and isinstance(thing, Words)]
        looked += len(words)
        if not words:
            continue
        placed = [thing for thing, _ in words]
        left, bottom, right, top = np.array([(b.left, b.bottom, b.right, b.top) for _, b in words]).T
        left, bottom, right, top = left + _TOUCH, bottom + _TOUCH, right - _TOUCH, top - _TOUCH
        meet = (left[:, None] < right) & (left < right[:, None]) & (bottom[:, None] < top) & (bottom < top[:, None])
        for one, two in np.argwhere(np.triu(meet, 1)):
            yield check.found(
                f"page {page.number} ({page.title}): “{placed[one].text[:40]}” and “{placed[two].text[:40]}” lie on each other",
                subject=f"page {page.number}",
                hint=_apart(placed[one], placed[two]),
            )
    return looked


def _apart(one: Words, two: Words) -> str:
    """Return what to do about two words that lie on each other: a text of a line or more is its writer's, a letter or a number ours."""
    longer = max((one.text, two.text), key=len)
    if len(longer) > _OURS:
        return f"shorten the text “{longer[:40]}”"
    return (
        "these stand beside pieces too small for them: nothing in the spec is wrong; look the piece up in the cut list"
    )


CHECKS: tuple[Check[Composed], ...] = (inside_the_limit, words_readable, letters_drawable, words_apart)
