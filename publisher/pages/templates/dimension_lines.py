"""Lengths that check a cut piece, drawn on its template: a line with arrow heads and its length beside it, in mm and inches.

They are set when all else of a template stands, so that they move nothing. An end at an edge lies where the finished piece ends: on the
pencil line round a template that is traced, which is drawn smaller by the trace allowance.
"""

from collections.abc import Iterable, Iterator, Sequence
from math import atan2, cos, degrees, dist, pi

import numpy as np
import shapely
from shapely.ops import substring

from publisher.basics import Box, Layer, LengthPromise, Path, Point, Pose, polar, polyline, record
from publisher.basics.wording import LengthUnit, say_length
from publisher.geometry import Dimension, Part, dimensions_of, polygon
from publisher.pages.model import Drawn, Fill, Stroke
from publisher.pages.templates.part_strokes import is_texture, line_string, quiet_lines, template_marks
from publisher.pages.type import DIMENSION, LEAST, NOTE, Note, Setter, TypeStyle, note_at

ARROW = 2.2  # mm, length of an arrow head; ISO 129-1 draws it with 30°
ARROW_HALF = pi / 12.0
OFF_LINE = 1.0  # mm from a line to the words beside it
OFF_END = 1.4  # and from its end to words beyond it
WORDS_CLEAR = 0.6  # mm round words
DIMENSION_CLEAR = 0.4  # mm from a line to words of others
BESIDE_LINE = 0.6  # mm beside it and its words where lines of a surface are broken
OFF_ROW = (0.8, -0.8, 1.6, -1.6)  # mm by which a line is moved off a row of the surface
HIDDEN_ROW = 4.0 * BESIDE_LINE  # mm of a row along a line: more than of a joint that it crosses
OFF_AXIS = 1e-6  # mm by which a line may be off an axis
ALONG = (0.5, 0.3, 0.7, 0.15, 0.85)  # of the line, where words are looked for beside it


@record
class DimensionLine:
    """A length in its place on the page: from ``start`` to ``end``, with its words."""

    start: Point
    end: Point
    length: float
    note: Note

    def drawn(self, setter: Setter) -> tuple[Drawn, ...]:
        """Return its line, its arrow heads and its words."""
        heads = tuple(_head(tip, other) for tip, other in ((self.start, self.end), (self.end, self.start)))
        line = Stroke(DIMENSION, (polyline((self.start, self.end)),), Layer.DIMENSIONS, None, "figure")
        return (line, Fill(0.0, heads, Layer.DIMENSIONS, None, "figure"), *self.note.drawn(setter))

    @property
    def quiet(self) -> tuple[Box, ...]:
        """Boxes in which lines of a surface are broken: round its words, and along it where it runs level or upright."""
        track = Box.round((self.start, self.end))
        along = (track.grown(BESIDE_LINE),) if min(track.width, track.height) < OFF_AXIS else ()
        return (self.note.box.grown(BESIDE_LINE), *along)

    @property
    def area(self) -> shapely.Polygon:
        """What its line and arrow heads take, with room beside them: where nothing is hatched and no other words stand."""
        return shapely.LineString((self.start, self.end)).buffer(ARROW / 2.0)

    def promise(self, page: int) -> LengthPromise:
        """Return the promise of its length."""
        return LengthPromise(page, self.start, self.end, self.length, "dimension", self.note.text)


def said_dimension(dimension: Dimension, unit: LengthUnit) -> str:
    """Return the words of a length."""
    return dimension.words.format(*(say_length(length, first=unit) for length in dimension.lengths))


def said_off_part(part: Part, unit: LengthUnit) -> tuple[str, ...]:
    """Return as sentences the lengths of a part that end off it, where no template can show them."""
    said = [said_dimension(one, unit) for one in dimensions_of(part) if not one.lines]
    return tuple(f"{text[:1].upper()}{text[1:]}." for text in said)


def dimension_lines(
    part: Part,
    pose: Pose,
    setter: Setter,
    unit: LengthUnit,
    taken: Iterable[shapely.Geometry],
    within: shapely.Geometry | None = None,
) -> tuple[DimensionLine, ...]:
    """Return the lengths of a part as they stand on its page, clear of what is ``taken`` and of each other; those that find no room
    are left out. ``within``: where alone they may stand, such as a tile's own area."""
    found: list[DimensionLine] = []
    blocked = [*taken]
    room: _Room | None = None
    for dimension in dimensions_of(part):
        if not dimension.lines:
            continue
        room = room or _Room(part, pose, within)
        words = said_dimension(dimension, unit)
        # the card is cut smaller than the piece by twice what the pencil adds: its own reading would be taken for a wrong print
        tries = (f"finished {words}", words) if dimension.across and part.trace_allowance else (words,)
        tracks = shapely.union_all([other.area for other in found])
        clear = shapely.union_all(blocked)
        line = next((at for said in tries if (at := room.placed(setter, dimension, said, pose, clear, tracks))), None)
        if line:
            found.append(line)
            track = shapely.LineString((line.start, line.end))
            # two that check one hole meet in its middle
            own = substring(track, 0.0, track.length - 2.0 * ARROW).buffer(DIMENSION_CLEAR + ARROW / 4.0)
            blocked += [line.note.area(WORDS_CLEAR), own]
    return tuple(found)


