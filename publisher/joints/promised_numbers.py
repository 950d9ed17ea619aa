"""What prints must show of each piece, and the numbers that the tool's own words may say: promised here, before any page is made."""

from collections.abc import Iterable, Iterator
from math import inf
from typing import Literal

from publisher.basics import (
    BendPromise,
    BoardPromise,
    FigurePromise,
    LineKind,
    PieceLine,
    PrintPromise,
    Purpose,
    WordPromise,
)
from publisher.basics.units import INCH_MM
from publisher.design import Design
from publisher.geometry import Mark, Part, dimensions_of, half_marks, polygon, rabbet_strip
from publisher.joints.acts_of_steps import covered_face, slit_face
from publisher.joints.budget import PENCIL_SPREAD, board_ends, safe_ends
from publisher.joints.facts import spread_ends
from publisher.joints.model import Joined
from publisher.joints.stack_trials import trials_of
from publisher.joints.taping import TAPE_INCHES, TAPE_WIDE, tape_over

SAID_AT_PLACES = (Purpose.MATCH, Purpose.BEVEL)
ARROWS = (Purpose.CLIMB, Purpose.GRAIN, Purpose.TOP)
SAID_PUSHES = ("step_carries", "deck_carries")
GRAMS_PER_NEWTON = 1000.0 / 9.80665


def prints_of(pieces: Iterable[Part], traced: bool = False) -> tuple[PrintPromise, ...]:
    """Return what each print of a piece must show: its template, the letters and angles at its edges, what it says of grooves and slits;
    ``traced``: the pieces are drawn round."""
    return tuple(
        PrintPromise(
            piece.id,
            piece.letter,
            piece.board,
            piece.thickness,
            tuple(path.points for path in piece.template.paths),
            tuple(
                WordPromise(mark.text, mark.path.points[0], "letter" if mark.purpose is Purpose.MATCH else "bevel")
                for mark in piece.marks
                if mark.text and mark.purpose in SAID_AT_PLACES
            ),
            tuple(mark.text for mark in half_marks(piece) if mark.text and mark.purpose not in SAID_AT_PLACES),
            (
                *(fold.width for fold in piece.folds),
                *(length for dimension in dimensions_of(piece) for length in dimension.lengths),
                *((piece.bending.slit_depth,) if piece.bending is not None and piece.bending.slits else ()),
            ),
            (
                *(fold.corner for fold in piece.folds),
                *(abs(edge.bevel) for edge in piece.edges if edge.bevel),
            ),
            tuple(path.points for path in piece.half.whole.paths) if piece.half else (),
            piece.half.line if piece.half else None,
            tuple(
                PieceLine(_kind_of(mark), mark.path.travelled)
                for mark in half_marks(piece)
                if len(mark.path.points) > 1
            ),
            tuple(
                tuple(map(tuple, rabbet_strip(edge, polygon(piece.outline)).exterior.coords))
                for edge in piece.edges
                if edge.rabbet is not None
            ),
            traced,
            _bend_of(piece),
        )
        for piece in pieces
    )


def _bend_of(piece: Part) -> BendPromise | None:
    """Return what is done to a piece before it is bent; None where it is not."""
    if piece.bending is None:
        return None
    covered = piece.bending.covered
    covering: Literal["", "paper", "tape"] = "paper" if covered == "paper" else "tape" if covered == "tape" else ""
    return BendPromise(covering, covered_face(piece) or "", slit_face(piece) or "", piece.bending.slit_depth)


def _kind_of(mark: Mark) -> str:
    """Return what a line of a piece is: its kind; an ``arrow``; a ``lap``, the outline of a layer that lies on it, which is left out where
    another line says the same."""
    if mark.purpose in ARROWS:
        return "arrow"
    lap = mark.purpose is Purpose.LAP and mark.path.closed and mark.kind is not LineKind.GLUE
    return "lap" if lap else mark.kind.value


def boards_of(design: Design, joined: Joined) -> tuple[BoardPromise, ...]:
    """Return what the pages must say of each board that a buyer asks for."""
    taken = {one.board: safe_ends(one) for one in joined.boards}
    return tuple(
        BoardPromise(
            board.id,
            board.id.replace("_", " "),
            board.faces,
            board.sold_as,
            board.thickness,
            *taken.get(board.id, (0.0, inf)),
        )
        for board in design.boards
    )


def figures_of(design: Design, pieces: Iterable[Part], joined: Joined) -> tuple[FigurePromise, ...]:
    """Return the numbers that pages may say of the design as a whole, each once."""
    pieces = tuple(pieces)
    return tuple(
        dict.fromkeys(
            (
                *_of_boards(design, joined),
                *_of_print(pieces, joined),
                *_of_tape(pieces),
                *_of_stacks(joined),
                *_of_trials(design, joined),
                *_of_steps(joined),
                *_of_needs(design),
            )
        )
    )


