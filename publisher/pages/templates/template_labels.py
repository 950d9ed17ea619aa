"""Where the labels of templates stand: what a piece must not lose inside its outline, the rest there too or close beside it.

The order in which words give way: the whole label inside; what a piece must not lose (letter, count, which side up) in large type
and small, upright, along the page's side, aslant; its letter apart from the rest; the letter alone, and all else on a flag of paper
that is cut off last; all on the flag.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

import shapely

from publisher.basics import Pose, record
from publisher.geometry import Part, polygon
from publisher.pages.sheet import Context
from publisher.pages.templates.label_room import LINE_CLEAR, LabelRoom
from publisher.pages.templates.label_words import Says, says
from publisher.pages.templates.labels import STYLES, Label, alone, blocks, flags, identities, letters, reset, rests
from publisher.pages.templates.part_notes import mark_notes
from publisher.pages.templates.part_strokes import is_texture, quiet_lines
from publisher.pages.templates.spots import Spot
from publisher.pages.templates.template_forms import Form, beside, cover, roomy, uncovered
from publisher.pages.templates.top_marks import TOP

UPRIGHT = (0.0, 90.0)
LEANS = tuple(float(turn) for turn in range(-75, 90, 15))
TIGHT = 0.7  # mm between words and a line where a piece has no room for more
CLOSEST = 0.4  # and between a letter and the sides of a piece that is hardly wider


@record
class Sample:
    """One drawn copy to be placed: a part, which copy (0: the template that is traced), whether it is mirrored.

    ``real``: the part as it is drawn, where ``part`` has an opening more in which others are nested, so that no words stand there.
    """

    part: Part
    copy: int
    mirrored: bool
    real: Part | None = None

    @property
    def drawn(self) -> Part:
        """The part as it is drawn and promised."""
        return self.real or self.part


def sample_count(context: Context, part: Part) -> int:
    """Return how many copies of a part are printed."""
    return 1 if context.design.use == "trace" else context.copies(part)


def samples(context: Context, part: Part) -> tuple[Sample, ...]:
    """Return what is printed of a part: one template to trace, or every copy to paste.

    Of ``count`` copies the last are the mirrored ones; spares, as drawn, come after them.
    """
    if context.design.use == "trace":
        return (first_sample(context, part),)
    plain = part.count - part.mirrored
    return tuple(Sample(part, n, plain < n <= part.count) for n in range(1, context.copies(part) + 1))


def first_sample(context: Context, part: Part) -> Sample:
    """Return the first of a part's samples."""
    traced = context.design.use == "trace"
    return Sample(part, 0 if traced else 1, not traced and part.mirrored >= part.count)


def _numbers_alike(context: Context, sample: Sample) -> range:
    """Return numbers from the first to the last of the copies that are alike but for their number."""
    part = sample.part
    if sample.copy == 0:
        return range(1)
    plain = part.count - part.mirrored
    if sample.mirrored:
        return range(plain + 1, part.count + 1)
    last = context.copies(part) if part.spare else plain
    return range(1 if plain else part.count + 1, last + 1)


@record
class Inside:
    """What stands inside a part: the ``spots`` in mm from its origin on the page, and whether they say ``all`` that a label says,
    all that the piece must not lose (``enough``), or less."""

    spots: tuple[Spot, ...]
    all: bool
    enough: bool


