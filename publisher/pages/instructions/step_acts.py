"""What a step shows besides what it puts together: the acts on its parts, drawn from their outlines; how long it waits; what is done."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from functools import partial

from publisher.basics import record, remembered_few
from publisher.basics.wording import said_angle, say_inches, say_mm, series
from publisher.design import StepPlan
from publisher.geometry import Part, polygon
from publisher.joints import (
    APART,
    STEEP_BEVEL,
    Coat,
    CountedPart,
    acts_of_step,
    bevelled_later,
    brushed_on,
    coated,
    counted_parts,
    covered_by,
    covered_face,
    cut_with_knife,
    does_key,
    face_paper,
    face_up,
    from_bottle,
    has_relief,
    opened_before,
    painted_with,
    parts_of_act,
    pins_from,
    sealed_with,
    slit_face,
    standing,
    taken_apart,
    times_built,
    turned_over,
    waits_with,
    whole_of,
)
from publisher.pages.instructions import (
    apart_sketches,
    bend_sketches,
    coat_sketches,
    drawn_sketches,
    face_sketches,
    finish_sketches,
    part_sketches,
)
from publisher.pages.instructions.alike_sketches import Pair, alike_pairs, telling_apart
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.sketch_places import put_turn_over
from publisher.pages.sheet import Context
from publisher.pages.templates import BevelGuide, strips_of
from publisher.pages.tiles import plan_true_pages

MOST_TOLD_APART = 2  # pairs that a step tells apart, where a later one has the others in hand too
PRICKED = ", a pin that pricks the ends of a line through, and the line drawn once the card is gone"
OVER = ". It was turned over before."


@record
class ActSketch:
    """A sketch of an act, in a field of ``FIELD_WIDE`` by ``FIELD_TALL`` mm: how it is drawn, and what it shows, in words. ``does``: the
    key under which what a step does to a part is promised, but for the part."""

    draw: Callable[[SketchPen], None]
    shows: str
    does: str = ""


PartsSketch = Callable[[SketchPen, part_sketches.CountedParts], None]

OF_PARTS: dict[str, tuple[PartsSketch, str]] = {
    "trace": (part_sketches.tracing_round, "A pencil round the cards of {}, with the side up that says so"),
    "press": (
        face_sketches.pressing_in,
        "A blunt pencil that presses dents into the foam of {}, ticked; a knife that cuts through, crossed out",
    ),
    "draw": (face_sketches.drawing_on, "A pencil along a rule on the faces of {}"),
    "cut_openings": (
        part_sketches.cutting_openings,
        "A knife in the corner of an opening of {}; the openings fall out",
    ),
    "cut_outlines": (part_sketches.cutting_outlines, "A knife at the outline of {}"),
    "score": (
        face_sketches.scoring,
        "A cut in {} that stops half way, ticked, and the board folded there; a cut that goes through, crossed out",
    ),
    "bevel": (
        part_sketches.bevelling_edges,
        "A knife that leans along its guide, and the edges of {} that are bevelled",
    ),
    "cover": (bend_sketches.covering, "Paper that is glued over the face of {}"),
    "roll": (bend_sketches.rolling, "{} rolled over a tin, slits on the hollow side"),
    "glue": (part_sketches.glueing, "Glue along the tabs of {}"),
    "slit": (bend_sketches.slitting_part, "Slits of {} that do not go through, ticked; one that does, crossed out"),
}
WITHOUT_KNIFE = {
    "cut_openings": "The openings of {}, which fall out",
    "cut_outlines": "The outline of {}, which is cut",
}
"""What the sketches of acts show that a knife has no part in."""

SEALS: dict[Coat, str] = {
    "glue": "A brush with thinned glue on the bare foam of {}",
    "paint": "A brush with paint on the bare foam of {}",
    "filler": "A brush with filler on {}",
    "spray": "A spray can beside {}",
    "unsaid": "A brush and a pot beside {}",
}
"""What the sketch of sealing shows, by what the step seals with."""

PAINTS: dict[Coat, str] = {
    "paint": "A brush and two pots of paint beside {}, and a figure for its size",
    "varnish": "A brush and a pot of varnish beside {}, and a figure for its size",
    "spray": "A spray can beside {}, and a figure for its size",
}


def acts_before(context: Context, step: StepPlan) -> tuple[ActSketch, ...]:
    """Return what is done to the parts of a step, in its order."""
    return tuple(_before(context, step))


def _before(context: Context, step: StepPlan) -> Iterator[ActSketch]:
    parts = tuple(counted_parts(context, step))
    for act in acts_of_step(context, step):
        if act not in OF_PARTS or not parts:
            continue
        over = turned_over(context, step, act)
        for made in _of_act(context, step, act):
            own = replace(made, does=does_key(context.design, step, act))
            yield _turned(own) if over else own
    for pair in _alike(context, step):
        one, other = (part.letter for part in pair)
        yield ActSketch(
            partial(telling_apart, pair=pair), f"{one} is not {other}: they look alike, black is where they differ"
        )


def _turned(made: ActSketch) -> ActSketch:
    """Return a sketch with the sign that the piece was turned over before."""

    def draw(pen: SketchPen) -> None:
        made.draw(pen)
        put_turn_over(pen, part_sketches.FIELD)

    return replace(made, draw=draw, shows=made.shows + OVER)


def _of_act(context: Context, step: StepPlan, act: str) -> Iterator[ActSketch]:
    """Yield the sketches of an act: what no card is traced for is drawn in its own."""
    wanted = parts_of_act(context, step, act)
    sketch, shows = OF_PARTS[act]
    if act == "trace":
        strips = strip_parts(context)
        sized = tuple(one for one in wanted if one[0] in context.measured)
        rounds = tuple(one for one in wanted if one[0].id in strips)
        if own := tuple(one for one in wanted if one not in sized and one not in rounds):
            if pricked := "pins" in step.uses:
                shows += PRICKED
            yield ActSketch(_of(partial(part_sketches.tracing_round, pricked=pricked), own), shows.format(_said(own)))
        if rounds:
            shows = "A strip of card on a pin, and a pencil in its other end that draws {}"
            yield ActSketch(_of(drawn_sketches.drawing_round, rounds), shows.format(_said(rounds)))
        for start in range(0, len(sized), drawn_sketches.MOST_MEASURED):
            some = sized[start : start + drawn_sketches.MOST_MEASURED]
            draw = partial(drawn_sketches.measuring_out, parts=some, sizes=_sizes(context, some))
            yield ActSketch(draw, f"A pencil along a rule that draws {_said(some)} by their sizes")
        return
    if act == "press":
        sketch = partial(face_sketches.pressing_in, paper=face_paper(context, wanted))
    if act in ("cut_openings", "cut_outlines"):
        sketch, shows = _cut(context, step, act)
    if act == "glue":
        sketch = partial(part_sketches.glueing, bottle=from_bottle(step))
    if act == "cover":
        sketch, shows = _covered(context, step, wanted)
    if act == "slit":
        up = all(slit_face(part) == face_up(context, part) for part, _ in wanted)
        depths = {part.bending.slit_depth for part, _ in wanted if part.bending is not None and part.bending.slits}
        deep = short_length(context, depths.pop()) if len(depths) == 1 else ""
        sketch = partial(bend_sketches.slitting_part, up=up, deep=deep)
    if wanted:
        yield ActSketch(_of(sketch, wanted), shows.format(_said(wanted)))


def _cut(context: Context, step: StepPlan, act: str) -> tuple[PartsSketch, str]:
    """Return the sketch of an act that cuts openings or outlines, and what it shows: no knife where a hot wire cuts."""
    knife = cut_with_knife(step)
    shows = OF_PARTS[act][1] if knife else WITHOUT_KNIFE[act]
    if act == "cut_openings":
        return partial(part_sketches.cutting_openings, knife=knife), shows
    later, opened = bevelled_later(context, step), opened_before(context, step)
    return partial(part_sketches.cutting_outlines, later=later, opened=opened, knife=knife), shows


def _covered(context: Context, step: StepPlan, wanted: tuple[CountedPart, ...]) -> tuple[PartsSketch, str]:
    """Return the sketch of an act that covers faces, and what it shows."""
    under = any((face := covered_face(part)) and face != face_up(context, part) for part, _ in wanted)
    what = covered_by(step, next((part for part, _ in wanted if covered_face(part)), None))
    shows = (
        "Strips of tape that are laid over the face of {}"
        if what == "tape"
        else "Paper that is laid over the face of {}"
    )
    shows = OF_PARTS["cover"][1] if what == "paper" and from_bottle(step) else shows
    return partial(bend_sketches.covering, under=under, what=what, bottle=from_bottle(step)), shows


def strip_parts(context: Context) -> frozenset[str]:
    """Return the parts of which a pack prints a compass strip in place of a template."""
    plan = plan_true_pages(context)
    shown = (*plan.templates, *(page.shown for page in plan.shared))
    return frozenset(strip.part.id for page in shown for strip, _, _ in strips_of(context, page))


@remembered_few
def guides_of(context: Context) -> tuple[BevelGuide, ...]:
    """Return the bevel guides that pages of a pack show: of a bevel that found no free room there is none."""
    plan = plan_true_pages(context)
    shown = (*plan.templates, *(page.shown for page in plan.shared))
    return tuple(guide for page in shown for guide in page.guides)


def guided(context: Context, parts: Iterable[Part]) -> Iterator[bool]:
    """Yield of each steep bevel of these parts whether a page shows a guide for it."""
    shown = {(letter, guide.bevel) for guide in guides_of(context) for letter in guide.letters}
    for part in parts:
        for bevel in dict.fromkeys(said_angle(edge.bevel) for edge in part.edges):
            if bevel >= STEEP_BEVEL:
                yield (part.letter, bevel) in shown


def _sizes(context: Context, parts: tuple[CountedPart, ...]) -> drawn_sketches.SaidSizes:
    """Return how long and how wide parts are, in words."""
    boxes = {part.id: polygon(part.outline).bounds for part, _ in parts}
    return {
        name: (short_length(context, right - left), short_length(context, top - bottom))
        for name, (left, bottom, right, top) in boxes.items()
    }


def short_length(context: Context, length: float) -> str:
    """Return a length (mm) in the unit that comes first on this paper."""
    return say_mm(length, plain=True) if context.paper.first == "mm" else say_inches(length)


def _alike(context: Context, step: StepPlan) -> tuple[Pair, ...]:
    """Return the parts of a step that look alike and are told apart in it: each pair once, few in a step where a later one has both in
    hand."""
    hands = [tuple(part for part, _ in counted_parts(context, one)) for one in context.design.steps]
    told: set[tuple[str, str]] = set()
    for number, one in enumerate(context.design.steps):
        own = [pair for pair in alike_pairs(hands[number]) if _ids(pair) not in told]
        later = [pair for pair in own if any({*pair} <= {*hand} for hand in hands[number + 1 :])]
        last = [pair for pair in own if pair not in later]
        shown = (*last, *later[: max(0, MOST_TOLD_APART - len(last))])
        if one is step:
            return shown
        told |= set(map(_ids, shown))
    return ()


def _ids(pair: Pair) -> tuple[str, str]:
    return pair[0].id, pair[1].id


def _of(sketch: PartsSketch, parts: part_sketches.CountedParts) -> Callable[[SketchPen], None]:
    return lambda pen: sketch(pen, parts)


def acts_after(context: Context, step: StepPlan, own: int) -> tuple[ActSketch, ...]:
    """Return how what stands after the ``own``-th step is sealed, painted or left to dry."""
    return tuple(_after(context, step, own))


def _after(context: Context, step: StepPlan, own: int) -> Iterator[ActSketch]:
    stands = standing(context.joined, own)
    parts = tuple(counted_parts(context, step))
    acts = acts_of_step(context, step)
    name = "what stands" if stands is not None else _said(parts)
    if stands is None and not parts:
        stands = whole_of(context.joined)
        name = "the finished piece"
    if stands is None and not parts:
        return
    bare = coated(context.joined, own) or stands  # what is coated may be drawn without what covers it
    if "seal" in acts:
        draw = partial(coat_sketches.sealing, stands=bare, parts=parts, uses=step.uses)
        shows = SEALS[sealed_with(step.uses)]
        shows = shows if brushed_on("seal", step.uses) or "brush" not in shows else "A pot of filler beside {}"
        yield ActSketch(draw, shows.format(name), does_key(context.design, step, "seal"))
    if "paint" in acts:
        draw = partial(
            coat_sketches.painting,
            stands=bare,
            parts=parts,
            figure=context.design.figure.base,
            raised=has_relief(context),
            uses=step.uses,
        )
        shows = PAINTS[painted_with(step.uses)]
        yield ActSketch(draw, shows.format(name), does_key(context.design, step, "paint"))
    if taken_apart(context, step):
        draw = partial(apart_sketches.taking_apart, stands=context.joined.drawing(f"trial:{own}"), parts=parts)
        shows = f"What stands dry, ticked, and then {_said(parts)} apart"
        yield ActSketch(draw, shows, does_key(context.design, step, APART))
    if step.wait:
        times = times_built(context, own)
        said = tuple(f"{count // times} × {part.letter}" for part, count in parts if count)
        draw = partial(
            finish_sketches.waiting,
            stands=stands,
            wait=step.wait,
            uses=waits_with(context, step, own),
            said=said,
            pins=pins_from(context.joined, own),
            times=times,
        )
        yield ActSketch(draw, f"A clock: {name} dries for {step.wait}", does_key(context.design, step, "wait"))


def _said(parts: tuple[tuple[Part, int], ...]) -> str:
    return series(f"{count} × {part.letter}" if count else part.letter for part, count in parts)