class _Room:
    """Where lengths may stand on a part that lies on its page."""

    def __init__(self, part: Part, pose: Pose, within: shapely.Geometry | None) -> None:
        self.ground = polygon(part.template, pose)
        whole = polygon(part.outline, pose)
        if within is not None:
            self.ground, whole = self.ground.intersection(within), whole.intersection(within)
        self.lines = shapely.union_all([polygon(part.template, pose).boundary, quiet_lines(part, pose)])
        self.reach = shapely.Polygon(whole.exterior) if isinstance(whole, shapely.Polygon) else whole
        if part.half:  # where nothing else shows that the piece goes on
            drawn = shapely.Polygon(polygon(part.template.outer, pose)).buffer(part.trace_allowance)
            self.reach = self.reach.intersection(drawn)
        self.reach = self.reach.buffer(0.01)  # into a hole a line may lead, over the rim it may not
        self.rim = whole.boundary
        texture = [line_string(mark.path.placed(pose)) for mark in template_marks(part) if is_texture(mark)]
        self.rows = np.array(texture, dtype=object)
        self.holes = [polygon(hole, pose) for hole in part.template.holes]
        for geometry in (self.ground, self.lines, self.reach):
            shapely.prepare(geometry)

    def placed(
        self,
        setter: Setter,
        dimension: Dimension,
        words: str,
        pose: Pose,
        taken: shapely.Geometry,
        tracks: shapely.Geometry,
    ) -> DimensionLine | None:
        """Return the first line and the first place of its words that are clear, these of the ``tracks`` of other lengths too; large
        words before small ones."""
        for style in (NOTE, LEAST):
            for start, end in self._off_rows([(pose.apply(a), pose.apply(b)) for a, b in dimension.lines]):
                track = shapely.LineString((start, end))
                if not self.reach.covers(track) or track.dwithin(taken, DIMENSION_CLEAR) or self._crosses_a_hole(track):
                    continue
                own_lines = track.buffer(WORDS_CLEAR)
                for note in _notes(words, style, start, end, setter):
                    area = note.area(WORDS_CLEAR)
                    clear = self.ground.covers(area) and not self.lines.intersects(area) and not tracks.intersects(area)
                    if clear and not area.intersects(taken) and not note.area().intersects(own_lines):
                        return DimensionLine(start, end, dimension.lengths[0], note)
        return None

    def _off_rows(self, lines: Sequence[tuple[Point, Point]]) -> Iterator[tuple[Point, Point]]:
        """Yield lines, first those that hide no row of the surface, then others moved off it along the edges at which they end."""
        hiding = [line for line in lines if self._hides_a_row(*line)]
        yield from (line for line in lines if line not in hiding)
        for start, end in hiding:
            away = atan2(end[1] - start[1], end[0] - start[0]) + pi / 2.0
            for by in OFF_ROW:
                moved = polar(by, away, start), polar(by, away, end)
                on_edges = all(self.rim.distance(shapely.Point(at)) < OFF_AXIS for at in moved)
                if on_edges and not self._hides_a_row(*moved):
                    yield moved
        yield from hiding

    def _hides_a_row(self, start: Point, end: Point) -> bool:
        """Say whether a line would run along a row of the surface, which is broken beside it: better across its short joints."""
        beside = shapely.LineString((start, end)).buffer(BESIDE_LINE, cap_style="flat")
        return bool(shapely.length(shapely.intersection(self.rows, beside)).max(initial=0.0) > HIDDEN_ROW)

    def _crosses_a_hole(self, track: shapely.LineString) -> bool:
        """Say whether a line runs through an opening in which it does not end: it would read as if it were measured to it."""
        ends = [shapely.Point(at) for at in track.coords]
        return any(hole.intersects(track) and not any(hole.covers(end) for end in ends) for hole in self.holes)


def _notes(words: str, style: TypeStyle, start: Point, end: Point, setter: Setter) -> Iterator[Note]:
    """Yield where a line's words may stand: along it, level beside it, then beyond its ends."""
    length, way = dist(start, end), atan2(end[1] - start[1], end[0] - start[0])
    turn = (degrees(way) + 90.0) % 180.0 - 90.0  # never upside down
    turn = 90.0 if abs(turn + 90.0) < 1e-9 else turn
    bare = note_at(words, style, 0.0, 0.0, setter).own
    off = bare.height / 2.0 + OFF_LINE
    sides = (way + pi / 2.0, way - pi / 2.0)
    for share in ALONG if length >= bare.width else ():
        at = polar(share * length, way, start)
        if abs(share - 0.5) * length + bare.width / 2.0 <= length / 2.0:
            yield from (note_at(words, style, *polar(off, side, at), setter, turn) for side in sides)
    for share in ALONG:
        at = polar(share * length, way, start)
        for side in sides:
            away = bare.width / 2.0 * abs(cos(side)) + bare.height / 2.0 * abs(cos(side - pi / 2.0)) + OFF_LINE
            yield note_at(words, style, *polar(away, side, at), setter)
    for at, out in ((end, way), (start, way + pi)):
        away = bare.width / 2.0 * abs(cos(out)) + bare.height / 2.0 * abs(cos(out - pi / 2.0)) + OFF_END
        yield note_at(words, style, *polar(away, out, at), setter)


def _head(tip: Point, other: Point) -> Path:
    """Return an arrow head at a line's end."""
    back = atan2(other[1] - tip[1], other[0] - tip[0])
    barbs = (polar(ARROW / cos(ARROW_HALF), back + side, tip) for side in (ARROW_HALF, -ARROW_HALF))
    return polyline((tip, *barbs), closed=True)
