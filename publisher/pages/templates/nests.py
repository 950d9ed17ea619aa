"""Nested templates: layers of a stack that lie one inside the other share one card, which is trimmed from line to line.

The largest is traced first, as often as its count says; then the card is trimmed to the next line, and that layer is traced. Each
keeps its letter and its sides on the ring that falls away, or, the innermost, inside it.
"""

from collections.abc import Iterator
from dataclasses import replace

import shapely

from publisher.basics import Box, Layer, Pose, Purpose, TextPromise, record
from publisher.basics.wording import listed
from publisher.geometry import Part, Region, polygon
from publisher.pages.sheet import Body, Context
from publisher.pages.templates.label_room import LabelRoom
from publisher.pages.templates.template_labels import Labels, Sample
from publisher.pages.type import LEAST, NOTE, Block, Setter, TypeStyle

LEAST_RING = 10.0  # mm between two lines: letter and sides stand there
LEAST_NESTED = 2
NEST_MEASURES = (110.0, 84.0, 60.0, 45.0)  # mm
NAMED_IN_NEST = 12  # letters in the note's first line
ORDER = (
    "Cut the card out along the outermost line and trace that part as often as it is cut, with its marks. Prick the next line "
    "through: there the next layer lies. Only then trim the card to that line and trace the next part, and so on: what is trimmed "
    "off cannot be traced again."
)


@record
class Nest:
    """Templates on one card, the outermost first. The part of each has the next one's outline as an opening, where no words stand;
    ``real`` is the part as it is drawn."""

    samples: tuple[Sample, ...]

    @property
    def ids(self) -> frozenset[str]:
        """The ids of its parts."""
        return frozenset(sample.part.id for sample in self.samples)

    @property
    def title(self) -> str:
        """What its note is called."""
        return f"Nested templates: {listed((sample.part.letter for sample in self.samples), NAMED_IN_NEST)}"


@record
class NoteBlock:
    """The size of a note in mm, as a block that is looked up a place for."""

    width: float
    height: float
    ease: float = 1.0


@record
class NestNote:
    """Where the note of a nest stands, and the size of its words."""

    nest: Nest
    box: Box
    style: TypeStyle


def nests_of(context: Context, parts: tuple[Part, ...]) -> tuple[Nest, ...]:
    """Return the nests that the stacks of a design give, of these parts, each part in one at most."""
    if context.design.use != "trace":
        return ()
    free = {part.id: part for part in parts if not part.mirrored and part.half is None}
    found = []
    for _, layers in context.joined.layers:
        chain: list[Part] = []
        poses: list[Pose] = []
        for layer in layers:
            part = free.get(layer.part)
            if part in chain:
                continue
            if part is None or (chain and not (layer.pose == poses[-1] and _inside(part, chain[-1]))):
                found.append(chain)
                chain, poses = [], []
            if part is not None:
                chain.append(part)
                poses.append(layer.pose)
        found.append(chain)
    nests = []
    for chain in found:
        if len(chain) >= LEAST_NESTED and all(part.id in free for part in chain):
            nests.append(Nest(tuple(_samples(chain))))
            free = {part_id: part for part_id, part in free.items() if part not in chain}
    return tuple(nests)


def _inside(part: Part, outer: Part) -> bool:
    """Say whether a template lies wholly inside another, which has no openings, with a ring of card between."""
    if outer.template.holes or outer.board != part.board:
        return False
    return bool(polygon(outer.template).buffer(-LEAST_RING).covers(polygon(part.template)))


def _samples(chain: list[Part]) -> Iterator[Sample]:
    for number, part in enumerate(chain):
        if number + 1 == len(chain):
            yield Sample(part, 0, False)
            continue
        inner = chain[number + 1].template.outer
        marks = tuple(
            m for m in part.marks if not (m.purpose is Purpose.LAP and m.path.closed)
        )  # the next outline says it
        ringed = replace(part, template=Region(part.template.outer, (inner,)), marks=marks)
        yield Sample(ringed, 0, False, real=replace(part, marks=marks))


def says_enough(labels: Labels, nest: Nest) -> bool:
    """Say whether each template of a nest finds room on its own ring for what a piece must not lose."""
    return all(labels.enough(sample) for sample in nest.samples)


def nest_note(setter: Setter, nest: Nest, pose: Pose, paper: shapely.Geometry) -> NestNote | None:
    """Return where the note of a nest stands on free paper, near the outermost template; None where there is no room."""
    room = LabelRoom(paper, clear=0.0)
    around = Box(*polygon(nest.samples[0].part.template.outer, pose).bounds)
    for style in (NOTE, LEAST):
        tried = []
        for measure in NEST_MEASURES:
            height = _set(setter, nest, style, 0.0, 0.0, measure).height
            if near := room.nearest(NoteBlock(measure, height), around):
                (away, (x, y)) = near
                tried.append((away, Box(x, y, x + measure, y + height)))
        if tried:
            return NestNote(nest, min(tried, key=lambda one: one[0])[1], style)
    return None


def _set(setter: Setter, nest: Nest, style: TypeStyle, x: float, top: float, width: float) -> Block:
    head = setter.paragraph(nest.title, style.bold(), x, top, width, layer=Layer.NOTES)
    rest = setter.paragraph(ORDER, style, x, top - head.height, width, layer=Layer.NOTES)
    return Block((*head.drawn, *rest.drawn), head.height + rest.height)


def nest_drawn(setter: Setter, note: NestNote, page: int) -> Body:
    """Return the note of a nest with its promise."""
    block = _set(setter, note.nest, note.style, note.box.left, note.box.top, note.box.width)
    return Body(block.drawn, texts=(TextPromise(page, note.nest.title),))
