"""Layers stacked as their marks say: each on the one below, where the lines on that one say, in the order of the acts.

A layer lies at its template's drawn face, z up. What says where it lies is, in this order: templates nested in one another, which are
printed as they lie; an outline drawn on the layer below, dotted or dash-dotted; the same part, outline on outline, turned about its
centre as far as an act says; two centres. What none of these says is not laid, and said so.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, radians, sin

import numpy as np
import numpy.typing as npt
import shapely

from tests.rehearsal.acts import Act
from tests.rehearsal.laid_on import dots_on, ways
from tests.rehearsal.notes import Note
from tests.rehearsal.parts import ReadPart, clearest
from tests.rehearsal.sentences import Turned
from tests.rehearsal.standing import Board, Stood

Matrix = npt.NDArray[np.float64]
FACE = "face"
BELOW = ", below"
ON_LINE = 0.35  # mm by which an outline may be off the lines that say where it lies
LEAST_FRONT, STRAIGHT, LEAST_TURN = 8.0, 0.01, 0.02  # mm of a front edge; of a straight line's length across; radians
BEYOND = (2.5, 4.2)  # mm that glue lines are drawn on to meet the rim
ALIKE = 0.1  # mm by which ways to lie in an outline are one as true as the other
FEW = 24  # dots: fewer make no outline


@dataclass(frozen=True, slots=True, eq=False)
class Layers:
    """What was stacked of one assembly, and what was not, in words."""

    stood: tuple[Stood, ...]
    left: tuple[str, ...]


def is_layer(part: ReadPart, turned: Sequence[Turned] = ()) -> bool:
    """Say whether a part lies in a stack: a panel's words say which face is which, and its letters are no layer's that is ``turned``."""
    own = {told.mark for told in turned if part.letter in (told.part, told.on)}
    upright = any(note.kind in ("match", "top", "bevel") and note.text not in own for note in part.notes)
    return not upright and not any(FACE in words for words in part.words)


def stack_up(
    acts: Sequence[Act], parts: Sequence[ReadPart], boards: Sequence[Board], turned: Sequence[Turned] = ()
) -> tuple[Layers, ...]:
    """Return the stacks that acts lay: one goes on for as long as what is added lies on what lies there."""
    layer = {letter: part for letter, part in clearest(parts).items() if is_layer(part, turned)}
    board = {board.letter: board for board in boards}
    for part in parts:  # what stands under a step, or is glued on the face of a panel, lies in no pile
        for note in part.notes:
            if note.kind == "seat" and (BELOW in note.text or not is_layer(part, turned)):
                layer.pop(note.text.split()[0].rstrip(","), None)
    piles: list[_Pile] = []
    for act in acts:
        letters = [one.letter for one in act.added]
        if any(letter not in layer or letter not in board for letter in letters):
            continue
        pile = piles[-1] if piles and piles[-1].goes_on(act, layer) else None
        if pile is None:
            pile = _Pile([], [], turned)
            piles.append(pile)
        for letter in pile.in_order([one.letter for one in act.added for _ in range(one.count)], layer):
            pile.add(layer[letter], board[letter], act)
    return tuple(Layers(tuple(pile.stood), tuple(dict.fromkeys(pile.left))) for pile in piles if pile.stood)


@dataclass(slots=True)
class _Pile:
    stood: list[Stood]
    left: list[str]
    turned: Sequence[Turned]
    top: ReadPart | None = None

    def goes_on(self, act: Act, layer: dict[str, ReadPart]) -> bool:
        """Say whether an act adds to this pile: it shows one kind of part alone, or turns it."""
        kinds = {one.letter for one in act.added}
        return self.top is not None and (
            act.number > 1 or act.turn is not None or (len(kinds) == 1 and self.top.letter in kinds)
        )

    def in_order(self, letters: list[str], layer: dict[str, ReadPart]) -> Iterator[str]:
        """Yield letters from the lowest up: each that is named on the layer below comes next, of nested templates the outermost, the
        others as the picture has them."""
        rest = list(letters)
        top = self.top
        while rest:
            named = {note.text for note in top.notes if note.kind == "seat"} if top is not None else set()
            nested = [letter for letter in layer[rest[0]].nest if letter in rest]
            letter = next((letter for letter in rest if letter in named), nested[0] if nested else rest[0])
            rest.remove(letter)
            top = layer[letter]
            yield letter

    def add(self, part: ReadPart, board: Board, act: Act) -> None:
        if self.top is None or not self.stood:
            matrix = np.eye(4)
            matrix[2, 3] = board.thickness
        else:
            marks = [one.mark for one in self.turned if (one.part, one.on) == (part.letter, self.top.letter)]
            flat = laid(self.top, self.stood[-1].board, part, board, act, marks)
            if flat is None:
                self.left.append(f"nothing on part {self.top.letter} says where part {part.letter} lies")
                return
            matrix = self.stood[-1].matrix @ _lifted(flat, board.thickness)
        self.stood.append(Stood(board, matrix))
        self.top = part


def _lifted(flat: Matrix, by: float) -> Matrix:
    matrix = np.eye(4)
    matrix[:2, :2], matrix[:2, 3], matrix[2, 3] = flat[:, :2], flat[:, 2], by
    return matrix


def laid(below: ReadPart, its: Board, part: ReadPart, own: Board, act: Act, marks: Sequence[str] = ()) -> Matrix | None:
    """Return the matrix (2 × 3) that carries a part's template into that of the layer below, as their marks say; None where nothing
    says it. ``marks``: letters of it that lie over those of the layer below."""
    if part.letter in below.nest and part.letter != below.letter:
        return np.array(((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)))
    alike = part.letter == below.letter and not act.turn
    if alike and act.turn is None and (turned := _on_front_line(below, its)) is not None:
        return turned
    if alike and (act.turn is not None or not _seats(below, its, part.letter)):
        return np.array(((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)))
    if (on := _on_outline(below, its, part, own, marks)) is not None:
        return on
    mine, theirs = _centre(below), _centre(part)
    if mine is None or theirs is None:
        return None
    turn = act.turn or 0.0
    if part.letter == below.letter:
        turn *= _sense(below, mine[0], act.anticlockwise)
    way = mine[1] - mine[0]
    its_way = theirs[1] - theirs[0]
    between = np.arctan2(way[1], way[0]) - np.arctan2(its_way[1], its_way[0])
    return _about(theirs[0], mine[0], float(between) + radians(turn))


def _on_front_line(below: ReadPart, its: Board) -> Matrix | None:
    """Return how a copy of a part lies on it, centre on centre, whose edge is to lie on the dotted line that is drawn there: turned the
    way that its arrow climbs; None where there is no such line."""
    centre = _centre(below)
    if centre is None or not any(note.kind == "climbs" for note in below.notes):
        return None
    ring = shapely.get_coordinates(shapely.Polygon(its.area.exterior).simplify(0.05).exterior)
    sides = [(a, b) for a, b in pairwise(ring) if np.hypot(*(b - a)) > LEAST_FRONT]
    turns = []
    for line in (one.points for one in below.thin if one.kind == "dots" and len(one.points) >= FEW):
        middle = line.mean(axis=0)
        _, sizes, ways = np.linalg.svd(line - middle)
        if sizes[1] > STRAIGHT * sizes[0]:
            continue
        for a, b in sides:
            side = (b - a) / np.hypot(*(b - a))
            turn = float(np.arctan2(ways[0, 1], ways[0, 0]) - np.arctan2(side[1], side[0]))
            for turn_by in ((turn + np.pi) % (2 * np.pi) - np.pi, turn % (2 * np.pi) - np.pi):
                moved = _about(centre[0], centre[0], turn_by)
                c, d = (moved[:, :2] @ point + moved[:, 2] for point in (a, b))
                off = shapely.distance(shapely.points(line), shapely.LineString((c, d)))
                if off.max() < ON_LINE and abs(turn_by) > LEAST_TURN and turn_by * _sense(below, centre[0]) > 0.0:
                    turns.append(turn_by)
    return _about(centre[0], centre[0], min(turns, key=abs)) if turns else None


def _about(from_: Matrix, to: Matrix, turn: float) -> Matrix:
    rotation = np.array(((cos(turn), -sin(turn)), (sin(turn), cos(turn))))
    return np.column_stack((rotation, to - rotation @ from_))


def _centre(part: ReadPart) -> Matrix | None:
    """Return a part's centre, with a point on an arm of the cross that marks it; of a disc, its middle."""
    crosses = [thin.points for thin in part.thin if thin.kind == "cross"]
    if len(crosses) == 1:
        return crosses[0]
    hull = shapely.Polygon(part.area.exterior)
    radius = np.sqrt(hull.area / np.pi)
    if abs(hull.length / (2 * np.pi * radius) - 1.0) < 0.001:
        middle = np.array((hull.centroid.x, hull.centroid.y))
        return np.array((middle, middle + np.array((1.0, 0.0))))
    return None


