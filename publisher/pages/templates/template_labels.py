"""Where the labels of templates stand: inside the part where there is room, else close beside it."""

from dataclasses import dataclass

import shapely

from publisher.basics import Point, Pose
from publisher.geometry import Part
from publisher.pages.sheet import Context
from publisher.pages.templates.label_room import Room
from publisher.pages.templates.label_words import says
from publisher.pages.templates.labels import STYLES, Label, blocks, reset
from publisher.pages.templates.part_notes import mark_notes
from publisher.pages.templates.part_strokes import quiet_lines, region_polygon
from publisher.pages.templates.template_forms import Form, beside, cover
from publisher.pages.type import NOTE, as_polygon

UPRIGHT = (0.0, 90.0)


@dataclass(frozen=True, slots=True)
class Sample:
    """One drawn copy to be placed: a part, which copy (0: the template that is traced), whether it is mirrored."""

    part: Part
    copy: int
    mirrored: bool


@dataclass(frozen=True, slots=True)
class Inside:
    """A label inside its part: lower left corner in mm from the part's origin on the page, and the block's own turn."""

    label: Label
    at: Point
    lean: float


def sample_count(context: Context, part: Part) -> int:
    """Return how many copies of a part are printed."""
    return 1 if context.design.use == "trace" else context.copies(part)


def samples(context: Context, part: Part) -> tuple[Sample, ...]:
    """Return what is printed of a part: one template to trace, or every copy to paste.

    Of ``count`` copies the last are the mirrored ones; spares, as drawn, come after them.
    """
    if context.design.use == "trace":
        return (Sample(part, 0, False),)
    plain = part.count - part.mirrored
    return tuple(Sample(part, n, plain < n <= part.count) for n in range(1, context.copies(part) + 1))


class Labels:
    """Finds places for labels; all copies of a part that are alike share what was found for the one with most to say."""

    def __init__(self, context: Context) -> None:
        """Start with nothing known."""
        self.context = context
        self._models: dict[tuple[str, bool], Sample] = {}
        self._inside: dict[tuple[str, bool, float], Inside | None] = {}
        self._forms: dict[tuple[str, bool, float], Form] = {}

    def model(self, sample: Sample) -> Sample:
        """Return the copy, alike but for its number, whose label is widest."""
        key = (sample.part.id, sample.mirrored)
        if key not in self._models:
            alike = [s for s in samples(self.context, sample.part) if s.mirrored == sample.mirrored] or [sample]
            ends = dict.fromkeys((alike[0], alike[len(alike) // 2], alike[-1]))
            self._models[key] = max(ends, key=lambda s: len(says(self.context, s.part, s.copy, s.mirrored).count))
        return self._models[key]

    def fits_inside(self, sample: Sample) -> bool:
        """Say whether the label fits into the part when one of them stands upright."""
        return any(self._upright(self.model(sample), turn) for turn in UPRIGHT)

    def inside(self, sample: Sample, turn: float) -> Inside | None:
        """Return the label inside a part turned so: upright on the page if it fits so, else turned with the part."""
        model = self.model(sample)
        found = self._upright(model, turn) or self._leaning(model, turn)
        if found is None or sample == model:
            return found
        return Inside(self._own(found.label, sample), found.at, found.lean)

    def forms(self, sample: Sample, turns: tuple[float, ...]) -> tuple[Form, ...]:
        """Return how the sample may go to the packer: bare when its label fits inside, else with the label beside it, for each
        of the part's turns."""
        if self.fits_inside(sample):
            return (self._form(sample, 0.0, bare=True),)
        return tuple(self._form(sample, turn, bare=False) for turn in turns)

    def label_of(self, form: Form, sample: Sample) -> Label | None:
        """Return the sample's own label for the place that a form keeps."""
        return self._own(form.label, sample) if form.label and sample != self.model(sample) else form.label

    def _own(self, label: Label, sample: Sample) -> Label:
        return reset(label, self.context.type, says(self.context, sample.part, sample.copy, sample.mirrored))

    def _form(self, sample: Sample, turn: float, *, bare: bool) -> Form:
        key = (sample.part.id, sample.mirrored, turn)
        if key not in self._forms:
            model = self.model(sample)
            if bare:
                ring = Pose(mirrored=model.mirrored).apply_all(model.part.template.outer.points)
                self._forms[key] = Form(0.0, cover(shapely.Polygon(ring)))
            else:
                said = says(self.context, model.part, model.copy, model.mirrored)
                settings = tuple(b for group in blocks(self.context.type, said, (NOTE,)) for b in group)
                self._forms[key] = beside(model.part, turn, model.mirrored, settings)
        return self._forms[key]

    def _upright(self, model: Sample, turn: float) -> Inside | None:
        key = (model.part.id, model.mirrored, turn)
        if key not in self._inside:
            room = part_room(self.context, model.part, Pose(turn=turn, mirrored=model.mirrored))
            said = says(self.context, model.part, model.copy, model.mirrored)
            sizes = STYLES if model.copy else STYLES[:2]  # where every copy is printed, small words inside save pages
            groups = blocks(self.context.type, said, sizes)
            found = next((f for group in groups if (f := room.best(group))), None)
            self._inside[key] = Inside(*found, 0.0) if found else None
        return self._inside[key]

    def _leaning(self, model: Sample, turn: float) -> Inside | None:
        """Turn the block with the part from where it fits upright; a block that would stand on its head is set the other way."""
        for base in UPRIGHT:
            found = self._upright(model, base)
            if found is None:
                continue
            lean = (turn - base + 180.0) % 360.0 - 180.0
            (x, y), label = found.at, found.label
            if -90.0 < lean <= 90.0:
                return Inside(label, Pose(turn=lean).apply((x, y)), lean)
            corner = Pose(turn=lean).apply((x + label.width, y + label.height))
            return Inside(label, corner, lean - 180.0 if lean > 0 else lean + 180.0)
        return None


def part_room(context: Context, part: Part, pose: Pose) -> Room:
    """Return the free places inside a part for words: clear of its edges, its marks and the words of its marks."""
    notes = [as_polygon(n.box) for n in mark_notes(part, pose, context.type)]
    return Room(region_polygon(part.template, pose), shapely.union_all([quiet_lines(part, pose), *notes]))
