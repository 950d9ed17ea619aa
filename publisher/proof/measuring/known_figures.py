"""The numbers that the tool's own words may say on a page: those that were promised of the design, of the pieces shown there, of pages."""

from collections import Counter
from collections.abc import Iterable, Iterator
from math import ceil, floor

import numpy as np
import shapely

from publisher.basics import OutlinePromise, Promises, RowPromise, SizesPromise, record
from publisher.proof.measuring.figures_said import IN_MM, Said, figures_in
from publisher.proof.reading import normal

MASS_STEP = 10.0  # g: pushes are said to ten
OF_FEW = ("templates", "tiles")
"""Kinds of pages that speak of the pieces that they show; the others speak of all."""


CHECK_SIDE = 100.0  # mm: the square of the print check
CARDS = 3  # more for a template that is traced often: a second layer, and two of its spare


@record
class Known:
    """What numbers mean on one page: ``lengths`` in mm, ``angles`` in degrees, ``masses`` in g, ``shares`` in per cent, ``counts`` of
    pieces, pages, steps; ``words``: numbers as they stand beside a ruler, and in what the designer wrote."""

    lengths: tuple[float, ...]
    angles: tuple[float, ...]
    masses: tuple[float, ...]
    shares: tuple[float, ...]
    counts: frozenset[float]
    words: frozenset[str]

    def knows(self, said: Said) -> bool:
        """Say whether a number as it is said is one of these, to one of its last digit."""
        if said.words in self.words:
            return True
        if said.unit in IN_MM:
            return said.is_of(self.lengths, IN_MM[said.unit])
        if said.unit == "g":
            return any(abs(said.value - mass) < max(MASS_STEP, said.step) for mass in self.masses)
        if said.unit:
            return said.is_of(self.angles if said.unit == "°" else self.shares)
        if said.value in self.counts:
            return True
        return "." in said.words and any(said.is_of(self.lengths, IN_MM[unit]) for unit in ("mm", "in"))


def known_figures(promises: Promises, page: int, written: frozenset[str]) -> Known:
    """Return what is known on a page; ``written``: the numbers in what the designer wrote, the same on all."""
    kind = next((one.kind for one in promises.pages if one.page == page), "")
    shown = pieces_on(promises)
    here = {part for on, part in shown if on == page}
    few = kind in OF_FEW
    pieces = [piece for piece in promises.prints if not few or piece.part in here]
    rows = [row for row in promises.rows if not few or row.part in here]
    outlines = [one for one in promises.outlines if not few or one.page == page]
    squares = {line.length for line in promises.lengths if line.purpose == "calibration"}
    shares = [figure.value for figure in promises.figures if figure.kind == "share"]
    lengths = {
        *(figure.value for figure in promises.figures if figure.kind == "length"),
        *(end for side in squares for share in shares for end in _read_off(side, share)),
        *squares,
        *(line.length for line in promises.lengths if line.page == page),
        *(size for piece in pieces for size in (piece.thickness, *piece.lengths)),
        *(size for row in rows for size in (row.width, row.height)),
        *_laid_sizes(outlines),
        *(
            abs(size * share - size) for size in _laid_sizes(outlines) for share in shares
        ),  # how far what is taped may be off
        *(size for one in promises.sizes if not few or one.part in here for size in _measured(one)),
        *(size for way in promises.sheets for size in (way.width, way.height)),
        *(end for tip in (promises.work.tips if promises.work else ()) for end in (tip.least, tip.most)),
        *(size for layout in promises.layouts for size in (layout.width, layout.height)),
    }
    return Known(
        tuple(sorted(lengths)),
        tuple(sorted({angle for piece in pieces for angle in piece.angles})),
        tuple(figure.value for figure in promises.figures if figure.kind == "mass"),
        (100.0, *(100.0 * share for share in shares)),
        frozenset((*_counts(promises, rows), *_mapped(promises, here if kind == "tiles" else set()))),
        written.union(_beside_rulers(promises, page)),
    )


def _measured(piece: SizesPromise) -> Iterator[float]:
    """Yield the lengths (mm) by which a piece without a template is measured out."""
    yield from (size for hole in piece.holes for size in (hole.left, hole.up, hole.width, hole.height))
    yield from (at for _, at in piece.lines)
    yield from (edge.rabbet for edge in piece.edges)


