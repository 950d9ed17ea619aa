"""Template pages: every part that fits a page, at true size, with its label."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from math import hypot

import shapely

from publisher.basics import Finding, Layer, Path, Point, Pose, Rule, Severity, TextPromise, polyline
from publisher.geometry import Part, polygon
from publisher.pages.model import Drawn, Stroke, Tile
from publisher.pages.sheet import (
    MOST_COMPOSED,
    PAGE_SQUARE,
    Body,
    Context,
    Numbers,
    PageDraft,
    title_fits,
    too_many_pages,
)
from publisher.pages.templates.bevel_guides import guide_drawn
from publisher.pages.templates.compass import CompassStrip, strip_body, strip_key, strip_of
from publisher.pages.templates.dimension_lines import DimensionLine, dimension_lines
from publisher.pages.templates.labels import BLOCK_MARGIN, CUT_CORNER, tag_size
from publisher.pages.templates.layout_points import layout_points, point_leaders, point_notes, point_promises
from publisher.pages.templates.nests import nest_drawn
from publisher.pages.templates.page_words import Lying, Shown, traced_drawn
from publisher.pages.templates.part_notes import mark_notes, quiet_boxes
from publisher.pages.templates.part_strokes import (
    mark_promises,
    mark_strokes,
    outline_promise,
    outline_strokes,
    waste_strokes,
)
from publisher.pages.templates.spots import Spot, sides_carried, spot_drawn, spot_promises
from publisher.pages.templates.template_forms import PADDING, PART_GAP, Chunk
from publisher.pages.templates.template_frames import frames
from publisher.pages.templates.template_labels import sample_count, samples
from publisher.pages.templates.template_plan import planner_of
from publisher.pages.type import LEADER, Setter, as_polygon

MOST_PRINTED = 1000
TOO_MANY_COPIES = Rule(
    "pages/too-many-copies",
    "More copies to print than a pack takes",
    "with use: paste every copy is printed; a slip in a count must not fill a thousand pages",
    Severity.ERROR,
)
TAG_CLEAR = 0.4  # mm between a line to a part and the words of its label
SHORT_LEADER, LONG_LEADER = (
    14.0,
    90.0,
)  # mm from a label to its part: the shorter where nobody says what it must not cross
LAST = (1_000_000, 0)  # where pages stand that bear nothing but compass strips
TITLE_MOST = 64  # letters of a title; a longer one names fewer parts


def most_used_first(context: Context, parts: Iterable[Part]) -> tuple[Part, ...]:
    """Return parts in the order in which their templates stand: those that are cut most often first."""
    return tuple(sorted(parts, key=lambda p: (-context.copies(p), p.letter)))


def refusal(context: Context, small: tuple[Part, ...]) -> PageDraft | None:
    """Return the empty page that says why templates of these parts are not printed; None when they can be."""
    if sum(sample_count(context, p) for p in small) > MOST_PRINTED:
        return _too_many(context, small)
    wanted = tuple(s for part in small for s in samples(context, part))
    if len(wanted) > MOST_COMPOSED and (count := planner_of(context).foreseen(wanted)) > MOST_COMPOSED:
        finding = too_many_pages(context, count, max(small, key=lambda p: sample_count(context, p)))
        return _refused(context, finding)
    return None


def template_drafts(context: Context, pages: tuple[Shown, ...]) -> tuple[PageDraft, ...]:
    """Return the drafts of planned template pages, in the order of their most used parts."""
    rank = {p.id: n for n, p in enumerate(most_used_first(context, context.parts))}
    pages = tuple(sorted(pages, key=lambda page: min((_rank(y, rank) for y in page.lying), default=LAST)))
    return tuple(_draft(context, page, number, rank) for number, page in enumerate(pages, 1))


def _too_many(context: Context, parts: Sequence[Part]) -> PageDraft:
    """Return an empty page with the finding that there is more to print than anybody would."""
    part = max(parts, key=lambda p: sample_count(context, p))
    count = sum(sample_count(context, p) for p in parts)
    finding = TOO_MANY_COPIES.found(
        f"{count} templates would have to be printed, {sample_count(context, part)} of them of part {part.letter} {part.name}; "
        f"a pack takes at most {MOST_PRINTED}",
        subject=part.id,
        hint="write use: trace, so that one template serves all copies, or check the count",
        place=part.place,
        value=float(count),
        limit=float(MOST_PRINTED),
    )
    return _refused(context, finding)


def _refused(context: Context, finding: Finding) -> PageDraft:
    """Return an empty page with a finding."""
    frame = frames(context.paper, PAGE_SQUARE)[0]
    return PageDraft("templates", "templates:1", "Templates", frame, lambda _: Body(), "templates", findings=(finding,))


def _rank(lying: Lying, rank: dict[str, int]) -> tuple[int, int]:
    return (rank[lying.sample.part.id], lying.sample.copy)


def _draft(context: Context, page: Shown, number: int, rank: dict[str, int]) -> PageDraft:
    page = replace(page, lying=tuple(sorted(page.lying, key=lambda y: _rank(y, rank))))
    strips = (strip.part.id for strip, _, _ in strips_of(context, page))
    parts = tuple(dict.fromkeys((*(y.sample.part.id for y in page.lying), *strips)))
    named = [p for i in parts if (p := context.part(i))]
    return PageDraft(
        kind="templates",
        key=f"templates:{number}",
        title=pages_title(named, lambda title: title_fits(context.type, page.frame, title)),
        frame=page.frame,
        body=templates_body(context, page),
        task="templates",
        bookmarks=tuple((f"{p.letter} {p.name}", 1, "") for p in named),
        parts=parts,
    )


def pages_title(parts: list[Part], fits: Callable[[str], bool], what: str = "Templates") -> str:
    """Return a title that fits the header: ``what`` and the parts by letter and name, else by letter, else the first letters and how
    many more."""
    letters = [p.letter for p in parts]
    ways = [[f"{p.letter} {p.name}" for p in parts], letters]
    ways += [[*letters[:shown], f"and {len(letters) - shown} more"] for shown in range(len(letters) - 1, 0, -1)]
    titles = (f"{what}: " + " · ".join(way) for way in ways)
    return next((title for title in titles if len(title) <= TITLE_MOST and fits(title)), what)


def strips_of(context: Context, page: Shown) -> tuple[tuple[CompassStrip, Chunk, Pose], ...]:
    """Return the compass strips of a page, each with what it fills there."""
    found = {chunk.key: (chunk, pose) for chunk, pose in page.chunks}
    parts = [part for part in context.parts if strip_key(part) in found]
    return tuple((strip, *found[strip_key(strip.part)]) for part in parts if (strip := strip_of(context, part)))


def templates_body(context: Context, shown: Shown) -> Callable[[Numbers], Body]:
    """Return the maker of the body of a page with its templates and compass strips; all but the page's number is known now."""
    lying, strips = shown.lying, strips_of(context, shown)
    points = layout_points(context.needs.layouts)
    corners = tuple(points.get(y.sample.part.id, ()) for y in lying)
    placed = tuple(
        template_drawn(context, y, _in_openings(y, lying), own, _beside(y, shown))
        for y, own in zip(lying, corners, strict=True)
    )
    each = tuple(one for one, _ in placed)
    drawn = tuple(thing for one in each for thing in one)

    def body(numbers: Numbers) -> Body:
        page = numbers.page
        drawn_by_hand = (strip_body(context, strip, chunk, pose, page) for strip, chunk, pose in strips)
        notes = (nest_drawn(context.type, note, page) for note in shown.notes)
        guides = (guide_drawn(context.type, guide, page) for guide in shown.guides)
        traced = () if shown.traced is None else (traced_drawn(context.type, shown.traced, page),)
        return sum((*drawn_by_hand, *notes, *guides, *traced), templates(page))

    def templates(page: int) -> Body:
        return Body(
            drawn=drawn,
            tiles=tuple(Tile(y.sample.part.id, max(y.sample.copy, 1), 0, 0, None, y.pose) for y in lying),
            lengths=tuple(line.promise(page) for _, lines in placed for line in lines),
            outlines=tuple(outline_promise(page, y.sample.drawn, max(y.sample.copy, 1), y.pose) for y in lying),
            texts=tuple(
                promise
                for y, own, one in zip(lying, corners, each, strict=True)
                for promise in (
                    *label_promises(page, y),
                    *point_promises(page, own, y.pose, one, y.sample.part.id, max(y.sample.copy, 1)),
                )
            ),
            marks=tuple(
                promise
                for y, one in zip(lying, each, strict=True)
                for promise in mark_promises(page, y.sample.part, max(y.sample.copy, 1), one)
            ),
            carried=tuple(
                sides_carried(page, spot.box, y.sample.part.id, max(y.sample.copy, 1), y.sample.mirrored)
                for y in lying
                for spot in y.spots
            ),
        )

    return body


