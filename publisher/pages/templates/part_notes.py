"""The words of a part's marks: matching letters, bevel angles, which way it climbs; each placed where it crosses no line."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import cached_property
from math import atan2, cos, degrees, hypot, radians, sin

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Box, Point, Pose, Purpose
from publisher.geometry import Mark, Part, line_string, polygon
from publisher.pages.templates.part_strokes import quiet_lines
from publisher.pages.templates.top_marks import TOP
from publisher.pages.type import LEAST, NOTE, Note, Setter, TypeStyle, note_at

SMALL_LETTER = NOTE.bold()  # match letters: bold, so that they are not read as part of a note
NEAR = (0.0, 1.0, 2.0, 3.5, 5.0, 7.0, 10.0)  # mm from its mark at which words are looked for
BY_ARROW = (0.0, 1.0, 2.0)  # from the point where “top” stands: farther off its arrow could be any line
FAR = (14.0, 19.0, 25.0)  # beyond them, for words that a cutter needs and that find no room nearer in any way
READ_APART = 0.4  # em: with this more between them, words on one line are not read as one
AROUND = (0, 180, 90, 270, 45, 135, 225, 315)
PLACED_LAST = (Purpose.LAP, Purpose.NAME)


def mark_notes(
    part: Part,
    pose: Pose,
    type_: Setter,
    taken: Iterable[shapely.Geometry] = (),
    tiles: Sequence[shapely.Polygon] = (),
) -> tuple[Note, ...]:
    """Return the words of the marks, each upright on the page beside its mark, clear of lines, of each other and of ``taken``; where
    the part is cut into ``tiles``, whole on one of them if that can be.

    What finds no free place is left out: words that name a place soonest; letters of joins and angles of bevels only where a part
    has no room for the smallest type, not even along it or across.
    """
    texts = [m for m in part.marks if m.text]
    if not texts:
        return ()
    room = NoteRoom(part, pose, type_, taken, tiles)
    placed = {
        number: room.place(texts[number]) for number in sorted(range(len(texts)), key=lambda i: _turn_of(texts[i]))
    }
    return tuple(note for _, note in sorted(placed.items()) if note is not None)


def _turn_of(mark: Mark) -> tuple[bool, int]:
    """Rank a mark by how soon its words are placed: those about a place stand beside its letter, which comes first."""
    return mark.name != TOP, PLACED_LAST.index(mark.purpose) + 1 if mark.purpose in PLACED_LAST else 0


NoteTry = tuple[Mark, TypeStyle, shapely.Geometry, float]  # words, their size, the lines that they keep off, their turn


class NoteRoom:
    """Free room for the words of one part's marks; what is placed takes its share."""

    def __init__(
        self,
        part: Part,
        pose: Pose,
        type_: Setter,
        taken: Iterable[shapely.Geometry],
        tiles: Sequence[shapely.Polygon] = (),
    ) -> None:
        """Begin with what is ``taken`` on the page, and with the ``tiles`` into which the part is cut there."""
        self.part, self.pose, self.type = part, pose, type_
        self.taken = [*taken]
        self.ground = polygon(part.template, pose)
        self.tiles = [*tiles]
        self.lines = shapely.union_all([self.ground.boundary, quiet_lines(part, pose)])
        shapely.prepare(self.ground)
        shapely.prepare(self.lines)

    @cached_property
    def own_lines(self) -> shapely.Geometry:
        """All lines but those of the surface, which are broken where words stand for which there is no other room."""
        lines = shapely.union_all([self.ground.boundary, quiet_lines(self.part, self.pose, surface=False)])
        shapely.prepare(lines)
        return lines

    @cached_property
    def arrow(self) -> shapely.Geometry:
        """The arrow that the word “top” belongs to: both stand on one tile."""
        arrows = [line_string(m.path.placed(self.pose)) for m in self.part.marks if m.purpose is Purpose.TOP]
        return shapely.union_all(arrows)

    def place(self, mark: Mark) -> Note | None:
        """Return the words of a mark in the first way that finds room; None when none does."""
        tiles = [tile for tile in self.tiles if mark.name != TOP or tile.covers(self.arrow)]
        grounds = ((tiles,) if tiles else ()) + ([self.ground],)
        reaches = (BY_ARROW, NEAR, FAR) if mark.name == TOP else (NEAR, FAR) if _needed(mark) else (NEAR,)
        quiet, over = [*self._ways(mark)], [*self._ways_over_lines(mark)]
        tries = (
            (*tried, reach, ground)
            for ground in grounds
            for ways in (quiet, over)
            for reach in reaches
            for tried in ways
        )
        note = next((n for tried in tries if (n := self._near(*tried)) is not None), None)
        if note is not None:
            self.taken.append(note.area(0.3, READ_APART * note.style.size))
        return note

    def _ways(self, mark: Mark) -> Iterator[NoteTry]:
        """Yield the ways to set a mark's words, the best first: in full, small, along what it belongs to, as the part lies."""
        style, small = (SMALL_LETTER, LEAST.bold()) if mark.purpose is Purpose.MATCH else (NOTE, LEAST)
        if mark.purpose is Purpose.BEVEL:  # a bare angle could be anything: said in full where there is room
            yield replace(mark, text=f"bevel {mark.text}"), style, self.lines, 0.0
        yield mark, style, self.lines, 0.0
        yield mark, small, self.lines, 0.0
        if not _needed(mark):
            return
        for turn in self._turns(mark):
            yield mark, small, self.lines, turn

    def _ways_over_lines(self, mark: Mark) -> Iterator[NoteTry]:
        """Yield the ways over lines of the part's surface, for words that must stand."""
        if not _needed(mark):
            return
        small = LEAST.bold() if mark.purpose is Purpose.MATCH else LEAST
        for turn in (0.0, *self._turns(mark)):
            yield mark, small, self.own_lines, turn

    def _turns(self, mark: Mark) -> list[float]:
        """Return the turns of words that find no room level: as what they name lies, as the part lies, and across it."""
        along = self.pose.turn
        turns = dict.fromkeys(_upright(turn) for turn in (*self._along_own(mark), along, along + 90.0))
        return [turn for turn in turns if turn]

    def _along_own(self, mark: Mark) -> Iterator[float]:
        """Yield how the line on the page lies that the words belong to: the nearest of the same name, where it is long and narrow."""
        at = shapely.Point(self.pose.apply(mark.path.points[0]))
        own = [m.path.placed(self.pose) for m in self.part.marks if mark.name and m.name == mark.name and not m.text]
        nearest = min(map(line_string, own), key=at.distance, default=at)
        if (turn := _lies(nearest)) is not None:
            yield turn

    def _near(
        self,
        mark: Mark,
        style: TypeStyle,
        lines: shapely.Geometry,
        turn: float,
        reach: tuple[float, ...],
        grounds: Sequence[shapely.Polygon],
    ) -> Note | None:
        """Return the nearest place to a mark's first point, at the distances of ``reach``, where its words touch nothing."""
        at = self.pose.apply(mark.path.points[0])
        first = note_at(mark.text, style, *at, self.type)
        wide, tall = first.own.width, first.own.height
        from_mark = Pose(*at, turn)
        for away in reach:
            notes: list[Note] = []
            for way in AROUND if away else (0,):
                c, s = cos(radians(way)), sin(radians(way))
                off = (c * (away + wide / 2) * bool(away), s * (away + tall / 2) * bool(away))
                notes.append(note_at(mark.text, style, *from_mark.apply(off), self.type, turn))
            free = self._free([note.corners(0.5) for note in notes], lines, grounds)
            if free.any():
                return notes[int(free.argmax())]
        return None

    def _free(
        self, corners: list[tuple[Point, ...]], lines: shapely.Geometry, grounds: Sequence[shapely.Polygon]
    ) -> npt.NDArray[np.bool_]:
        """Say which rectangles lie on the part, whole on one of its ``grounds``, and touch nothing."""
        boxes = shapely.polygons(np.array(corners))
        free: npt.NDArray[np.bool_] = shapely.contains(self.ground, boxes)
        free &= np.any([shapely.contains(ground, boxes) for ground in grounds], axis=0)
        for there in (lines, *self.taken) if free.any() else ():
            free &= ~shapely.intersects(there, boxes)
        return free


