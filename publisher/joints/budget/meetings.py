"""All meetings of printed sizes with things that do not shrink with the paper."""

from collections.abc import Iterator

from publisher.basics.wording import say_length
from publisher.design import FitPlan, NeedPlan
from publisher.joints.assembled import Assembled
from publisher.joints.budget.board_meetings import STEP_SHOWN, of_panels, of_posts, of_shape
from publisher.joints.budget.lip_meetings import of_lips
from publisher.joints.budget.paper_sizes import PaperSize, size_on_paper
from publisher.joints.facts import same_kind
from publisher.joints.model import Meeting


def meetings_of(subject: Assembled) -> tuple[Meeting, ...]:
    """Return every meeting once: board, then fits, then needs, in the order of the spec."""
    found: dict[str, Meeting] = {}
    for meeting in _every(subject):
        found.setdefault(meeting.name, meeting)
    return tuple(found.values())


def _every(subject: Assembled) -> Iterator[Meeting]:
    parts = {part.id: part for part in subject.parts}
    boards = {board.id: board for board in subject.design.boards}
    for mated in subject.panels:
        yield from of_panels(mated, parts, boards)
        yield from of_posts(mated, boards)
    for part in subject.parts:
        yield from of_shape(part, boards)
    for number, fit in enumerate(subject.design.fits, 1):
        if (meeting := _fit(subject, fit, number)) is not None:
            yield meeting
    yield from of_lips(subject)
    for need in subject.design.needs:
        if (meeting := _need(subject, need)) is not None:
            yield meeting


def _fit(subject: Assembled, fit: FitPlan, number: int) -> Meeting | None:
    """Return the meeting of a room with what goes into it; None where a fact is missing or no size on paper (a check says so).

    Where a printed part goes in, it shrinks with its room: what meets the paint is the play between both.
    """
    room = _fact_on_paper(subject, fit.into)
    thing = _fact_on_paper(subject, fit.goes_fact) if fit.goes is None else PaperSize("", "", 0.0)
    if room is None or thing is None:
        return None
    same = not thing.board or thing.board == room.board
    boards = thing.boards - (room.boards if same else 0.0)
    board, thickness, spread = _board(subject, thing.board or room.board) if boards else ("", 0.0, 0.0)
    size = boards * thickness - (0.0 if same else room.boards * room.thickness) + (fit.goes or 0.0)
    spreads = fit.spread + abs(boards) * spread
    faces = 4.0 if fit.goes is None else 2.0
    return Meeting(
        f"fit.{number}.{fit.into}", room.part, f"{room.what} for the {fit.name}", room.printed - thing.printed,
        size + spreads + faces * fit.paint, None if fit.loosest is None else size - spreads + fit.loosest,
        room.grown - thing.grown, "fit", fit.place, board, thickness, spread, boards,
        (*room.untraced, *((part, -lines) for part, lines in thing.untraced)), between=fit.goes is None and thing.printed > 0.0,
    )  # fmt: skip


def _board(subject: Assembled, name: str) -> tuple[str, float, float]:
    """Return a board's name, its thickness and its spread (mm); those of nothing where the design has no such board."""
    found = next((board for board in subject.design.boards if board.id == name), None)
    return (found.id, found.thickness, found.spread) if found is not None else ("", 0.0, 0.0)


def _fact_on_paper(subject: Assembled, name: str) -> PaperSize | None:
    fact = subject.fact(name)
    return None if fact is None or fact.kind != "length" else size_on_paper(subject, fact)


def _need(subject: Assembled, need: NeedPlan) -> Meeting | None:
    """Return the meeting of a size on paper that a need holds against a figure base or another thing on the table."""
    fact = subject.fact(need.fact)
    if fact is None or need.at_least is None or not same_kind(need, fact) or fact.kind != "length":
        return None
    size = size_on_paper(subject, fact)
    if size is None or size.printed <= 0.0 or (size.beside and need.at_most is None):
        return None
    limit = say_length(need.at_least)
    least = need.at_least - size.boards * size.thickness
    if size.beside and need.at_most is not None:
        what = f"{size.what} beside what is {limit} high"
        return Meeting(
            need.fact, size.part, what, size.printed, least - STEP_SHOWN, need.at_most + STEP_SHOWN, size.grown,
            place=need.place, untraced=size.untraced,
        )  # fmt: skip
    # a base stands on a part; other things go through a door or into a room
    what = f"base of {limit}{size.what[4:]}" if size.what.startswith("base") else f"{size.what} for {limit}"
    return Meeting(
        need.fact, size.part, what, size.printed, least, None, size.grown, "need", need.place,
        size.board, size.thickness, 0.0, -size.boards, size.untraced,
    )  # fmt: skip