def _of_boards(design: Design, joined: Joined) -> Iterator[FigurePromise]:
    """Yield how thick boards are, may be, and are sold."""
    for board in design.boards:
        yield FigurePromise(f"thickness of {board.id}", board.thickness, "length")
        for end in board_ends(board.thickness, board.spread):
            yield FigurePromise(f"thickness of {board.id}, at most off", end, "length")
        for shop in (*((board.shop,) if board.shop is not None else ()), *board.also):
            for end in (shop.least, shop.most):
                yield FigurePromise(f"thickness of {board.id} in shops", end, "length")
        if design.use == "paste":
            yield FigurePromise(f"gap between pieces on {board.id}", board.knife_gap, "length")
    for taken in joined.boards:
        for end in safe_ends(taken):
            if 0.0 < end < inf:
                yield FigurePromise(f"thickness of {taken.board} that is taken", end, "length")
    slots = {(row.mate, row.play) for plan in design.parts for t in plan.treatments for row in t.slots}
    laps = {(lap.mate, lap.play) for plan in design.parts for t in plan.treatments for lap in t.laps}
    for thick, play in sorted(slots | laps):
        yield FigurePromise("slot", thick + play, "length")


def _of_tape(pieces: Iterable[Part]) -> Iterator[FigurePromise]:
    """Yield how wide the tape is that goes over bent pieces, and how much of it all copies take."""
    taped = [piece for piece in pieces if piece.bending is not None and piece.bending.covered == "tape"]
    if taped:
        for wide in (TAPE_WIDE, TAPE_INCHES * INCH_MM):  # as shops name it in either unit
            yield FigurePromise("width of tape", wide, "length")
        yield FigurePromise("length of tape", sum(map(_tape, taped)), "length")


def _tape(piece: Part) -> float:
    left, bottom, right, top = polygon(piece.outline).bounds
    return (piece.count + piece.spare) * tape_over(right - left, top - bottom)


def _of_print(pieces: tuple[Part, ...], joined: Joined) -> Iterator[FigurePromise]:
    """Yield how far a print may be off, and how far a pencil runs from the card."""
    for name, share in (("least", joined.budget.least), ("greatest", joined.budget.most)):
        yield FigurePromise(f"{name} scale of a print", share, "share")
    for count in sorted({piece.bending.slits for piece in pieces if piece.bending is not None and piece.bending.slits}):
        yield FigurePromise("slits of a piece", count, "count")
    for allowance in sorted({piece.trace_allowance for piece in pieces}):
        yield FigurePromise("pencil beside the card", allowance, "length")
        yield FigurePromise("pencil beside the card, both sides", 2.0 * allowance, "length")
    yield FigurePromise("pencil that strays", PENCIL_SPREAD, "length")


def _of_needs(design: Design) -> Iterator[FigurePromise]:
    """Yield what other things on the table measure, as far as sizes on paper must fit them."""
    for need in design.needs:
        for end in (need.at_least, need.at_most):
            if end is not None and need.kind == "length":
                yield FigurePromise(f"need of {need.fact}", end, "length")


def _of_steps(joined: Joined) -> Iterator[FigurePromise]:
    """Yield how many copies of each part the steps put in their places, and how far what they lay on reaches over walls."""
    for step, part in sorted({(act.step, act.part) for act in joined.additions if act.part}):
        every = joined.added(step, part)
        yield FigurePromise(f"copies of {part} that step {step} adds", float(every), "count")
        times = {act.times for act in joined.additions if act.step == step and not act.trial}
        if len(times) == 1 and every % (each := min(times)) == 0 and each > 1:
            yield FigurePromise(f"copies of {part} that step {step} adds to each", float(every // each), "count")
    for far in sorted({abs(one.far) for one in joined.reaches}):
        yield FigurePromise("reach of what is laid on walls", far, "length")


def _of_trials(design: Design, joined: Joined) -> Iterator[FigurePromise]:
    """Yield between which heights piles of scraps are as high as they should be."""
    for pile in trials_of(design, joined):
        for end in pile.limits:
            yield FigurePromise(f"height of scraps for {pile.name}, at most off", end, "length")


def _of_stacks(joined: Joined) -> Iterator[FigurePromise]:
    """Yield how many layers stacks have and how high they are, at least and at most; and what pushes pieces bear."""
    for name, layers in joined.layers:
        yield FigurePromise(f"layers of {name}", float(len(layers)), "count")
        for fact in (joined.fact(f"{name}.height"), *spread_ends(f"{name}.height", joined.facts)):
            if fact is not None:
                yield FigurePromise(fact.name, fact.value, "length")
        for layer in layers:
            yield FigurePromise(f"thickness of a layer of {name}", layer.thickness, "length")
    for fact in joined.facts:
        if fact.name.rpartition(".")[2] in SAID_PUSHES:
            yield FigurePromise(fact.name, fact.value * GRAMS_PER_NEWTON, "mass")