def _in_openings(one: Lying, lying: tuple[Lying, ...]) -> shapely.Geometry:
    """Return what other parts, with paper round them, take of the openings of one."""
    if not one.sample.drawn.template.holes:
        return shapely.GeometryCollection()
    others = [polygon(y.sample.part.template.outer, y.pose) for y in lying if y is not one]
    room = shapely.union_all([polygon(hole, one.pose) for hole in one.sample.drawn.template.holes])
    return shapely.union_all([other.buffer(2 * PART_GAP) for other in others if room.covers(other)])


def _beside(one: Lying, page: Shown) -> shapely.Geometry:
    """Return all that a line from a label to its part must not cross: other parts, and words."""
    others = [y for y in page.lying if y is not one]
    shapes = [polygon(y.sample.part.template.outer, y.pose) for y in others]
    shapes += [shapely.Polygon(pose.apply_all(chunk.ring)) for chunk, pose in page.chunks]
    shapes += [spot.polygon for y in others for spot in y.spots]
    shapes += [
        as_polygon(box)
        for box in (
            *page.frame.blocked,
            *(n.box for n in page.notes),
            *(g.box for g in page.guides),
            *((page.traced,) if page.traced else ()),
        )
    ]
    shapes += [] if page.traced is None else [as_polygon(page.traced)]
    return shapely.union_all(shapes)


