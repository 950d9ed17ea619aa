"""Template pages: every part that fits a page, at true size, with its label."""

from collections.abc import Callable
from math import hypot

import shapely

from publisher.basics import Box, Layer, Pose, Rule, Severity, TextPromise
from publisher.geometry import Part
from publisher.pages.model import Drawn, Path, Stroke, Tile
from publisher.pages.sheet import SQUARE, Body, Context, Numbers, PageDraft, title_fits
from publisher.pages.templates.labels import CUT_CORNER, MARGIN, placed, tag_size
from publisher.pages.templates.part_notes import mark_notes, quiet_boxes
from publisher.pages.templates.part_strokes import (
    mark_promises,
    mark_strokes,
    outline_promise,
    outline_strokes,
    waste_strokes,
)
from publisher.pages.templates.template_frames import frames
from publisher.pages.templates.template_labels import sample_count, samples
from publisher.pages.templates.template_plan import Lying, Shown, planner_of
from publisher.pages.type import LEADER, Setter, as_polygon

MOST_COPIES = 1000
TOO_MANY_COPIES = Rule(
    "pages/too-many-copies",
    "More copies to print than a pack takes",
    "with use: paste every copy is printed; a slip in a count must not fill a thousand pages",
    Severity.ERROR,
)
TITLE_MOST = 64  # letters of a title; a longer one names fewer parts