def _sense(part: ReadPart, centre: Matrix, anticlockwise: bool | None = None) -> float:
    """Return 1 where the part's arrow climbs anticlockwise about its centre, else -1; of a part without one, what the picture shows."""
    arrows = [note for note in part.notes if note.kind == "climbs"]
    if not arrows:
        return -1.0 if anticlockwise is False else 1.0
    x, y = arrows[0].x - centre[0], arrows[0].y - centre[1]
    return 1.0 if x * arrows[0].way[1] - y * arrows[0].way[0] > 0.0 else -1.0


def _seats(below: ReadPart, its: Board, letter: str) -> list[shapely.Polygon]:
    """Return the areas that glue lines part off on a layer, round the letter of what lies there."""
    glue = [thin.points for thin in below.thin if thin.kind == "glue"]
    named = [note for note in below.notes if note.kind == "seat" and note.text == letter]
    if not glue or not named:
        return []
    return [face for by in BEYOND for face in _parted(its, glue, named, by)]


def _parted(its: Board, glue: Sequence[Matrix], named: Sequence[Note], by: float) -> list[shapely.Polygon]:
    lines = [shapely.LineString(_longer(ends, by)) for ends in glue]
    faces = shapely.get_parts(
        shapely.polygonize([*shapely.get_parts(shapely.node(shapely.union_all([its.area.boundary, *lines])))])
    )
    faces = [face for face in faces if its.area.buffer(0.2).contains(face.representative_point())]
    return [face for note in named for face in faces if face.contains(shapely.Point(note.x, note.y))]


