"""Where the sketches of acts say and draw what they do: a count under its own part, the side that is up at all parts, lines of a pencil
round each, dark paint."""

import re
from collections.abc import Iterable, Iterator

import numpy as np
import shapely

from publisher.basics import Carried, Check, DonePromise, Findings, SaidPromise
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.checks.sketch_words import TAPING
from publisher.proof.measuring import CARRIED_TOLERANCE, Case, StrokeSegments, carried_lines, lines_in, strokes_in
from publisher.proof.reading import Array, TextLine, normal

COUNT_ASIDE = 2.0  # mm from the middle of a part to the words under it that say how many there are
COUNT_UNDER = 14.0  # mm under a part that its count stands at most
FRAME_UNDER = (0.5, 2.2)  # mm from words in a frame down to its lower side
HARDLY_FALLS = 0.06  # mm by which a line may fall and is level
HOOK = 0.4  # mm that the bracket may end short of what it goes over
TOOL_ACROSS = 8.0  # mm of a bracket that a tool hides, which lies over its end
FARTHER_THAN_ANY = 200.0  # mm: farther than any line leads
DRAWN_ROUND = (0.3, 2.0)  # mm outside a template: where the pencil's line round it runs
ROUND_ENOUGH = 0.6  # of an outline, beside which there is such a line: other things hide some
ROUND_STEP = 0.5  # mm
CLOSED_OVER, FILLED = (
    1.6,
    0.005,
)  # mm to both sides that close a notch, and of a part, so filled: no line of a pencil goes into it
AS_DARK_AS = 0.5  # grey of dark paint, at most
FIRST_PAINTED, DARK_ENOUGH = (
    0.45,
    0.01,
)  # shares: of a sketch for what is painted dark, and of that place for dark paint
SAME_COLUMN = 3.0  # mm between the middles of what stands under each other

ShapesByKey = dict[str, shapely.Polygon]


@judged(
    "proof/sketch-place",
    "Words and lines of a sketch stand at what they are of",
    "a count under another part is cut of that part, a bracket that leaves one out turns it over: each count stands under its part, the "
    "side that is up is said with a line to the one part or over all of them, a pencil has run round each template, dark paint is dark",
    may_be_empty=True,
)
def sketch_places(case: Case, check: Check[Case]) -> Findings:
    """Look at each sketch of an act where a page carries it."""
    looked = 0
    hint = "draw a sketch's words and lines at what they are of"
    for done in case.promises.done:
        for where in case.carried(done.key):
            looked += 1
            for fault in _done(case, done, where):
                what = f": part {done.letter} in the sketch of “{done.act.replace('_', ' ')}” {fault}"
                yield about(check, page_name(where.page), what, hint)
    for said in case.promises.said:
        for where in case.carried(said.key):
            looked += 1
            for fault in _said(case, said, where):
                act = said.key.split(":")[3].replace("_", " ")
                yield about(check, page_name(where.page), f": the sketch of “{act}” {fault}", hint)
    for where in case.carried(TAPING):
        looked += 1
        if fault := _taped(case, where):
            yield about(check, page_name(where.page), f": the sketch of “tape” {fault}", hint)
    return looked


def _done(case: Case, done: DonePromise, where: Carried) -> Iterator[str]:
    """Yield in words what does not stand at a part of a sketch."""
    wanted = f"{done.count} × {done.letter}" if done.count else done.letter
    shapes = _parts_of(case, where)
    own = shapely.Polygon(carried_lines(where, done.rings)[0])
    words = re.compile(rf"(?<![\w.]){re.escape(normal(wanted))}(?![\w.])")
    lines = [line for line in lines_in(case.lines(where.page), where.box) if words.search(normal(line.text))]
    if lines and not any(_under(shapes.get(done.key, own), line, shapes.values()) for line in lines):
        yield f"has no “{wanted}” under it"
    if done.act == "trace" and any(one.part == _part_of(done.key) for one in case.promises.outlines):
        ink = case.ink(where.page)
        if ink is not None and not _notched(own) and _beside(own, strokes_in(ink, where.box)) < ROUND_ENOUGH:
            yield "has no line of a pencil round it"


