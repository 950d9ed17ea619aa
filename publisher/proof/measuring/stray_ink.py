"""What stands inside the outlines of a page though nobody promised it: lines of any width and dash, areas, pictures, words.

A thing inside an outline is its own (a cut line, a line of the piece, a length, a match mark, words promised there), or it is furniture
of a known form in a known place: what belongs to a label stands in the label's box, hatching in what falls away, a tag round a letter.
"""

import re
from collections.abc import Iterator, Sequence
from math import hypot

import numpy as np
import shapely

from publisher.basics import Box, OutlinePromise, Point, Pose, Promises, record
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.inside_ground import OWN_LINE, areas_on, pale_lines_on, pictures_on, strokes_off
from publisher.proof.measuring.outlines import StrokeSegments, shown_ground
from publisher.proof.measuring.strewn import placed_lines
from publisher.proof.reading import Array, PageRead, PaintedPath, TextLine, normal, says

INSIDE_FROM = 0.4  # mm inside an outline where ink begins to be inside: half the cut line, and what is written
IN_BOX = 0.6  # mm by which what belongs to a label may reach over its box
HAIR_WIDE = 0.2  # mm: hatching and leaders are no wider
LEADER_MOST = 14.0  # mm
SIGN_NEAR, CORNER_NEAR = 3.0, 1.5  # mm from a point's sign and from its corner to the ends of the line between them
TAG_MOST = 30.0  # mm across a tag round a letter
TOP_NEAR, TOP_MOST = (
    7.0,
    7.5,
)  # mm from the word, short or long, to the middle of its arrow or head, and how long that is
HEAD_MOST = 5.0  # mm across an arrow head
HEAD_AT = 0.15  # mm from its tip to the end of the line that it ends
GROUND_FROM = 0.9  # grey of the ground of a glue area
SIGNS = ("●", "○")
TOP, ARROW = "top", "arrow"
SEAM_WORDS = re.compile(
    r"glue area(?:: page \d+ lies on it)?|glue|trim line(?:: cut, then (?:lay )?over page \d+(?: lay)?)?|trim|remove"
)
LONG_WORD = 14  # letters of a word of a name that may be broken over lines
LABELS = ("side:", "tile:")  # what pages carry as blocks of words of a piece or a tile


@record
class StrayInk:
    """Something inside an outline that nobody promised: what it is, where (mm on the page), the outline."""

    page: int
    what: str
    at: Point
    outline: OutlinePromise