def _upright(turn: float) -> float:
    """Return a turn by which words lie on the same line, on no account upside down."""
    return 90.0 - (90.0 - turn) % 180.0


def _lies(line: shapely.Geometry) -> float | None:
    """Return the turn of the longer sides of the narrowest rectangle round a line, where they are twice the others; None else."""
    corners = shapely.get_coordinates(shapely.minimum_rotated_rectangle(line))
    sides = np.diff(np.pad(corners, ((0, 2), (0, 0)), mode="edge")[:3], axis=0)
    short, long = sorted(sides.tolist(), key=lambda side: hypot(*side))
    return degrees(atan2(long[1], long[0])) if hypot(*long) > 2.0 * hypot(*short) else None


def _needed(mark: Mark) -> bool:
    """Say whether a cutter needs the words of a mark: those that only name a place may be left out."""
    return mark.purpose is not Purpose.NAME or mark.name == TOP


def quiet_boxes(part: Part, pose: Pose, notes: Iterable[Note]) -> list[Box]:
    """Return where surface marks are broken: round the words of marks, and round the arrow that says which way is up."""
    arrows = [mark.path.placed(pose) for mark in part.marks if mark.purpose is Purpose.TOP]
    return [*(note.box.grown(0.5) for note in notes), *(arrow.box.grown(1.2) for arrow in arrows)]
