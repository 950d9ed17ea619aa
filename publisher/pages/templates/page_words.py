"""The words of the templates of one page, when all of them lie in their places: what a piece may lose is set in free room."""

from collections.abc import Iterable
from dataclasses import replace

import shapely

from publisher.basics import Box, Pose, TextPromise, record
from publisher.geometry import polygon
from publisher.pages.model import Layer
from publisher.pages.sheet import Body, Context, Frame
from publisher.pages.templates.bevel_guides import BevelGuide, bevel_guides
from publisher.pages.templates.label_room import LabelRoom
from publisher.pages.templates.label_words import TRACED, Says, shortened
from publisher.pages.templates.labels import WITH_NOTES, Label, details, faces
from publisher.pages.templates.nests import Nest, NestNote, NoteBlock, nest_note
from publisher.pages.templates.spots import Spot
from publisher.pages.templates.template_forms import PADDING, PART_AWAY, PART_GAP, Chunk, places_round
from publisher.pages.templates.template_frames import free_area
from publisher.pages.templates.template_labels import Labels, Sample, part_room
from publisher.pages.type import LEAST, Setter, as_polygon

NOTHING = shapely.Polygon()
SAME_DISTANCE = 0.1  # mm: of words that stand by so much nearer to one part than to another nobody sees it
TRACED_MEASURES = (75.0, 60.0, 40.0, 28.0)  # mm wide: the sentence on tracing, where it stands alone


@record
class Lying:
    """A copy on a page, with its words: those inside it; a flag that is cut off last; what it may lose, in free room."""

    sample: Sample
    pose: Pose
    flag: Spot | None = None
    inside: tuple[Spot, ...] = ()
    beside: Spot | None = None

    @property
    def spots(self) -> tuple[Spot, ...]:
        """All blocks of words."""
        return (*self.inside, *(spot for spot in (self.flag, self.beside) if spot))


@record
class Shown:
    """One page of templates."""

    frame: Frame
    lying: tuple[Lying, ...]
    chunks: tuple[tuple[Chunk, Pose], ...] = ()  # each with what carries it to the page
    nests: tuple[tuple[Nest, Pose], ...] = ()
    notes: tuple[NestNote, ...] = ()  # of the nests
    guides: tuple[BevelGuide, ...] = ()
    traced: Box | None = None  # where the page says how a template is traced: no label on it has room for that

    @property
    def said(self) -> int:
        """How much stands in free room: letters of labels, notes and guides."""
        beside = sum(len(text) for lying in self.lying if lying.beside for text in lying.beside.label.promised)
        return beside + len(self.notes) + len(self.guides)

    @property
    def words(self) -> tuple[Box, ...]:
        """The boxes of all words in free room."""
        beside = (lying.beside.box for lying in self.lying if lying.beside)
        traced = () if self.traced is None else (self.traced,)
        return (*beside, *(note.box for note in self.notes), *(guide.box for guide in self.guides), *traced)


def with_words(context: Context, labels: Labels, page: Shown) -> Shown:
    """Return the page with the words of each template: inside it, and what it may lose beside it.

    These look for free paper next to the part, then anywhere, then for room inside it; what finds none is said in fewer words,
    and last is left to the cut list.
    """
    found = [(labels.inside(y.sample, y.pose.turn), Pose(y.pose.x, y.pose.y)) for y in page.lying]
    lying = [
        replace(y, inside=tuple(s.moved(shift) for s in inside.spots))
        for y, (inside, shift) in zip(page.lying, found, strict=True)
    ]
    paper = free_paper(free_area(page.frame), lying, page.chunks)
    notes = []
    for nest, pose in page.nests:
        if note := nest_note(context.type, nest, pose, paper):
            notes.append(note)
            paper = paper.difference(as_polygon(note.box).buffer(PART_AWAY, join_style="mitre"))
    shapes = [polygon(y.sample.part.template.outer, y.pose) for y in lying]
    tiles = [shapely.Polygon(pose.apply_all(chunk.ring)) for chunk, pose in page.chunks]
    for number, (y, (inside, _)) in enumerate(zip(lying, found, strict=True)):
        if y.flag is None and not inside.all:
            others = shapely.union_all([shape for shape in shapes if shape is not shapes[number]] + tiles)
            spot = _beside(context, labels.said(y.sample), y, paper, others)
            if spot:
                lying[number] = replace(y, beside=spot)
                paper = paper.difference(spot.polygon.buffer(PART_AWAY, join_style="mitre"))
    traced = _traced(labels, lying, paper)
    if traced is not None:
        paper = paper.difference(as_polygon(traced).buffer(PART_AWAY, join_style="mitre"))
    # where tiles stand their notes need the room
    guides = () if page.chunks else bevel_guides(context.type, (y.sample.part for y in lying), paper)
    return replace(page, lying=tuple(lying), notes=tuple(notes), guides=guides, traced=traced)