def label_promises(page: int, lying: Lying) -> tuple[TextPromise, ...]:
    """Promise the words of a copy where they stand; those inside it inside its outline."""
    part, copy = lying.sample.part.id, max(lying.sample.copy, 1)
    within = tuple(p for spot in lying.inside for p in spot_promises(page, spot, part, copy))
    others = (spot for spot in (lying.flag, lying.beside) if spot)
    return (*within, *(p for spot in others for p in spot_promises(page, spot)))


def leader(
    setter: Setter, part: Part, pose: Pose, spot: Spot, others: shapely.Geometry | None = None
) -> tuple[Drawn, ...]:
    """Return the line from the tag of a label, or from words without one, that stand beside their part to the part, where it crosses
    nothing of the ``others``: short where nobody knows those. None for a label inside it."""
    shape, box = polygon(part.template.outer, pose), spot.box
    if shape.intersects(spot.polygon):
        return ()
    left, top = box.left + BLOCK_MARGIN, box.top
    wide, tall = tag_size(setter, spot.label)
    tag = shapely.box(left, top - tall, left + wide, top)
    words = spot.polygon.difference(tag.buffer(TAG_CLEAR))
    sides = (
        ((left + (wide - CUT_CORNER) / 2, top), (left, top - tall / 2), (left + wide / 2, top - tall)) if wide else ()
    )
    starts = sorted((shapely.Point(at) for at in sides), key=shape.distance)
    spot_rim = spot.polygon  # from there where its own words stand under the tag, or have none
    for start in (*starts, spot_rim):
        line = _up_to(start, shape, SHORT_LEADER if others is None else LONG_LEADER)
        track = shapely.LineString(line.points) if line else None
        if line is None or track is None or (start is not spot_rim and words.intersects(track)):
            continue
        if others is None or not others.intersects(track):
            return (Stroke(LEADER, (line,), Layer.NOTES, None, "figure"),)
    return ()


def _up_to(start: shapely.Geometry, shape: shapely.Polygon, most: float) -> Path | None:
    """Return the line to a shape that ends before its outline, which nothing else may touch; None when it is too long or short."""
    (ax, ay), (bx, by) = shapely.shortest_line(start, shape).coords
    length = hypot(bx - ax, by - ay)
    if not 1.5 < length < most:
        return None
    short = 1.0 - 0.8 / length
    return polyline(((ax, ay), (ax + (bx - ax) * short, ay + (by - ay) * short)))


def _flag_drawn(lying: Lying) -> tuple[Drawn, ...]:
    """Return the edge of a flag, and the line by which it holds on to its part."""
    if lying.flag is None:
        return ()
    shape = polygon(lying.sample.part.template.outer, lying.pose)
    edge = lying.flag.box.grown(PADDING)
    line = _up_to(as_polygon(edge), shape, 100.0)
    paths = (polyline(edge.corners(), True), *((line,) if line else ()))
    return (Stroke(LEADER, paths, Layer.NOTES, None, "figure"),)


def template_drawn(
    context: Context,
    lying: Lying,
    taken: shapely.Geometry,
    corners: Sequence[Point] = (),
    others: shapely.Geometry | None = None,
) -> tuple[tuple[Drawn, ...], tuple[DimensionLine, ...]]:
    """Return everything of one template, surface first, then outline, then words, so that no line crosses a word; and those of its
    lengths that may be measured.

    ``taken``: what other parts take of its openings, where nothing is hatched. ``corners``: its own points by which layouts lay it.
    ``others``: what else stands on the page, which a long line from its label keeps off.
    """
    setter, part, pose = context.type, lying.sample.drawn, lying.pose
    labels = [spot.polygon.buffer(0.5) for spot in lying.spots]
    notes = mark_notes(lying.sample.part, pose, setter, labels)
    blocked = [*labels, *(note.area() for note in notes)]
    points = point_notes(corners, lying.sample.part, pose, setter, blocked)
    blocked += [taken, *(note.area() for note in points)]
    if lying.sample.real:  # others lie nested in it
        blocked += [polygon(hole, pose) for hole in lying.sample.part.template.holes]
    lines = dimension_lines(lying.sample.part, pose, setter, context.paper.first, blocked)
    notes += points
    quiet = [*(spot.box.grown(0.8) for spot in lying.spots), *quiet_boxes(part, pose, notes)]
    quiet += [box for line in lines for box in line.quiet]
    words: list[Drawn] = [w for n in notes for w in n.drawn(setter)]
    words += point_leaders(corners, points, pose)
    drawn = (
        *waste_strokes(part, pose, setter, taken=shapely.union_all([taken, *(line.area for line in lines)])),
        *mark_strokes(part, pose, quiet=quiet),
        *outline_strokes(part, pose),
        *words,
        *(thing for line in lines for thing in line.drawn(setter)),
        *(leader(setter, part, pose, lying.beside, others) if lying.beside else ()),
        *_flag_drawn(lying),
        *(thing for spot in lying.spots for thing in spot_drawn(setter, spot, pose.turn)),
    )
    return drawn, lines