class InsideOutlines:
    """The outlines of one page, and all that may stand inside them."""

    def __init__(
        self, promises: Promises, page: PageRead, outlines: Sequence[OutlinePromise], lines: Sequence[TextLine]
    ) -> None:
        """Collect what was promised here."""
        self.page, self.outlines, self.lines = page, outlines, lines
        self.prints = {piece.part: piece for piece in promises.prints}
        self.grounds = [shapely.buffer(shown_ground(outline), -INSIDE_FROM) for outline in outlines]
        self.ground = shapely.union_all(self.grounds)
        shapely.prepare(self.ground)
        number = page.number
        self.labels = [
            where.box.grown(IN_BOX)
            for where in promises.carried
            if where.page == number and where.key.startswith(LABELS)
        ]
        boxes = (*((one.page, one.box) for one in promises.furniture), *((one.page, one.box) for one in promises.codes))
        self.furniture = [box.grown(IN_BOX) for page_of, box in boxes if page_of == number]
        self.lengths = [one for one in promises.lengths if one.page == number]
        self.seams = [
            (at, seam) for seam in promises.seams for on, at in zip(seam.pages, seam.at, strict=True) if on == number
        ]
        texts = [normal(text.text) for text in promises.texts if text.page == number]
        self.said = {
            *texts,
            *(normal(line.label) for line in self.lengths),
            *(normal(seam.label) for _, seam in self.seams),
        }
        here = [self.prints[outline.part] for outline in outlines if outline.part in self.prints]
        self.letters = {normal(piece.letter) for piece in here}
        parts = {piece.part for piece in here}
        names = {normal(row.name) for row in promises.rows if row.part in parts}
        self.said |= names
        self.long = [word for name in names for word in name.split() if len(word) >= LONG_WORD]
        self.at_edges = {
            normal(words) for piece in here for words in (*piece.names, *(word.text for word in piece.words))
        }
        self.tops = [line.area() for line in lines if normal(line.text) == TOP]
        self.waste = shapely.union_all([self._waste(outline) for outline in outlines])
        self.corners = _corners(promises, outlines)
        self.own, self.tips = self._own_lines()

    def _waste(self, outline: OutlinePromise) -> shapely.Geometry:
        """Return what falls away of a copy: its openings, and the foam behind its rabbets."""
        piece = self.prints.get(outline.part)
        rings = (*outline.rings[1:], *(piece.strips if piece else ()))
        return shapely.union_all([shapely.Polygon(outline.pose.apply_all(ring)).buffer(0.0) for ring in rings])

    def _own_lines(self) -> tuple[StrokeSegments, Array]:
        """Return every promised line of the page as segments, and the points where arrow heads may stand."""
        straight = [(length.start, length.end) for length in self.lengths]
        tips: list[Point] = [end for ends in straight for end in ends]
        placed = [placed_lines(Pose(), straight)]
        for outline in self.outlines:
            piece = self.prints.get(outline.part)
            lines = piece.lines if piece else ()
            placed.append(
                placed_lines(outline.pose, [*((*ring, ring[0]) for ring in outline.rings), *(x.points for x in lines)])
            )
            tips += (point for line in lines if line.kind == ARROW for point in outline.pose.apply_all(line.points))
        inner = [owner[1:] == owner[:-1] for _, owner in placed]
        starts = np.concatenate([points[:-1][same] for (points, _), same in zip(placed, inner, strict=True)])
        ends = np.concatenate([points[1:][same] for (points, _), same in zip(placed, inner, strict=True)])
        none = np.zeros(len(starts))
        at = np.array(tips, dtype=float).reshape(-1, 2)
        return StrokeSegments(starts, ends, none.astype(int), none), at

    def stray(self, ink: Ink) -> Iterator[StrayInk]:
        """Yield what nobody promised: lines, then areas, pictures, words."""
        yield from self._lines(ink)
        yield from self._areas()
        for at in pictures_on(self.page, self.ground):
            yield self._found("a picture", at)
        for line in self.lines:
            if shapely.contains_xy(self.ground, *line.middle()) and not self._is_said(line):
                yield self._found(f"“{line.text[:60]}”", line.middle())

    def _found(self, what: str, at: Sequence[float]) -> StrayInk:
        here = shapely.Point(at)
        near = min(range(len(self.grounds)), key=lambda i: self.grounds[i].distance(here))
        return StrayInk(self.page.number, what, (float(at[0]), float(at[1])), self.outlines[near])

    def _lines(self, ink: Ink) -> Iterator[StrayInk]:
        for line, at in strokes_off(ink, self.ground, self.own):
            points, width, dashed = ink.line(line), float(ink.width[line]), bool(ink.dashed[line])
            if not self._is_furniture(points, width, dashed):
                yield self._found(f"a line {width:.2f} mm wide", at)
        for at in pale_lines_on(self.page, self.ground):
            yield self._found("a pale line", at)

    def _is_furniture(self, points: Array, width: float, dashed: bool) -> bool:
        """Say whether a line is of a known form in a known place."""
        box = Box(*points.min(axis=0).tolist(), *points.max(axis=0).tolist())
        if any(_holds(other, box) for other in (*self.labels, *self.furniture)) or self._is_of_a_seam(points, dashed):
            return True
        if self._is_tag(points, box) or (len(points) == 2 and not dashed and self._is_top(box)):
            return True
        if dashed or width > HAIR_WIDE:
            return False
        return self._is_leader(points) or bool(
            shapely.covers(shapely.buffer(self.waste, OWN_LINE), shapely.LineString(points))
        )

    def _is_of_a_seam(self, points: Array, dashed: bool) -> bool:
        for (x, y), seam in self.seams:
            away = np.abs(points - (x, y))
            if np.hypot(*away.T).max() <= seam.radius + OWN_LINE or (dashed and away.max(axis=0).min() <= OWN_LINE):
                return True
        return False

    def _is_tag(self, points: Array, box: Box) -> bool:
        if len(points) < 4 or not np.array_equal(points[0], points[-1]) or max(box.width, box.height) > TAG_MOST:
            return False
        inner = [line for line in self.lines if shapely.Point(line.middle()).within(shapely.Polygon(points))]
        return len(inner) == 1 and normal(inner[0].text) in self.letters

    def _is_top(self, box: Box) -> bool:
        middle = shapely.Point((box.left + box.right) / 2.0, (box.bottom + box.top) / 2.0)
        return hypot(box.width, box.height) <= TOP_MOST and any(
            shapely.distance(middle, word) <= TOP_NEAR for word in self.tops
        )

    def _is_leader(self, points: Array) -> bool:
        if len(points) != 2 or np.hypot(*(points[1] - points[0])) > LEADER_MOST:
            return False
        signs = np.array([line.middle() for line in self.lines if normal(line.text) in SIGNS]).reshape(-1, 2)
        corners = np.array(self.corners).reshape(-1, 2)
        for start, end in (points, points[::-1]):
            if _nearest(signs, start) <= SIGN_NEAR and _nearest(corners, end) <= CORNER_NEAR:
                return True
            for (x, y), seam in self.seams:
                if hypot(end[0] - x, end[1] - y) <= seam.radius + CORNER_NEAR and self._is_at(
                    start, normal(seam.label)
                ):
                    return True
        return False

    def _is_at(self, point: Array, words: str) -> bool:
        """Say whether such words stand close to a point."""
        here = shapely.Point(point)
        return any(
            normal(line.text) == words and shapely.distance(line.area(), here) <= SIGN_NEAR for line in self.lines
        )

    def _areas(self) -> Iterator[StrayInk]:
        for piece, at in areas_on(self.page, self.ground):
            if not self._is_known_area(piece, piece.box):
                yield self._found("an area", at)

    def _is_known_area(self, piece: PaintedPath, box: Box) -> bool:
        if any(_holds(other, box) for other in (*self.labels, *self.furniture)):
            return True
        if piece.fill_grey is not None and piece.fill_grey >= GROUND_FROM:
            return any(min(abs(box.left - x), abs(box.top - y)) <= OWN_LINE for (x, y), _ in self.seams)
        return all(self._is_head(line) for line in piece.lines())

    def _is_head(self, points: Array) -> bool:
        across = np.ptp(points, axis=0)
        if across.max() > HEAD_MOST:
            return False
        at_tip = any(_nearest(self.tips, point) <= HEAD_AT for point in points)
        return at_tip or (
            len(points) == 4 and self._is_top(Box(*points.min(axis=0).tolist(), *points.max(axis=0).tolist()))
        )

    def _is_said(self, line: TextLine) -> bool:
        words, (x, y) = normal(line.text), line.middle()
        if any(box.left <= x <= box.right and box.bottom <= y <= box.top for box in self.labels):
            return True
        known = words in self.at_edges or words.removeprefix("bevel ") in self.at_edges or words in self.letters
        signed = words in SIGNS or words == TOP or SEAM_WORDS.fullmatch(words) is not None
        broken = len(words) > 1 and any(words in long for long in self.long)
        return known or signed or broken or any(says(words, said) or says(said, words) for said in self.said if said)


def _corners(promises: Promises, outlines: Sequence[OutlinePromise]) -> list[Point]:
    """Return the points of copies that are measured out on board sheets."""
    own: dict[str, set[Point]] = {}
    for layout in promises.layouts:
        for place in layout.places:
            own.setdefault(place.part, set()).update(measure.own for measure in place.measures)
    return [outline.pose.apply(at) for outline in outlines for at in sorted(own.get(outline.part, ()))]


def _holds(outer: Box, inner: Box) -> bool:
    return bool(
        outer.left <= inner.left
        and outer.bottom <= inner.bottom
        and outer.right >= inner.right
        and outer.top >= inner.top
    )


def _nearest(points: Array, at: Array) -> float:
    return float(np.hypot(*(points - at).T).min()) if len(points) else float("inf")