def _traced(labels: Labels, lying: Iterable[Lying], paper: shapely.Geometry) -> Box | None:
    """Return where the sentence on tracing stands on free paper; None where a label of the page says it, or there is no room."""
    copies = [y for y in lying if TRACED in labels.said(y.sample).notes]
    spots = [spot for y in copies for spot in y.spots]
    if not copies or any(TRACED in spot.label.says.notes and spot.label.form in WITH_NOTES for spot in spots):
        return None
    room, setter = LabelRoom(paper, clear=0.0), labels.context.type
    tried = (NoteBlock(width, setter.height(TRACED, LEAST, width)) for width in TRACED_MEASURES)
    block, (x, y) = next((found for block in tried if (found := room.best((block,)))), (None, (0.0, 0.0)))
    return None if block is None else Box(x, y, x + block.width, y + block.height)


def traced_drawn(setter: Setter, box: Box, page: int) -> Body:
    """Return the sentence on tracing with its promise."""
    block = setter.paragraph(TRACED, LEAST, box.left, box.top, box.width, layer=Layer.NOTES)
    return Body(block.drawn, texts=(TextPromise(page, TRACED),))


def free_paper(
    area: shapely.Geometry, lying: Iterable[Lying], chunks: Iterable[tuple[Chunk, Pose]] = ()
) -> shapely.Geometry:
    """Return where words may stand that belong to no part's inside: off the parts, their flags and all else on the page."""
    taken = [polygon(y.sample.part.template.outer, y.pose).buffer(PART_GAP - 0.05) for y in lying]
    taken += [y.flag.polygon.buffer(PADDING + PART_AWAY, join_style="mitre") for y in lying if y.flag]
    taken += [shapely.Polygon(pose.apply_all(chunk.ring)).buffer(PART_GAP - 0.05) for chunk, pose in chunks]
    return area.difference(shapely.union_all(taken))


def _beside(
    context: Context, said: Says, lying: Lying, paper: shapely.Geometry, others: shapely.Geometry
) -> Spot | None:
    part, pose = lying.sample.part, lying.pose
    shape = polygon(part.template.outer, pose)
    for words in shortened(said):
        groups = tuple(details(context.type, words))
        if spot := next((s for group in groups if (s := near(shape, group, paper, others))), None):
            return spot
        taken = [s.polygon for s in lying.inside]
        room = part_room(context, part, pose, taken)
        if spot := next((Spot(*f) for group in groups if (f := room.best(group))), None):
            return spot
    if not said.face:
        return None
    group = faces(context.type, said)
    return near(shape, group, paper, others) or next((Spot(*f) for label in group if (f := room.best((label,)))), None)


def near(
    shape: shapely.Polygon, group: Iterable[Label], paper: shapely.Geometry, others: shapely.Geometry = NOTHING
) -> Spot | None:
    """Return a place on free paper for one of the blocks: in line with a side of the shape, else as near to it as can be; on no account
    nearer to one of the ``others``, whose words they would be taken for."""
    settings = tuple(group)
    shapely.prepare(paper)

    def own(box: Box) -> bool:
        block = as_polygon(box)
        return bool(others.is_empty or block.distance(shape) <= block.distance(others) + SAME_DISTANCE)

    for label in settings:
        for box in places_round(shape, label.width, label.height, PART_GAP):
            if paper.covers(as_polygon(box)) and own(box):
                return Spot(label, (box.left, box.bottom))
    room = LabelRoom(paper, clear=0.0)
    around = Box(*shape.bounds)
    found = [
        (away, Spot(label, at))
        for label in settings
        if (nearest := room.nearest(label, around, own))
        for away, at in (nearest,)
    ]
    return min(found, key=lambda one: one[0])[1] if found else None
