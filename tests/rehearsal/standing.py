"""Panels stood by what their templates show: tabs in slots, edges on glue strips, edges on edges, of one letter, both with “top” the same
way; edges with a bevel close to a mitre, with or without a letter; tabs and slots of parts that have none, the outside faces out.

Each part lies as its page shows it: its drawn, outside face is z = 0, its inside face a thickness below. A row of tabs goes in from the
inside; its middle is the middle of the slots, along them and across. Where two plain edges meet, the page does not say which board runs
through: what most joins agree on, and no two boards in one place, is taken. What is joined in another way is not stood, and said so.
"""

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, pairwise, product

import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.polygon import orient

from tests.rehearsal.joins import SAME, Side, Solid, joined_ways, one_place, shared
from tests.rehearsal.notes import Note
from tests.rehearsal.parts import ReadPart, clearest, grown
from tests.rehearsal.sentences import Ends, Levels
from tests.rehearsal.sites import Site, astray, less_bevels, sites_of
from tests.rehearsal.told import IN_LINE, Plain, bent_kinds, ends_of, kind_of, lettered_sites, levelled, may_meet

Matrix = npt.NDArray[np.float64]  # 4 × 4
Vector = npt.NDArray[np.float64]

LEVEL = 0.3  # mm within which ends of tabs, or middles of slots, are in one line
FITS = 0.4  # mm by which the distances of tabs and of their slots may differ
SLOT_WIDER = (-0.4, 1.3)  # mm by which a slot may be wider than the board that goes in
WITHIN = 2.0  # mm: what is as near to a row of slots bears no edge's letter
AS_NEAR = 1.0  # mm by which a row of slots may be farther from its letter than the rim is
BESIDE = 30.0  # mm from a letter to its row of slots
SAME_BEVEL = 0.6  # degrees
TAKEN = 0.3  # share of a board in another one that is no fault of fit, but its place
SHARED = 0.02  # share of a board that may lie in another one
MOST_PLAIN = 6  # joins of plain edges of which both ways are tried
MOST_KINDS = 4  # of bevelled edges without a letter of which it is tried that they meet nothing
MITRE = "mitre"