def _longer(ends: Matrix, by: float) -> Matrix:
    way = (ends[1] - ends[0]) / np.hypot(*(ends[1] - ends[0]))
    return np.array((ends[0] - by * way, ends[1] + by * way))


def _on_outline(below: ReadPart, its: Board, part: ReadPart, own: Board, marks: Sequence[str]) -> Matrix | None:
    """Return how a part lies in the outline that is drawn for it on the layer below, its letters over those there; None where none is."""
    for seat in _seats(below, its, part.letter):
        every = ways(own.area, seat)
        fitting = [way for way in every if way.mean < min(other.mean for other in every) + ALIKE and way.mean < ON_LINE]
        if fitting:
            return min(fitting, key=lambda way: (_letters_off(way.matrix, below, part, marks), way.mean)).matrix
    dots = [one.points for one in below.thin if one.kind == "dots"]
    if sum(map(len, dots)) < FEW:
        return None
    best = dots_on(np.vstack(dots), shapely.Polygon(own.area.exterior))
    return best.matrix if best.mean < ON_LINE else None


def _letters_off(matrix: Matrix, below: ReadPart, part: ReadPart, marks: Sequence[str]) -> float:
    """Return how far (mm) in sum letters of a part come to lie from those of the layer below."""
    off = 0.0
    for mark in marks:
        own, its = ([np.array((n.x, n.y)) for n in one.notes if n.text == mark] for one in (part, below))
        gaps = [float(np.hypot(*(matrix[:, :2] @ at + matrix[:, 2] - there))) for at in own for there in its]
        off += min(gaps, default=0.0)
    return off


__all__ = ["Layers", "stack_up"]
