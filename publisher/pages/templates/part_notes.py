"""The words of a part's marks: matching letters, bevel angles, which way it climbs; each placed where it crosses no line."""

from collections.abc import Iterable
from dataclasses import replace
from math import cos, radians, sin

import shapely

from publisher.basics import Box, Pose, Purpose
from publisher.geometry import Mark, Part, polygon
from publisher.pages.templates.part_strokes import quiet_lines
from publisher.pages.templates.top_marks import TOP
from publisher.pages.type import LEAST, NOTE, Note, Setter, TypeStyle, note_at

SMALL_LETTER = NOTE.bold()  # match letters: bold, so that they are not read as part of a note
NEAR = (0.0, 1.0, 2.0, 3.5, 5.0, 7.0, 10.0)  # mm from its mark at which words are looked for
FAR = (*NEAR, 14.0, 19.0, 25.0)  # for those that a cutter needs
AROUND = (0, 180, 90, 270, 45, 135, 225, 315)


def mark_notes(part: Part, pose: Pose, type_: Setter, taken: Iterable[shapely.Geometry] = ()) -> tuple[Note, ...]:
    """Return the words of the marks, each upright on the page beside its mark, clear of lines, of each other and of ``taken``.

    What finds no free place is left out: words that name a place soonest; letters of joins and angles of bevels only where a part
    has no room for the smallest type, not even along it or across.
    """
    texts = [m for m in part.marks if m.text]
    if not texts:
        return ()
    ground = polygon(part.template, pose)
    blocked = [*taken]
    lines = shapely.union_all([ground.boundary, quiet_lines(part, pose)])
    shapely.prepare(ground)
    shapely.prepare(lines)
    few: shapely.Geometry | None = (
        None  # lines of the surface are broken where words stand for which there is no other room
    )
    notes: dict[int, Note] = {}
    along = 90.0 - (90.0 - pose.turn) % 180.0  # as the part lies, on no account upside down
    last = (Purpose.LAP, Purpose.NAME)  # words about a place stand beside its letter, which comes first
    needed = sorted(
        range(len(texts)),
        key=lambda i: (texts[i].name != TOP, last.index(texts[i].purpose) + 1 if texts[i].purpose in last else 0),
    )
    for number in needed:
        mark = texts[number]
        style = SMALL_LETTER if mark.purpose is Purpose.MATCH else NOTE
        wanted = mark.purpose is not Purpose.NAME or mark.name == TOP
        reach = FAR if wanted else NEAR
        small = LEAST.bold() if mark.purpose is Purpose.MATCH else LEAST
        note: Note | None = None
        if mark.purpose is Purpose.BEVEL:  # a bare angle could be anything: said in full where there is room
            full = replace(mark, text=f"bevel {mark.text}")
            note = _place_note(full, pose, style, reach, type_, ground, lines, blocked)
        note = note or next(
            (n for s in (style, small) if (n := _place_note(mark, pose, s, reach, type_, ground, lines, blocked))), None
        )
        if note is None and wanted and along:
            note = _place_note(mark, pose, small, reach, type_, ground, lines, blocked, along)
        if note is None and wanted:
            if few is None:
                few = shapely.union_all([ground.boundary, quiet_lines(part, pose, surface=False)])
            across = 90.0 - (-along) % 180.0
            tries = (
                _place_note(mark, pose, small, reach, type_, ground, few, blocked, turn)
                for turn in (0.0, along, across)
            )
            note = next((n for n in tries if n), None)
        if note:
            blocked.append(note.area(0.3))
            notes[number] = note
    return tuple(notes[number] for number in sorted(notes))


def quiet_boxes(part: Part, pose: Pose, notes: Iterable[Note]) -> list[Box]:
    """Return where surface marks are broken: round the words of marks, and round the arrow that says which way is up."""
    arrows = [mark.path.placed(pose) for mark in part.marks if mark.purpose is Purpose.TOP]
    return [*(note.box.grown(0.5) for note in notes), *(arrow.box.grown(1.2) for arrow in arrows)]


def _place_note(
    mark: Mark,
    pose: Pose,
    style: TypeStyle,
    reach: tuple[float, ...],
    type_: Setter,
    ground: shapely.Polygon,
    lines: shapely.Geometry,
    taken: list[shapely.Geometry],
    turn: float = 0.0,
) -> Note | None:
    """Return the nearest place to a mark's first point, at the distances of ``reach``, where its words, turned so, touch nothing."""
    at = pose.apply(mark.path.points[0])
    first = note_at(mark.text, style, *at, type_)
    wide, tall = first.own.width, first.own.height
    from_mark = Pose(*at, turn)
    for away in reach:
        for way in AROUND if away else (0,):
            c, s = cos(radians(way)), sin(radians(way))
            off = (c * (away + wide / 2) * bool(away), s * (away + tall / 2) * bool(away))
            note = note_at(mark.text, style, *from_mark.apply(off), type_, turn)
            box = note.area(0.5)
            if ground.contains(box) and not lines.intersects(box) and not any(t.intersects(box) for t in taken):
                return note
    return None