def _part_of(key: str) -> str:
    return key.split(":", 4)[4]


def _parts_of(case: Case, where: Carried) -> ShapesByKey:
    """Return the parts of a sketch, as they lie on the page, by their keys."""
    return {
        one.key: shapely.Polygon(carried_lines(other, one.rings)[0])
        for one in case.promises.done
        for other in case.carried(one.key)
        if (other.page, other.box) == (where.page, where.box)
    }


def _under(part: shapely.Polygon, line: TextLine, others: Iterable[shapely.Polygon]) -> bool:
    """Say whether words stand under the middle of a part, and under no other one that lies between."""
    middle, top = (part.bounds[0] + part.bounds[2]) / 2, line.area().bounds[3]
    at = line.x - COUNT_ASIDE <= middle <= line.end_x + COUNT_ASIDE
    down = part.bounds[1] - top
    between = (
        other is not part
        and other.bounds[0] < middle < other.bounds[2]
        and CARRIED_TOLERANCE < part.bounds[1] - other.bounds[1] <= down
        for other in others
    )
    return bool(at and -CARRIED_TOLERANCE <= down <= COUNT_UNDER and not any(between))


def _said(case: Case, said: SaidPromise, where: Carried) -> Iterator[str]:
    """Yield in words what is not said over the parts of a sketch, or not drawn dark in it."""
    if said.dark and _darkened(case, where) < DARK_ENOUGH:
        yield "shows nothing that is painted dark"
    parts, ink = list(_parts_of(case, where).values()), case.ink(where.page)
    if not (said.over and parts and ink is not None):
        return
    drawn = strokes_in(ink, where.box)
    lines = [line for line in lines_in(case.lines(where.page), where.box) if normal(line.text) == normal(said.over)]
    goes = _goes_over if len(parts) > 1 else _leads_to
    if lines and not any(goes(parts, line, drawn) for line in lines):
        yield f"does not say “{said.over}” of all its parts"


def _darkened(case: Case, where: Carried) -> float:
    """Return which share of the place of what is painted first is black: at the left and over the middle of the sketch, before pots."""
    page, box = case.page(where.page), where.box.grown(CARRIED_TOLERANCE)
    place = shapely.box(box.left, (box.bottom + box.top) / 2, box.left + FIRST_PAINTED * box.width, box.top)
    black = [
        shapely.Polygon(ring).intersection(place).area
        for piece in (page.pieces if page else ())
        if piece.visible
        and piece.fill_grey is not None
        and piece.fill_grey <= AS_DARK_AS
        and piece.box.beyond(box) <= 0.0
        for ring in piece.lines()
        if len(ring) > 3
    ]
    return float(sum(black)) / float(place.area)


def _under_frame(line: TextLine, drawn: StrokeSegments) -> tuple[Array, Array]:
    """Return the strokes that begin at the lower side of a frame round words and lead down from it: their upper ends, their lower ones."""
    ups = np.where((drawn.starts[:, 1] >= drawn.ends[:, 1])[:, None], drawn.starts, drawn.ends)
    downs = np.where((drawn.starts[:, 1] >= drawn.ends[:, 1])[:, None], drawn.ends, drawn.starts)
    low, high = line.y - FRAME_UNDER[1], line.y - FRAME_UNDER[0]
    at = (ups[:, 1] >= low) & (ups[:, 1] <= high) & (downs[:, 1] < ups[:, 1] - HARDLY_FALLS)
    at &= (ups[:, 0] >= line.x - FRAME_UNDER[1]) & (ups[:, 0] <= line.end_x + FRAME_UNDER[1])
    return ups[at], downs[at]


