"""The pale ground of each glue area: on the tile that lies below, from the line of the marks to the end of what the page shows."""

from collections.abc import Iterator
from itertools import product

from publisher.basics import Box, Check, Findings, OutlinePromise, SeamPromise
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.checks.margins import WHITE
from publisher.proof.measuring import GROUND_FROM, MARK_TOLERANCE, SHIFTED, Case
from publisher.proof.reading import PageRead

MARK_OF = "·"  # between the name of a seam and the letter of one of its marks

Seams = dict[tuple[str, int, str], list[SeamPromise]]


@judged(
    "proof/glue-ground",
    "Glue areas are pale, and nothing else is",
    "glue goes where the ground is pale: a glue area is on the tile that comes first, left or above, from the line through the marks to "
    f"the right or lower end of what that tile shows, true to {MARK_TOLERANCE:g} mm; a pale ground elsewhere is glued over as well",
    may_be_empty=True,
)
def glue_grounds(case: Case, check: Check[Case]) -> Findings:
    """Look for the ground of each seam on the page of its first tile, and for grounds of no seam."""
    wanted: dict[int, list[Box]] = {number: [] for seam in case.promises.seams for number in seam.pages}
    hint = "lay the ground of a glue area under the tile on which the other one lies"
    for (part, _, name), marks in _seams(case.promises.seams).items():
        ground = _ground(case.promises.outlines, marks)
        if ground is None:
            what = f": the tile on which the other lies does not come first at seam {name} of part {part}"
            yield about(check, page_name(marks[0].pages[0]), what, hint)
        else:
            wanted[marks[0].pages[0]].append(ground)
    for number, boxes in wanted.items():
        page = case.page(number)
        shown = [] if page is None else list(_pale(page))
        for lacking in [box for box in boxes if not any(_same(box, one) for one in shown)][:MOST_SAID]:
            what = f": no pale ground marks the glue area from {lacking.left:.1f}, {lacking.bottom:.1f} mm"
            yield about(check, page_name(number), what, hint)
        tiles = [one.window for one in case.promises.outlines if one.page == number and one.window is not None]
        others = [one for one in shown if not any(_same(box, one) for box in boxes)]
        for stray in [one for one in others if any(tile.overlap(one) > MARK_TOLERANCE for tile in tiles)][:MOST_SAID]:
            what = f": a pale ground at {stray.left:.1f}, {stray.bottom:.1f} mm is that of no glue area"
            yield about(check, page_name(number), what, hint)
    return sum(map(len, wanted.values()))


def _seams(promises: tuple[SeamPromise, ...]) -> Seams:
    """Return the marks of each seam together."""
    found: Seams = {}
    for mark in promises:
        name = mark.label.rpartition(MARK_OF)[0] or mark.label
        found.setdefault((mark.part, mark.copy, name), []).append(mark)
    return found


def _ground(outlines: tuple[OutlinePromise, ...], marks: list[SeamPromise]) -> Box | None:
    """Return where the glue area of a seam lies on the page of its first tile; None where that tile does not come first."""
    (x, y) = marks[0].at[0]
    for first, second in product(*(tuple(_tiles(outlines, marks, place)) for place in (0, 1))):
        window = first.window
        if window is not None and (second.row - first.row, second.column - first.column) == (0, 1):
            return Box(x, window.bottom, window.right, window.top)
        if window is not None and (second.row - first.row, second.column - first.column) == (1, 0):
            return Box(window.left, window.bottom, window.right, y)
    return None


def _tiles(outlines: tuple[OutlinePromise, ...], marks: list[SeamPromise], place: int) -> Iterator[OutlinePromise]:
    """Yield the tiles of a part that show all marks of a seam on one of its two pages: a page may hold several of one part, whose
    windows reach over each other."""
    part, copy, page = marks[0].part, marks[0].copy, marks[0].pages[place]
    for one in outlines:
        if (one.part, one.copy, one.page) == (part, copy, page) and one.window is not None and one.row:
            room = one.window.grown(SHIFTED)
            ends = (mark.at[place] for mark in marks)
            if all(room.left <= x <= room.right and room.bottom <= y <= room.top for x, y in ends):
                yield one


def _pale(page: PageRead) -> Iterator[Box]:
    """Yield the pale grounds that show on a page."""
    for piece in page.pieces:
        if piece.visible and piece.fill_grey is not None and GROUND_FROM <= piece.fill_grey < WHITE:
            yield piece.box.common(piece.clip.box)


def _same(wanted: Box, found: Box) -> bool:
    return all(abs(a - b) <= MARK_TOLERANCE for a, b in zip(wanted.sides, found.sides, strict=True))