@dataclass(frozen=True, slots=True, eq=False)
class Row:
    """Tabs or slots that bear a letter. ``along``: the direction of the row; ``out``: across it, for tabs out of the part; ``base``: how
    far along ``out`` the edge behind the tabs is, or the middle of the slots; ``middles``: of tabs or slots, along the row, in order."""

    letter: str
    along: Vector
    out: Vector
    base: float
    middles: tuple[float, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Board:
    """A part to stand: its cut area, thickness, rows, how many there are, and where its top is (None: no arrow was read).
    ``astray``: match letters that stand beside nothing."""

    letter: str
    area: shapely.Polygon
    thickness: float
    count: int
    tabs: tuple[Row, ...]
    slots: tuple[Row, ...]
    up: Vector | None
    sites: tuple[Site, ...] = ()
    levels: tuple[Levels, ...] = ()
    astray: tuple[str, ...] = ()

    def at(self, depth: float) -> shapely.Polygon:
        """Return what the board is so deep under its drawn face: less by what its bevels take there."""
        return less_bevels(self.area, self.sites, depth)


@dataclass(frozen=True, slots=True, eq=False)
class Stood:
    """A board in its place: the matrix carries it from its page to the piece. ``either``: nothing says which of its faces is which way,
    nor has to, where both are alike."""

    board: Board
    matrix: Matrix
    either: bool = False


def boards_of(parts: Sequence[ReadPart], allowance: float) -> tuple[Board, ...]:
    """Return the parts that have a letter and a thickness as they are cut, each once."""
    known = [part for part in parts if part.letter and part.thickness and not part.area.is_empty]
    thick = sorted({part.thickness for part in known})
    own = clearest(known).values()
    return tuple(board_of(p, p.area if p.cut_so else grown(p.area, allowance), thick) for p in own)


def board_of(part: ReadPart, area: shapely.Polygon, boards: Sequence[float]) -> Board:
    """Return a part with its rows; ``area``: as it is cut; ``boards``: thicknesses of all parts."""
    tops = [np.array(note.way) for note in part.notes if note.kind == "top"]
    letters = [note for note in part.notes if note.kind == "match"] or list(_everywhere(area))
    tabs = {id(note): row for note in letters if (row := _tabs(note, area, boards)) is not None}
    slots = [(note, row) for note, row in _slots([n for n in letters if id(n) not in tabs], area, boards)]
    used = {*tabs, *(id(note) for note, _ in slots)}
    rest = [note for note in part.notes if id(note) not in used]
    sites = sites_of(area, rest, part.thin, boards)
    up = tops[0] if tops else None
    rows = _once([row for _, row in slots])
    lost = astray(area, rest, part.thin, boards)
    return Board(part.letter, area, part.thickness, part.count, _once([*tabs.values()]), rows, up, sites, astray=lost)


def _everywhere(area: shapely.Polygon) -> Iterator[Note]:
    """Yield a note without a letter at every place where a row may be: where a pack prints none, any of them fits."""
    sides = [(a, b) for a, b in _sides(area) if np.hypot(*(b - a)) > 3.0]
    for a, b in sides:
        x, y = (a + b) / 2
        yield Note("match", "", float(x), float(y))
    for hole in area.interiors if sides else ():
        x, y = hole.centroid.coords[0]
        yield Note("match", "", float(x), float(y))


def _once(rows: Sequence[Row]) -> tuple[Row, ...]:
    """Return rows without those that were found from several places."""
    kept: list[Row] = []
    for row in rows:
        if not any(
            one.letter == row.letter and abs(one.base - row.base) < LEVEL and one.out @ row.out > 0.99 for one in kept
        ):
            kept.append(row)
    return tuple(kept)


def _sides(area: shapely.Polygon) -> Iterator[tuple[Vector, Vector]]:
    whole = orient(shapely.Polygon(area.exterior).simplify(0.05), -1.0)  # clockwise
    yield from pairwise(shapely.get_coordinates(whole.exterior))


def _tabs(note: Note, area: shapely.Polygon, boards: Sequence[float]) -> Row | None:
    """Return the row of tabs beside a letter: what stands out, by a board's thickness, of the edge nearest to it."""
    at = shapely.Point(note.x, note.y)
    sides = [(a, b) for a, b in _sides(area) if np.hypot(*(b - a)) > 3.0]
    a, b = min(sides, key=lambda side: shapely.LineString(side).distance(at))
    way = (b - a) / np.hypot(*(b - a))
    out = np.array((-way[1], way[0]))  # at the left of who goes round clockwise
    base = float(a @ out)
    tip = float((shapely.get_coordinates(area.exterior) @ out).max())
    if tip - base < LEVEL:  # a letter in the middle of a single wide tab is nearest to that
        levels = [float(p @ out) for p, q in sides if abs(float((p - q) @ out)) < LEVEL]
        base = max((level for level in levels if level < tip - LEVEL), default=base)
    if not any(-0.3 < tip - base - board < 0.6 for board in boards):
        return None
    along = np.array((out[1], -out[0]))
    ends = [
        (float(p @ along), float(q @ along))
        for p, q in sides
        if abs(p @ out - tip) < LEVEL and abs(q @ out - tip) < LEVEL
    ]
    return Row(note.text, along, out, base, tuple(sorted((p + q) / 2 for p, q in ends))) if ends else None


def _slots(letters: list[Note], area: shapely.Polygon, boards: Sequence[float]) -> Iterator[tuple[Note, Row]]:
    """Yield the rows of slots that a letter stands beside or between."""
    rows: list[tuple[Vector, Vector, float, list[float], list[shapely.Polygon]]] = []
    for hole in map(shapely.Polygon, area.interiors):
        box = shapely.get_coordinates(hole.minimum_rotated_rectangle)
        one, other = box[1] - box[0], box[2] - box[1]
        long_side, short = (one, other) if np.hypot(*one) >= np.hypot(*other) else (other, one)
        wide = float(np.hypot(*short))
        if hole.area < 0.97 * wide * np.hypot(*long_side):
            continue
        if not any(SLOT_WIDER[0] < wide - board < SLOT_WIDER[1] for board in boards):
            continue
        along = long_side / np.hypot(*long_side)
        along = along if along[1] > 1e-6 or (abs(along[1]) <= 1e-6 and along[0] > 0) else -along
        across = np.array((-along[1], along[0]))
        middle = np.array((hole.centroid.x, hole.centroid.y))
        same = [r for r in rows if abs(r[0] @ across) < 0.003 and abs(r[2] - middle @ r[1]) < LEVEL]
        if same:
            same[0][3].append(float(middle @ same[0][0]))
            same[0][4].append(hole)
        else:
            rows.append((along, across, float(middle @ across), [float(middle @ along)], [hole]))
    for note in letters:
        at = shapely.Point(note.x, note.y)
        near = [(shapely.convex_hull(shapely.union_all(r[4])).distance(at), n) for n, r in enumerate(rows)]
        far, n = min(near, default=(BESIDE, -1))
        if far < BESIDE and far <= max(WITHIN, area.exterior.distance(at) + AS_NEAR):
            along, across, base, middles, _ = rows[n]
            yield note, Row(note.text, along, across, base, tuple(sorted(middles)))


def joined(tabbed: Board, tabs: Row, slotted: Board, slots: Row) -> Matrix | None:
    """Return the matrix that carries the tabbed board into the frame of the slotted one; None where they do not fit, where an outside
    would face inwards, or nothing says which way round."""
    if len(tabs.middles) != len(slots.middles) or tabbed.up is None or slotted.up is None:
        return None
    ups = float(tabbed.up @ tabs.along), float(slotted.up @ slots.along)
    if min(abs(ups[0]), abs(ups[1])) < 0.5:
        return None
    sign = 1.0 if ups[0] * ups[1] > 0.0 else -1.0
    own = sorted(sign * middle for middle in tabs.middles)
    gaps = np.array(slots.middles) - np.array(own)
    if np.ptp(gaps) > FITS:
        return None
    u, w, z = np.append(slots.along, 0.0), np.append(slots.out, 0.0), np.array((0.0, 0.0, 1.0))
    face = sign * np.cross(u, z)
    reach = shapely.get_coordinates(slotted.area.exterior) @ slots.out
    if float(face @ w) * (2.0 * slots.base - float(reach.max() + reach.min())) < 0.0:
        return None  # its outside would face the middle of the other one
    rows = np.vstack([sign * np.append(tabs.along, 0.0), np.append(tabs.out, 0.0), z])  # own page to (along, out, face)
    turn = np.column_stack([u, z, face]) @ rows
    shift = gaps.mean() * u + slots.base * w - (tabs.base + slotted.thickness) * z + tabbed.thickness / 2 * face
    matrix = np.eye(4)
    matrix[:3, :3], matrix[:3, 3] = turn, shift
    return matrix


Through = dict[Plain, str]  # the part that runs through; of two alike, "a" or "b"


def stand(
    boards: Sequence[Board], ends: Sequence[Ends] = (), levels: Sequence[Levels] = ()
) -> tuple[tuple[tuple[Stood, ...], ...], tuple[str, ...]]:
    """Stand what joins of all kinds hold together, from the board with most of them on, and go on with what is left; return what hangs
    together each, and what was not stood, in words. ``ends``, ``levels``: what words say of plain edges."""
    ups = {board.letter: board.up for board in boards}
    sites = lettered_sites({board.letter: board.sites for board in boards}, ends, levels, ups)
    boards = [replace(board, sites=sites[board.letter], levels=tuple(levels)) for board in boards]
    rest = {board.letter: board for board in boards}
    found: list[tuple[Stood, ...]] = []
    while roots := [board for board in rest.values() if _joins(board) and board.count]:
        roots.sort(key=lambda board: (-len(board.slots), -_joins(board)))
        tries = (_best(root, tuple(rest.values()), ends) for root in roots)
        stood = next((tried for tried in tries if len(tried) > 1), ())
        if not stood:
            break
        found.append(stood)
        placed = Counter(one.board.letter for one in stood)
        rest = {letter: replace(board, count=board.count - placed[letter]) for letter, board in rest.items()}
    left = tuple(
        f"part {board.letter}: {rest[board.letter].count} of {board.count} have no place"
        for board in boards
        if rest[board.letter].count
    )
    return tuple(found), (*left, *_unmatched(boards))


def _unmatched(boards: Sequence[Board]) -> Iterator[str]:
    """Yield, in words, the letters that stand at one join alone: nothing meets there, whatever else holds the boards."""
    ends: dict[str, list[str]] = defaultdict(list)
    for board in boards:
        for row in (*board.tabs, *board.slots):
            ends[row.letter] += [board.letter] * board.count
        for site in board.sites:
            for letter in site.letters:
                ends[letter] += [board.letter] * board.count
    for letter, parts in sorted(ends.items()):
        if not letter:
            continue  # a pack without letters says nothing by them
        if len(parts) == 1 or _one_kind(letter, boards):
            yield f"part {parts[0]}: nothing meets its letter {letter}"


def _one_kind(letter: str, boards: Sequence[Board]) -> bool:
    """Say whether only slots bear a letter, or only tabs: none goes into another."""
    tabs = any(row.letter == letter for board in boards for row in board.tabs)
    slots = any(row.letter == letter for board in boards for row in board.slots)
    plain = any(letter in site.letters for board in boards for site in board.sites)
    return tabs != slots and not plain


def _best(root: Board, boards: Sequence[Board], ends: Sequence[Ends]) -> tuple[Stood, ...]:
    """Return the standing on which most joins agree, of all choices of who runs through, and of which bevelled edges without a letter
    meet none: a spire's feet are bevelled as well."""
    plain = _plain(boards)[:MOST_PLAIN]
    throughs = [dict(zip(plain, way, strict=True)) for way in product(*(ends_of(one, ends) for one in plain))]
    kinds = bent_kinds(root.sites)[:MOST_KINDS]
    own = {board.letter: board for board in boards}
    best: tuple[tuple[int, int, int, int], tuple[Stood, ...]] | None = None
    for count in range(max(1, len(kinds))):
        for free in combinations(kinds, count):
            less = [replace(b, sites=tuple(s for s in b.sites if kind_of(s) not in free)) for b in boards]
            start = next(board for board in less if board.letter == root.letter)
            for through in throughs:
                stood = [Stood(own[one.board.letter], one.matrix) for one in _stood(start, less, through)]
                placed, agree, shared = _agreement(stood, through)
                bent = sum(kind_of(s) is not None and kind_of(s) not in free for one in stood for s in one.board.sites)
                lonely = max(0, bent - 2 * agree)  # bevelled edges of kinds that meet, which meet nothing
                if best is None or (placed, -lonely, agree, shared) > best[0]:
                    best = (placed, -lonely, agree, shared), tuple(stood)
    return best[1] if best else ()


def _joins(board: Board) -> int:
    return len(board.slots) + len(board.tabs) + sum(bool(s.letters) or s.bevel is not None for s in board.sites)


def _plain(boards: Sequence[Board]) -> list[Plain]:
    """Return the joins of plain edges, of which nothing says which board runs through."""
    ends: dict[str, set[str]] = defaultdict(set)
    twice: set[str] = set()
    for board in boards:
        for site in board.sites:
            for letter in site.letters if site.bevel is None and not site.strip else ():
                twice |= {letter} if board.letter in ends[letter] else set()
                ends[letter].add(board.letter)
    pairs = []
    for letter in sorted(ends):
        pairs += [Plain(letter, pair) for pair in combinations(sorted(ends[letter]), 2)]
        pairs += [Plain(letter, (part, part)) for part in ends[letter] if letter in twice and len(ends[letter]) == 1]
    return pairs


def _stood(root: Board, boards: Sequence[Board], through: Through) -> list[Stood]:
    stood = [Stood(root, np.eye(4))]
    while (more := _next(stood, boards, through)) is not None:
        stood.append(more)
    return stood


def _agreement(stood: list[Stood], through: Through) -> tuple[int, int, int]:
    """Return how good a standing is: boards that stand, less what of them is in one place, and joins that agree."""
    solids = [Solid(one.matrix, one.board.thickness, one.board.at) for one in stood]
    taken = sum(max(shared(a, b), shared(b, a)) > SHARED for a, b in combinations(solids, 2))
    agree = 0
    for one, other in combinations(stood, 2):
        relative = np.linalg.inv(one.matrix) @ other.matrix
        agree += any(
            one_place(matrix, relative, other.board.area) for matrix in _relative(one.board, other.board, through)
        )
    return len(stood) - taken, agree, -taken


def _next(stood: list[Stood], boards: Sequence[Board], through: Through) -> Stood | None:
    """Return the board that most of what stands agrees on; None where none is left that fits."""
    placed = Counter(one.board.letter for one in stood)
    votes: dict[int, int] = defaultdict(int)
    found: list[Stood] = []
    for one in stood:
        for board in boards:
            if placed[board.letter] >= board.count:
                continue
            for relative in _relative(one.board, board, through):
                matrix = one.matrix @ relative
                if any(
                    one_place(matrix, other.matrix, board.area) for other in stood if other.board.letter == board.letter
                ):
                    continue
                number = next(
                    (n for n, f in enumerate(found) if f.board is board and one_place(matrix, f.matrix, board.area)),
                    len(found),
                )
                if number == len(found):
                    found.append(Stood(board, matrix))
                votes[number] += 1
    free = (found[n] for n in sorted(votes, key=lambda n: -votes[n]) if not _in_the_way(found[n], stood))
    return next(free, None)


def _in_the_way(one: Stood, stood: Sequence[Stood]) -> bool:
    """Say whether a board would take the place of one that stands, as a wall turned upside down does."""
    solids = [Solid(other.matrix, other.board.thickness, other.board.at) for other in (one, *stood)]
    return any(max(shared(solids[0], it), shared(it, solids[0])) > TAKEN for it in solids[1:])


def _relative(one: Board, board: Board, through: Through) -> Iterator[Matrix]:
    """Yield the places of a board that a standing one's rows, strips and edges allow, in the frame of that one."""
    for slots in one.slots:
        for tabs in board.tabs:
            if tabs.letter == slots.letter and (matrix := joined(board, tabs, one, slots)) is not None:
                yield matrix
    for tabs in one.tabs:
        for slots in board.slots:
            if tabs.letter == slots.letter and (matrix := joined(one, tabs, board, slots)) is not None:
                yield np.linalg.inv(matrix)
    for mine in one.sites:
        for its in board.sites:
            letter = _meet(mine, its)
            if letter and may_meet(letter, one.letter, board.letter):
                yield from _by_edges(one, mine, board, its, "" if letter == MITRE else letter, through)


def _meet(one: Site, other: Site) -> str:
    """Return a letter that both sites bear, or that they are a mitre without one; "" where they have nothing to do with each other."""
    if shared := one.letters & other.letters:
        return min(shared)
    mitre = one.bevel is not None and other.bevel is not None and abs(one.bevel - other.bevel) < SAME_BEVEL
    return MITRE if mitre and not one.letters and not other.letters and abs(one.length - other.length) < SAME else ""


def _by_edges(one: Board, mine: Site, board: Board, its: Site, letter: str, through: Through) -> Iterator[Matrix]:
    first, second = sorted((one.letter, board.letter))
    asked = through.get(Plain(letter, (first, second)))
    ups = {one.letter: one.up, board.letter: board.up}
    mine, its = levelled((one.letter, mine), (board.letter, its), ups, letter, one.levels)
    plain = mine.bevel is None and its.bevel is None and not mine.strip and not its.strip
    for way in joined_ways(Side(one.thickness, one.up, mine), Side(board.thickness, board.up, its)):
        runs = {"a": one.letter, "b": board.letter}.get(way.through, way.through) if first != second else way.through
        if not plain or asked == runs or (asked is None and runs != IN_LINE):
            yield way.matrix