def _leads_to(parts: list[shapely.Polygon], line: TextLine, drawn: StrokeSegments) -> bool:
    """Say whether a line leads from words in a frame to the part."""
    ups, downs = _under_frame(line, drawn)
    ways = downs - ups
    ends = ups + ways / np.hypot(*ways.T)[:, None] * FARTHER_THAN_ANY if len(ups) else downs
    return any(parts[0].intersects(shapely.LineString((up, end))) for up, end in zip(ups, ends, strict=True))


def _goes_over(parts: list[shapely.Polygon], line: TextLine, drawn: StrokeSegments) -> bool:
    """Say whether a bracket on which words in a frame stand, or from which a line leads up to them, spans all parts from over them."""
    left, right = min(part.bounds[0] for part in parts), max(part.bounds[2] for part in parts)
    top = max(part.bounds[3] for part in parts)
    _, downs = _under_frame(line, drawn)
    level = np.abs(drawn.starts[:, 1] - drawn.ends[:, 1]) <= HARDLY_FALLS
    heights = drawn.starts[:, 1]
    at_frame = heights[level & (heights >= line.y - FRAME_UNDER[1]) & (heights <= line.y - FRAME_UNDER[0])]
    for height in np.unique(np.round((*downs[:, 1], *at_frame), 1)):
        on = level & (np.abs(heights - height) <= 2 * HARDLY_FALLS)
        xs = np.concatenate((drawn.starts[on, 0], drawn.ends[on, 0]))
        if height < top - HOOK or not len(xs):
            continue
        ends = ((left, xs.min() - left), (right, right - xs.max()))
        if all(short <= HOOK or _tool_at(drawn, float(height), end, float(short)) for end, short in ends):
            return True
    return False


def _tool_at(drawn: StrokeSegments, height: float, end: float, short: float) -> bool:
    """Say whether a line that leans crosses a height near where a bracket ends short: a tool lies over its end."""
    (ax, ay), (bx, by) = drawn.starts.T, drawn.ends.T
    leans = (np.abs(ax - bx) > HARDLY_FALLS) & (np.minimum(ay, by) < height) & (np.maximum(ay, by) > height)
    at = ax[leans] + (height - ay[leans]) * (bx - ax)[leans] / (by - ay)[leans]
    return short <= TOOL_ACROSS and bool((np.abs(at - end) <= TOOL_ACROSS).any())


def _notched(part: shapely.Polygon) -> bool:
    """Say whether a part has notches too narrow for a line round it: closed over them it would show another part."""
    whole = shapely.Polygon(part.exterior)
    closed = whole.buffer(CLOSED_OVER, join_style="mitre").buffer(-CLOSED_OVER, join_style="mitre")
    return bool(closed.difference(whole).area >= FILLED * whole.area)


def _beside(part: shapely.Polygon, drawn: StrokeSegments) -> float:
    """Return the share of the outline of a part that has a line outside it, as a pencil draws it."""
    near, far = DRAWN_ROUND
    lines = shapely.MultiLineString(list(np.stack((drawn.starts, drawn.ends), axis=1)))
    outside = lines.difference(shapely.Polygon(part.exterior).buffer(near))
    points = shapely.points(shapely.get_coordinates(shapely.segmentize(part.exterior, ROUND_STEP)))
    return float(shapely.dwithin(points, outside, far).mean())


def _taped(case: Case, where: Carried) -> str:
    """Return in words what of the sketch of taping does not stand in its column: over an arrow the pages, under it what they make."""
    lines = lines_in(case.lines(where.page), where.box)
    for letter in sorted({one.letter for one in case.promises.outlines if one.row}):
        over = [one for one in lines if re.match(rf"{re.escape(letter)}: ", normal(one.text))]
        made = [one for one in lines if normal(one.text) == normal(f"1 × {letter}")]
        if over and made and not any(_in_column(a, b) for a in over for b in made):
            return f"does not say under each other which pages are {letter}, and that they are one"
    return ""


def _in_column(over: TextLine, made: TextLine) -> bool:
    return abs(over.middle()[0] - made.middle()[0]) <= SAME_COLUMN and over.y > made.y