def template_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the template pages: parts that fit a page, most used first, on as few pages as can be found."""
    planner = planner_of(context)
    small = [p for p in context.parts if planner.fits(p)]
    small.sort(key=lambda p: (-context.copies(p), p.letter))
    if sum(sample_count(context, p) for p in small) > MOST_COPIES:
        return (_too_many(context, small),)
    wanted = tuple(s for part in small for s in samples(context, part))
    if not wanted:
        return ()
    pages, _ = planner.plan(wanted)
    rank = {p.id: n for n, p in enumerate(small)}
    pages = tuple(sorted(pages, key=lambda page: min(_rank(y, rank) for y in page.lying)))
    return tuple(_draft(context, page, number, rank) for number, page in enumerate(pages, 1))


def _too_many(context: Context, parts: list[Part]) -> PageDraft:
    """Return an empty page with the finding that there is more to print than anybody would."""
    part = max(parts, key=lambda p: sample_count(context, p))
    count = sum(sample_count(context, p) for p in parts)
    finding = TOO_MANY_COPIES.found(
        f"{count} templates would have to be printed, {sample_count(context, part)} of them of part {part.letter} {part.name}; "
        f"a pack takes at most {MOST_COPIES}",
        subject=part.id,
        hint="write use: trace, so that one template serves all copies, or check the count",
        place=part.place,
        value=float(count),
        limit=float(MOST_COPIES),
    )
    frame = frames(context.paper, SQUARE)[0]
    return PageDraft("templates", "templates:1", "Templates", frame, lambda _: Body(), "templates", findings=(finding,))


def _rank(lying: Lying, rank: dict[str, int]) -> tuple[int, int]:
    return (rank[lying.sample.part.id], lying.sample.copy)


def _draft(context: Context, page: Shown, number: int, rank: dict[str, int]) -> PageDraft:
    lying = sorted(page.lying, key=lambda y: _rank(y, rank))
    parts = tuple(dict.fromkeys(y.sample.part.id for y in lying))
    named = [p for i in parts if (p := context.part(i))]
    return PageDraft(
        kind="templates",
        key=f"templates:{number}",
        title=_title(named, lambda title: title_fits(context.type, page.frame, title)),
        frame=page.frame,
        body=_body(context, tuple(lying)),
        task="templates",
        bookmarks=tuple((f"{p.letter} {p.name}", 1) for p in named),
        parts=parts,
    )


def _title(parts: list[Part], fits: Callable[[str], bool]) -> str:
    """Return a title that fits the header: the parts by letter and name, else by letter, else the first letters and how many more."""
    letters = [p.letter for p in parts]
    ways = [[f"{p.letter} {p.name}" for p in parts], letters]
    ways += [[*letters[:shown], f"and {len(letters) - shown} more"] for shown in range(len(letters) - 1, 0, -1)]
    titles = ("Templates: " + " · ".join(way) for way in ways)
    return next((title for title in titles if len(title) <= TITLE_MOST and fits(title)), "Templates")


def _body(context: Context, lying: tuple[Lying, ...]) -> Callable[[Numbers], Body]:
    """Return the maker of the page's body; all but the page's number is known now."""
    each = tuple(template_drawn(context.type, y) for y in lying)
    drawn = tuple(thing for one in each for thing in one)

    def body(numbers: Numbers) -> Body:
        page = numbers.page
        return Body(
            drawn=drawn,
            tiles=tuple(Tile(y.sample.part.id, max(y.sample.copy, 1), 0, 0, None, y.pose) for y in lying),
            outlines=tuple(outline_promise(page, y.sample.part, max(y.sample.copy, 1), y.pose) for y in lying),
            texts=tuple(promise for y in lying for promise in label_promises(page, y)),
            marks=tuple(
                promise
                for y, one in zip(lying, each, strict=True)
                for promise in mark_promises(page, y.sample.part, max(y.sample.copy, 1), one)
            ),
        )

    return body


def label_box(lying: Lying) -> Box:
    """Return the rectangle of the page in which a label stands."""
    pose = Pose(*lying.label_at, lying.label_turn)
    wide, tall = lying.label.width, lying.label.height
    corners = pose.apply_all(((0.0, 0.0), (wide, 0.0), (wide, tall), (0.0, tall)))
    xs, ys = zip(*corners, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def label_promises(page: int, lying: Lying) -> tuple[TextPromise, ...]:
    """Promise the words of a label near where it stands."""
    box = label_box(lying)
    middle = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
    within = hypot(box.width, box.height) / 2 + 3.0
    return tuple(TextPromise(page, text, middle, within) for text in lying.label.promised)


def leader(setter: Setter, lying: Lying) -> tuple[Drawn, ...]:
    """Return the short line from the tag of a label that stands beside its part to the part; none for a label inside it."""
    shape = shapely.Polygon(lying.pose.apply_all(lying.sample.part.template.outer.points))
    if shape.intersects(as_polygon(label_box(lying))):
        return ()
    left, top = label_box(lying).left + MARGIN, label_box(lying).top
    wide, tall = tag_size(setter, lying.label)
    sides = ((left + (wide - CUT_CORNER) / 2, top), (left, top - tall / 2), (left + wide / 2, top - tall))
    start = min((shapely.Point(p) for p in sides), key=shape.distance)
    (ax, ay), (bx, by) = shapely.shortest_line(start, shape).coords
    length = hypot(bx - ax, by - ay)
    if not 1.5 < length < 14.0:
        return ()
    short = 1.0 - 0.8 / length  # it ends before the outline, which nothing else may touch
    end = (ax + (bx - ax) * short, ay + (by - ay) * short)
    return (Stroke(LEADER, (Path(((ax, ay), end)),), Layer.NOTES, None, "figure"),)


def template_drawn(setter: Setter, lying: Lying) -> tuple[Drawn, ...]:
    """Return everything of one template: surface first, then outline, then words, so that no line crosses a word."""
    part, pose = lying.sample.part, lying.pose
    notes = mark_notes(part, pose, setter)
    quiet = [label_box(lying).grown(0.8), *quiet_boxes(part, pose, notes)]
    words = [w for n in notes for w in setter.line(n.text, n.style, n.x, n.y, align="centre", layer=Layer.NOTES)]
    return (
        *waste_strokes(part, pose, setter),
        *mark_strokes(part, pose, quiet=quiet),
        *outline_strokes(part, pose),
        *words,
        *leader(setter, lying),
        *placed(lying.label, setter, Pose(*lying.label_at, lying.label_turn)),
    )
