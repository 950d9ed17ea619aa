"""What stands on a compass strip though nobody promised it, and what it lacks: it is cut out and worked with as a template is."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from math import cos, hypot, pi, sin

import numpy as np
import shapely

from publisher.basics import CompassPromise, Point, PrintPromise, RowPromise
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.inside_ground import areas_on, pale_lines_on, pictures_on, strokes_off
from publisher.proof.measuring.outlines import StrokeSegments
from publisher.proof.measuring.stray_ink import INSIDE_FROM
from publisher.proof.reading import PageRead, TextLine, normal, says, unbroken

CROSS_ARM = 3.0  # mm from the middle of a hole to the ends of its cross
WORDS_ROW = 3.2  # mm from a line of words over the axis to the next
OVER_AXIS_FIRST = 3.0  # mm over the axis that the lowest of these lines takes
RIM_REACH = 1.5  # mm from the finished rim to where a template marks it
ROUND = 32  # points of a hole
PIN = "pin"
HOW = "Glue to card. Pin through the cross, pencil through the hole; cut on the pencil line."
QUARTERS = "Draw two lines at right angles through the pin’s hole: they mark the quarters."
SAYINGS = (  # how a strip is used, and how quarters are found, in each language of the packs
    (HOW, QUARTERS),
    (
        "Auf Karton kleben. Nadel durchs Kreuz, Bleistift durchs Loch; auf der Bleistiftlinie schneiden.",
        "Zwei Linien im rechten Winkel durch das Nadelloch ziehen: sie teilen in Viertel.",
    ),
)


class StripInk:
    """A strip on its page: its ground, the lines that belong to it, the words that it may say."""

    def __init__(
        self,
        promise: CompassPromise,
        row: RowPromise | None,
        labels: Iterable[str],
        take_down: Callable[[str], str] | None = None,
        quarters: bool = False,
    ) -> None:
        """Work out what belongs there; ``labels``: the words of the lengths that begin at the pin; ``take_down``: how words of another
        language are read; ``quarters``: the piece has them marked, so that the strip must say how they are found."""
        self.quarters = quarters
        self.take_down = take_down or str
        self.sayings = [tuple(normal(self.take_down(words)) for words in both) for both in SAYINGS]
        self.ring = shapely.Polygon(promise.ring)
        self.ground = shapely.buffer(self.ring, -INSIDE_FROM)
        shapely.prepare(self.ground)
        self.title = title_of(row) if row is not None else ""
        self.known = sorted(filter(None, (self.title, PIN, *map(normal, labels))), key=len, reverse=True)
        points = [np.asarray(line, dtype=float) for line in _own_lines(promise)]
        starts, ends = np.concatenate([p[:-1] for p in points]), np.concatenate([p[1:] for p in points])
        none = np.zeros(len(starts))
        self.own = StrokeSegments(starts, ends, none.astype(int), none)

    def stray(self, page: PageRead, ink: Ink, lines: Sequence[TextLine]) -> Iterator[tuple[str, Point]]:
        """Yield what nobody promised, each with where it is (mm on the page): lines, areas, pictures, words."""
        for line, at in strokes_off(ink, self.ground, self.own):
            yield f"a line {ink.width[line]:.2f} mm wide", at
        for at in pale_lines_on(page, self.ground):
            yield "a pale line", at
        for _, at in areas_on(page, self.ground):
            yield "an area", at
        for at in pictures_on(page, self.ground):
            yield "a picture", at
        odd = [line for line in self.inside(lines) if not self._is_said(normal(line.text))]
        if odd and not self._is_said(self._joined(odd)):  # a word may be parted at the end of a line
            yield f"“{odd[0].text[:60]}”", odd[0].middle()

    def lacks(self, lines: Sequence[TextLine]) -> str:
        """Return the words that the strip must bear and does not; empty when it bears all."""
        said = self._joined(self.inside(lines))
        for how, quarters in self.sayings:
            if says(said, how):
                wanted = (self.title, PIN, quarters if self.quarters else "")
                return next((words for words in wanted if words and not says(said, words)), "")
        return HOW

    def inside(self, lines: Sequence[TextLine]) -> list[TextLine]:
        """Return the lines of words that stand on the strip."""
        return [line for line in lines if shapely.contains_xy(self.ring, *line.middle())]

    def _joined(self, lines: Iterable[TextLine]) -> str:
        """Return the words of some lines as one text, those whole that were parted."""
        return normal(self.take_down(unbroken(normal(" ".join(line.text for line in lines)))))

    def _is_said(self, words: str) -> bool:
        if any(says(" ".join(both), words) for both in self.sayings):
            return True
        for known in self.known:  # the words of one row may be read as one line
            if says(words, known):
                words = normal(words.replace(known, " ", 1))
        return not words


def quartered(piece: PrintPromise, radius: float) -> bool:
    """Say whether the quarters of a round piece are marked: by lines from close to its rim (mm) straight towards its centre."""
    ends = [(line.points[0], line.points[-1]) for line in piece.lines if line.kind == "draw" and len(line.points) == 2]
    inwards = [
        (a, b)
        for a, b in ends
        if abs(hypot(*a) - radius) <= RIM_REACH and abs(a[0] * b[1] - a[1] * b[0]) <= 0.01 * hypot(*a) * hypot(*b)
    ]
    return len(inwards) == 4


def title_of(row: RowPromise) -> str:
    """Return what a strip is called, as a reader would say it: its letter and name, how many are cut with it."""
    spare = f" + {row.spare} spare" if row.spare else ""
    return normal(f"{row.letter} {row.name}, cut {row.count}{spare}: compass strip")


def _own_lines(promise: CompassPromise) -> Iterator[Sequence[Point]]:
    """Yield the lines of a strip: its sides, the line from the pin to the farthest hole, crosses, holes; where there are several holes,
    the line up from each to its words."""
    yield (*promise.ring, promise.ring[0])
    (x, y), (far_x, far_y) = promise.pin, promise.pencils[0]
    long = hypot(far_x - x, far_y - y) or 1.0
    along = ((far_x - x) / long, (far_y - y) / long)
    up = (-along[1], along[0])
    yield promise.pin, promise.pencils[0]
    for at in (promise.pin, *promise.pencils):
        for way in (along, up):
            yield _from(at, way, -CROSS_ARM), _from(at, way, CROSS_ARM)
    rows = len(promise.pencils) - 1
    for at in promise.pencils:
        yield [_from(at, (cos(2 * pi * i / ROUND), sin(2 * pi * i / ROUND)), promise.hole) for i in range(ROUND + 1)]
        if rows:
            yield at, _from(at, up, OVER_AXIS_FIRST + WORDS_ROW * rows)


def _from(at: Point, way: Point, far: float) -> Point:
    return at[0] + far * way[0], at[1] + far * way[1]