class Labels:
    """Finds places for labels; all copies of a part that are alike share what was found for the one with most to say."""

    def __init__(self, context: Context, like: "Labels | None" = None) -> None:
        """Start with nothing known, or with the places inside parts that ``like`` has found."""
        self.context = context
        self._models: dict[tuple[str, bool], Sample] = like._models if like else {}
        self._says: dict[tuple[str, int, bool], Says] = like._says if like else {}
        self._inside: dict[tuple[str, bool, float], Inside] = like._inside if like else {}
        self._forms: dict[tuple[str, bool, float], Form] = {}
        self._flagged: set[tuple[str, bool]] = set()

    def flag(self, samples: Iterable[Sample]) -> bool:
        """Give these samples, and all that are alike, a flag from now on: their pages had no room for what they must say. Say whether
        one of them had none before."""
        asked = {(sample.part.id, sample.mirrored) for sample in samples}
        if asked <= self._flagged:
            return False
        self._flagged |= asked
        self._forms = {key: form for key, form in self._forms.items() if key[:2] not in self._flagged}
        return True

    def said(self, sample: Sample) -> Says:
        """Return the words of a sample's label."""
        key = (sample.part.id, sample.copy, sample.mirrored)
        if key not in self._says:
            self._says[key] = says(self.context, sample.part, sample.copy, sample.mirrored)
        return self._says[key]

    def model(self, sample: Sample) -> Sample:
        """Return the copy, alike but for its number, whose label is widest."""
        key = (sample.part.id, sample.mirrored)
        if key not in self._models:
            alike = _numbers_alike(self.context, sample)
            ends = dict.fromkeys((alike[0], alike[len(alike) // 2], alike[-1]))
            self._models[key] = max(
                (Sample(sample.part, copy, sample.mirrored) for copy in ends), key=lambda s: len(self.said(s).copies)
            )
        return self._models[key]

    def enough(self, sample: Sample) -> bool:
        """Say whether all that a piece must not lose stands inside it."""
        return (sample.part.id, sample.mirrored) not in self._flagged and self._found(self.model(sample), 0.0).enough

    def inside(self, sample: Sample, turn: float) -> Inside:
        """Return what stands inside a part turned so: upright on the page if it fits so, else turned with the part."""
        model = self.model(sample)
        found = self._found(model, turn)
        if sample == model:
            return found
        return replace(found, spots=tuple(replace(s, label=self._own(s.label, sample)) for s in found.spots))

    def forms(self, sample: Sample, turns: tuple[float, ...]) -> tuple[Form, ...]:
        """Return how the sample may go to the packer: bare when it holds enough words inside, else with a flag beside it, for each
        of the part's turns."""
        if self.enough(sample):
            return (self._form(sample, 0.0, bare=True),)
        return tuple(self._form(sample, turn, bare=False) for turn in turns)

    def flag_of(self, form: Form, sample: Sample) -> Label | None:
        """Return the sample's own flag for the place that a form keeps."""
        return self._own(form.label, sample) if form.label and sample != self.model(sample) else form.label

    def _own(self, label: Label, sample: Sample) -> Label:
        return reset(label, self.context.type, self.said(sample))

    def _form(self, sample: Sample, turn: float, *, bare: bool) -> Form:
        key = (sample.part.id, sample.mirrored, turn)
        if key not in self._forms:
            model = self.model(sample)
            if bare:
                own = polygon(model.part.template, Pose(mirrored=model.mirrored))
                inner = (uncovered(hole) for hole in map(shapely.Polygon, own.interiors) if roomy(hole))
                holes = tuple(ring for ring in inner if ring)
                self._forms[key] = Form(0.0, cover(own), holes=holes)
            else:
                settings = flags(self.context.type, self.said(model))
                self._forms[key] = beside(model.part, turn, model.mirrored, settings)
        return self._forms[key]

    def _found(self, model: Sample, turn: float) -> Inside:
        key = (model.part.id, model.mirrored, turn)
        if key not in self._inside:
            self._inside[key] = self._search(model, turn)
        return self._inside[key]

    def _search(self, model: Sample, turn: float) -> Inside:
        """Look for the best place; what fits the part as its designer drew it fits however it is turned."""
        pose = Pose(turn=turn, mirrored=model.mirrored)
        room = part_room(self.context, model.part, pose)
        topped = not self.said(model).top  # else a flag shows which end is up
        if topped and not patterned(model.part) and (spot := self._whole(model, room, turn)):
            return Inside((spot,), True, True)
        if spots := self._enough(model, room, pose):
            return Inside(spots, False, topped)
        if turn == 0.0:
            found = self._letter(model, pose)
            return Inside((found,) if found else (), False, False)
        base = self._found(model, 0.0)
        return replace(base, spots=tuple(spot.moved(Pose(turn=turn)) for spot in base.spots))

    def _whole(self, model: Sample, room: LabelRoom, turn: float) -> Spot | None:
        """Return the whole label upright; where it fits so only with the part laid another way, turned with it."""
        # where every copy is printed, small words inside save pages
        sizes = STYLES if model.copy else STYLES[:2]
        groups = tuple(blocks(self.context.type, self.said(model), sizes))
        for group in groups:
            if found := room.best(group):
                return Spot(*found)
        for base in UPRIGHT if turn not in UPRIGHT else (90.0 - turn,):
            at_base = part_room(self.context, model.part, Pose(turn=base, mirrored=model.mirrored))
            for group in groups:
                if found := at_base.best(group):
                    spot = Spot(*found).moved(Pose(turn=turn - base))
                    return spot if room.free.covers(spot.polygon) else None
        return None

    def _enough(self, model: Sample, room: LabelRoom, pose: Pose) -> tuple[Spot, ...]:
        """Return what the piece must not lose: clear of the words of marks, else as these make room for it; in two places last."""
        setter, said = self.context.type, self.said(model)
        *tagged, run = identities(setter, said)
        for free in (room, *self._bare_rooms(model.part, pose, (LINE_CLEAR, TIGHT))):
            for groups in (tagged, (run,)):
                if spot := first_spot(free, groups):
                    return (spot,)
        *_, close = self._bare_rooms(model.part, pose, (TIGHT,))
        for others in ((rests(setter, said),), tuple(alone(setter, said))):
            spots = _apart(close, (tuple(letters(setter, said)), *((group,) for group in others)))
            if spots:
                return spots
        return ()

    def _letter(self, model: Sample, pose: Pose) -> Spot | None:
        """Return the letter alone, the largest that fits; on a narrow piece close to its sides."""
        groups = tuple(letters(self.context.type, self.said(model)))
        rooms = self._bare_rooms(model.part, pose, (TIGHT, CLOSEST))
        return next((spot for room in rooms if (spot := first_spot(room, groups))), None)

    def _bare_rooms(self, part: Part, pose: Pose, clears: tuple[float, ...]) -> Iterator[LabelRoom]:
        """Yield the free places inside a part, where the words of its marks make room, all but that which says where its top is;
        last, where the lines of its surface make room too."""
        own = replace(part, marks=tuple(m for m in part.marks if not m.text or m.name == TOP))
        top = [n.area(CLOSEST) for n in mark_notes(own, pose, self.context.type)]
        ground = polygon(part.template, pose)
        for surface in (True, False):
            lines = shapely.union_all([quiet_lines(part, pose, surface), *top])
            yield from (LabelRoom(ground, lines, clear) for clear in clears)


def _apart(room: LabelRoom, wanted: Sequence[Sequence[Sequence[Label]]]) -> tuple[Spot, ...]:
    """Return a place for each of several things, apart from each other; () when one finds none."""
    spots: list[Spot] = []
    for groups in wanted:
        spot = first_spot(room, groups)
        if spot is None:
            return ()
        spots.append(spot)
        room = LabelRoom(room.free.difference(spot.polygon.buffer(TIGHT)), clear=0.0)
    return tuple(spots)


def first_spot(room: LabelRoom, groups: Sequence[Sequence[Label]]) -> Spot | None:
    """Return the first group's block that fits: all upright ones before those along the page's side, those before slanting ones."""
    for turn in UPRIGHT:
        for group in groups:
            if found := room.best(group, turn):
                return Spot(*found, turn)
    for group in groups:
        if slanting := room.best_turned(group, LEANS):
            return Spot(*slanting)
    return None


def patterned(part: Part) -> bool:
    """Say whether a part has a texture, which long words would hide."""
    return any(map(is_texture, part.marks))


def part_room(context: Context, part: Part, pose: Pose, taken: Iterable[shapely.Geometry] = ()) -> LabelRoom:
    """Return the free places inside a part for words: clear of its edges, its marks and the words of its marks."""
    blocked = [*taken]
    notes = [n.area() for n in mark_notes(part, pose, context.type, blocked)]
    return LabelRoom(polygon(part.template, pose), shapely.union_all([quiet_lines(part, pose), *notes, *blocked]))
