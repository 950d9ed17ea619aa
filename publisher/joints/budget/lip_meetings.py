"""Meetings of what lifts off with what it goes into: the play between both, which paint, board and print scale take. Mm.

A room between walls that stand apart as they are printed is narrower by their board: W − 2t between two walls whose outsides are
printed W mm apart, so that the play is s·(W − L) − 2t round a lip printed L mm long at the print scale s. How many boards are in it
goes by how the walls are joined; they are counted on the assembly itself, put together of board a little thicker.
"""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import shapely

from publisher.basics import record
from publisher.basics.wording import series
from publisher.design import Board
from publisher.joints.assembled import Assembled
from publisher.joints.model import Meeting
from publisher.joints.outlines import Array
from publisher.joints.panels import corners_of
from publisher.joints.wholes import LIFT_PLAY, Lip, LipRoom, PlacedWhole, lips_of, whole_of_thicker_board

THICKER = 0.05
"""mm: by so much thicker is the board of which a whole is put together to see which plays it takes."""

WALLS = 2.0
"""Of a board whose part in a play is not known: as between two walls whose outsides are drawn. An assumption."""

NO_BOARD = 1e-3
"""Boards: a play into which less than this comes is printed as it is."""


@record
class _Play:
    """The play across one way (mm), and how many thicknesses of each board it is less for thicker board; None: not known."""

    play: float
    boards: tuple[float | None, ...]


@record
class _Otherwise:
    """The lips of a whole that is cut from a board thicker by so many mm (below zero: thinner)."""

    by: float
    lips: tuple[Lip, ...]


def of_lips(subject: Assembled) -> Iterator[Meeting]:
    """Yield the meetings of everything that lifts off and goes into what carries it, where no fit says how."""
    for whole in subject.things:
        lips = [lip for lip in lips_of(whole) if not _said(subject, lip)]
        others: dict[str, tuple[_Otherwise, ...]] = {}
        for lip in lips:
            boards = _boards(subject, lip)
            others |= {b.id: _otherwise(subject, whole, b) for b in boards if b.id not in others}
            plays = _plays(lip, [others[b.id] for b in boards])
            yield from _meetings(whole.plan.name, lip, boards, plays)


def _said(subject: Assembled, lip: Lip) -> bool:
    """Tell whether the designer has said how a thing fits into what carries it: by a fit into that, or of that into it."""
    owners = {lip.thing.thing.assembly, lip.on.thing.assembly}
    owners |= {panel.part.id for one in (lip.thing, lip.on) for panel in one.panels}
    return any({fit.into.partition(".")[0], fit.goes_fact.partition(".")[0]} <= owners for fit in subject.design.fits)


def _boards(subject: Assembled, lip: Lip) -> list[Board]:
    used = {panel.part.board for one in (lip.thing, lip.on) for panel in one.panels}
    return [board for board in subject.design.boards if board.id in used]


def _otherwise(subject: Assembled, whole: PlacedWhole, board: Board) -> tuple[_Otherwise, ...]:
    """Return the lips of a whole of thicker and of thinner board, as far as it can be put together of that."""
    parts = {part.id: part for part in subject.parts}
    made = ((by, whole_of_thicker_board(subject.design, whole.plan, parts, board.id, by)) for by in (THICKER, -THICKER))
    return tuple(_Otherwise(by, lips_of(one)) for by, one in made if one is not None)


def _plays(lip: Lip, others: list[tuple[_Otherwise, ...]]) -> list[_Play]:
    """Return the plays of a lip across every way; ``others``: by board, the lips of the same whole of a little more or less of it."""
    found: dict[_Play, None] = {}
    for room in lip.rooms:
        now = room.plays
        boards = [_taken(lip, room, now, made) for made in others]
        for k, play in enumerate(now):
            taken = tuple(None if of is None else round(float(of[k]), 3) + 0.0 for of in boards)
            found[_Play(round(float(play), 6), taken)] = None
    return list(found)


def _same(lip: Lip, room: LipRoom, others: tuple[Lip, ...]) -> LipRoom | None:
    """Return the room among others that is this one."""
    names = lip.thing.thing.name, lip.on.thing.name
    rooms = [r for one in others if (one.thing.thing.name, one.on.thing.name) == names for r in one.rooms]
    return min(rooms, key=lambda one: float(shapely.hausdorff_distance(one.room, room.room)), default=None)


def _taken(lip: Lip, room: LipRoom, now: Array, others: tuple[_Otherwise, ...]) -> Array | None:
    """Return how many thicknesses of a board each play of a room is less for thicker board; None where no other board tells, as
    nothing goes into that room there, or the whole cannot be put together of it."""
    for made in others:
        there = _same(lip, room, made.lips)
        if there is not None:
            return np.asarray((now - there.across(room.ways)) / made.by)
    return None


def _meetings(whole: str, lip: Lip, boards: list[Board], plays: list[_Play]) -> Iterator[Meeting]:
    """Yield the meetings that bind: that with the least to spare, and those that bind the print scale and the thickness of a board."""
    every = [met for play in plays for met in _of_play(lip, boards, play)]
    bind = [
        min(every, key=lambda met: round(met.printed - met.unprinted_least, 6)),
        max(every, key=lambda met: round(met.scale_for(met.unprinted_least), 6)),
    ]
    for board in boards:
        own = [met for met in every if met.board == board.id]
        if own:
            bind += [min(own, key=lambda met: met.takes_board()[1]), max(own, key=lambda met: met.takes_board()[0])]
    name = f"lift.{whole}.{lip.thing.thing.name}.{lip.on.thing.name}"
    for number, met in enumerate(dict.fromkeys(bind), 1):
        yield replace(met, name=name if number == 1 else f"{name}.{number}")


def _of_play(lip: Lip, boards: list[Board], play: _Play) -> Iterator[Meeting]:
    """Yield the meeting of a play with each board that is in it; of what is printed alone, where none is.

    Paint takes ``LIFT_PLAY``, and the spread of a board comes on top as many times as it is in it, once where none is.
    """
    name, on, place = lip.thing.thing.name, lip.on.thing.name, lip.thing.thing.place
    lowest = min(lip.thing.panels, key=lambda panel: float(panel.frame.carry(corners_of(panel.part))[:, 2].min()))
    what = f"play of {name}, which lifts off, in {on}"
    counted = [(board, count) for board, count in zip(boards, play.boards, strict=True) if count is not None]
    inside = [(board, count) for board, count in counted if abs(count) > NO_BOARD]
    unsure = [board for board, count in zip(boards, play.boards, strict=True) if count is None]
    spread = sum(abs(count) * board.spread for board, count in inside) + WALLS * sum(board.spread for board in unsure)
    unknown = tuple(board.id for board in unsure)
    if unsure:
        what += f" (how often the thickness of {series(unknown)} is in it is not known, {WALLS:g} times assumed)"
    if not inside:
        least = LIFT_PLAY + (spread or max(board.spread for board in boards))
        yield Meeting("", lowest.part.id, what, play.play, least, kind="fit", place=place, unsure=unknown)
        return
    thick = sum(count * board.thickness for board, count in inside)
    what += f" (with {series(f'{count:g} times the thickness of {board.id}' for board, count in inside)})"
    for board, count in inside:
        yield Meeting(
            "", lowest.part.id, what, play.play + thick, LIFT_PLAY + thick + spread, kind="fit", place=place,
            board=board.id, thickness=board.thickness, spread=board.spread, boards=count, unsure=unknown,
        )  # fmt: skip