def _beside_rulers(promises: Promises, page: int) -> Iterator[str]:
    """Yield the numbers as they stand beside the rulers of a page."""
    yield from (number for line in promises.lengths if line.page == page for number in normal(line.label).split())


def written_numbers(promises: Promises) -> frozenset[str]:
    """Return the numbers in what the designer wrote: a name or a title may be broken over lines and cells, and is no number of ours."""
    names = (name for piece in promises.prints for name in piece.names)
    return frozenset(said.words for words in (*promises.given, *names) for said in figures_in(normal(words)))


def _read_off(side: float, share: float) -> Iterator[float]:
    """Yield where a reading (mm) of a square may end, and the tenths at both sides: inches stand beside those. Other squares than that
    of 100 mm are read by the same tenths of it, to a hundredth."""
    for mm, scale in ((side * share, 1.0), (CHECK_SIDE * share, side / CHECK_SIDE)):
        for end in (mm, floor(mm * 10.0) / 10.0, ceil(mm * 10.0) / 10.0):
            yield from (end * scale, floor(end * scale * 100.0) / 100.0, ceil(end * scale * 100.0) / 100.0)


def _laid_sizes(outlines: Iterable[OutlinePromise]) -> Iterator[float]:
    """Yield width and height of templates as they lie on their pages."""
    for turn, ring in {(one.pose.turn, one.rings[0]) for one in outlines}:
        angle = np.radians(turn)
        points = np.array(ring)
        across = points @ (np.cos(angle), -np.sin(angle))
        up = points @ (np.sin(angle), np.cos(angle))
        yield float(np.ptp(across))
        yield float(np.ptp(up))


def _mapped(promises: Promises, parts: set[str]) -> Iterator[float]:
    """Yield the pages that the map of these parts' tiles shows."""
    yield from (float(one.page) for one in promises.outlines if one.row and one.part in parts)


def _counts(promises: Promises, rows: Iterable[RowPromise]) -> Iterator[float]:
    for row in rows:
        yield from map(float, (row.count, row.spare, row.mirrored, row.count + row.spare, row.count - row.mirrored))
    yield from (figure.value for figure in promises.figures if figure.kind == "count")
    yield from (float(way.sheets) for way in promises.sheets)
    yield from (float(number) for one in promises.sizes for number in range(1, len(one.holes) + 1))
    yield from (float(number) for layout in promises.layouts for number in range(1, len(layout.cuts) + 1))
    yield float(sum(row.count + row.spare for row in rows))
    tiles = {(one.part, one.row, one.column) for one in promises.outlines if one.row}
    yield from map(float, Counter(part for part, _, _ in tiles).values())
    true = {page.page for page in promises.pages if page.true_size}
    pages = len({page for page, _ in pieces_on(promises)})  # these are glued to card or board
    templates = cut_out(promises)
    yield from (float(len(true)), float(pages), float(templates))
    yield from (float(CARDS * number) for number in range(1, max(pages, templates) + 1))


def cut_out(promises: Promises) -> int:
    """Return how many templates are cut out of card: one for each piece, but for strips, for pieces that are measured out, and for those
    nested in others, which come out of these. One is nested where it lies inside another's outline and in no opening of it."""
    elsewhere = {strip.part for strip in promises.compasses} | {one.part for one in promises.sizes}
    nested: set[str] = set()
    on: dict[int, list[tuple[OutlinePromise, shapely.Polygon]]] = {}
    for one in promises.outlines:
        if not one.row:
            on.setdefault(one.page, []).append((one, shapely.Polygon(one.pose.apply_all(one.rings[0]))))
    for shown in on.values():
        for one, shape in shown:
            for other, around in shown:
                if one.part != other.part and shapely.contains_properly(around, shape):
                    holes = shapely.union_all([shapely.Polygon(other.pose.apply_all(hole)) for hole in other.rings[1:]])
                    if not shapely.covers(holes, shape):
                        nested.add(one.part)
    return len({piece.part for piece in promises.prints} - elsewhere - nested)


def pieces_on(promises: Promises) -> set[tuple[int, str]]:
    """Return which pages show which parts at true size, as outlines or as compass strips: (page, part)."""
    return {(one.page, one.part) for one in promises.outlines} | {(one.page, one.part) for one in promises.compasses}
