"""What a step shows besides what it puts together: the acts on its parts, drawn from their outlines; how long it waits; what is done."""

from collections.abc import Callable, Iterator
from functools import partial

from publisher.basics import record
from publisher.basics.wording import series
from publisher.design import StepPlan
from publisher.geometry import Part
from publisher.joints import Drawing
from publisher.pages.instructions import face_sketches, finish_sketches, part_sketches
from publisher.pages.instructions.alike_sketches import Pair, alike_pairs, telling_apart
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.sheet import Context

COUNTED = ("cut", "texture")  # stages in which every copy is taken in hand, spares among them
JOINED = ("dry_fit", "glue")  # in which every copy of a panel is, but no spare; of a layer as many as the step says
KNIVES = ("craft_knife", "hot_wire_cutter")


@record
class ActSketch:
    """A sketch of an act, in a field of ``FIELD_WIDE`` by ``FIELD_TALL`` mm: how it is drawn, and what it shows, in words."""

    draw: Callable[[SketchPen], None]
    shows: str


OF_PARTS: dict[str, tuple[Callable[[SketchPen, part_sketches.CountedParts], None], str]] = {
    "trace": (part_sketches.tracing_round, "A pencil round the cards of {}, with the side up that says so"),
    "press": (
        face_sketches.pressing_in,
        "A stick with a round end that presses dents into the foam of {}, ticked; a knife that cuts through, crossed out",
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
    "cover": (part_sketches.covering, "Paper that is glued over the face of {}"),
    "roll": (part_sketches.rolling, "{} rolled over a bottle, slits on the hollow side"),
    "glue": (part_sketches.glueing, "Glue along the tabs of {}"),
    "slit": (part_sketches.slitting_part, "Slits of {} that do not go through, ticked; one that does, crossed out"),
}


def acts_before(context: Context, step: StepPlan) -> tuple[ActSketch, ...]:
    """Return what is done to the parts of a step, in its order."""
    return tuple(_before(context, step))


def _before(context: Context, step: StepPlan) -> Iterator[ActSketch]:
    parts = tuple(counted_parts(context, step))
    for act in acts_of_step(context, step):
        if act in OF_PARTS and parts:
            sketch, shows = OF_PARTS[act]
            wanted = wanted_parts(act, parts)
            drawn = tuple(one for one in wanted if act == "trace" and one[0] in context.measured)
            if act == "press":
                sketch = partial(face_sketches.pressing_in, paper=_paper(context, wanted))
            if wanted := tuple(one for one in wanted if one not in drawn):
                yield ActSketch(_of(sketch, wanted), shows.format(_said(wanted)))
            if drawn:
                shows = "A pencil along a rule that draws {} by their sizes"
                yield ActSketch(_of(part_sketches.measuring_out, drawn), shows.format(_said(drawn)))
    for pair in _alike(context, step, parts):
        one, other = (part.letter for part in pair)
        yield ActSketch(
            partial(telling_apart, pair=pair), f"{one} is not {other}: they look alike, hatched is where they differ"
        )


def _alike(context: Context, step: StepPlan, parts: tuple[tuple[Part, int], ...]) -> tuple[Pair, ...]:
    """Return the parts of a step that look alike, but for pairs that a step before it had in hand."""
    before: set[tuple[str, str]] = set()
    for one in context.design.steps:
        if one == step:
            break
        before |= {(a.id, b.id) for a, b in alike_pairs([part for part, _ in counted_parts(context, one)])}
    return tuple((a, b) for a, b in alike_pairs([part for part, _ in parts]) if (a.id, b.id) not in before)


def _of(
    sketch: Callable[[SketchPen, part_sketches.CountedParts], None], parts: part_sketches.CountedParts
) -> Callable[[SketchPen], None]:
    return lambda pen: sketch(pen, parts)


def acts_after(context: Context, step: StepPlan, own: int) -> tuple[ActSketch, ...]:
    """Return how what stands after the ``own``-th step is sealed, painted or left to dry."""
    return tuple(_after(context, step, own))


def _after(context: Context, step: StepPlan, own: int) -> Iterator[ActSketch]:
    stands = standing(context, own)
    parts = tuple(counted_parts(context, step))
    acts = acts_of_step(context, step)
    name = "what stands" if stands is not None else _said(parts)
    if stands is None and not parts:
        stands = whole_of(context)
        name = "the finished piece"
    if stands is None and not parts:
        return
    if "seal" in acts:
        draw = partial(finish_sketches.sealing, stands=stands, parts=parts, twice=False)
        yield ActSketch(draw, f"A brush with thinned glue on the bare foam of {name}")
    if "paint" in acts:
        draw = partial(finish_sketches.painting, stands=stands, parts=parts, figure=context.design.figure.base)
        yield ActSketch(draw, f"A brush and two pots of paint beside {name}, and a figure for its size")
    if step.wait:
        said = tuple(f"{count} × {part.letter}" for part, count in parts if count)
        draw = partial(finish_sketches.waiting, stands=stands, wait=step.wait, uses=step.uses, said=said)
        yield ActSketch(draw, f"A clock: {name} dries for {step.wait}")


def acts_of_step(context: Context, step: StepPlan) -> tuple[str, ...]:
    """Return the acts that a step names, else those that follow from its stage, its parts and what it uses."""
    if step.acts is not None:
        return step.acts
    if step.stage == "cut":
        return tuple(_cut(context, step))
    if step.stage == "texture" and "blunt_pencil" not in step.uses and "pencil" in step.uses:
        parts = tuple(counted_parts(context, step))
        return ("draw",) if parts and _paper(context, parts) == "kept" else ("press",)
    return {"texture": ("press",), "seal": ("seal",), "paint": ("paint",)}.get(step.stage, ())


def _cut(context: Context, step: StepPlan) -> Iterator[str]:
    """Yield the acts of a step that cuts: one that takes a pencil and no knife traces."""
    parts = [part for part, _ in counted_parts(context, step)]
    if "pencil" in step.uses and not any(knife in step.uses for knife in KNIVES):
        yield "trace"
        return
    if any(part.outline.holes for part in parts):
        yield "cut_openings"
    if parts:
        yield "cut_outlines"
    if any(face_sketches.scored(part) for part in parts):
        yield "score"
    if any(abs(edge.bevel) >= 10.0 for part in parts for edge in part.edges):
        yield "bevel"


def _paper(context: Context, parts: tuple[tuple[Part, int], ...]) -> face_sketches.FacePaper:
    """Return what is on the faces that are worked on: with paper on one face alone the bare one is taken."""
    boards = [board for board in context.design.boards if any(part.board == board.id for part, _ in parts)]
    if any(board.faces == "paper_both" for board in boards):
        return "kept"
    return "peeled" if any(board.peeled for board in boards) else "bare"


def counted_parts(context: Context, step: StepPlan) -> Iterator[tuple[Part, int]]:
    """Yield the parts of a step, each with how many it takes in hand; 0 where only its words say."""
    for part in {part.id: part for name in step.parts for part in context.to_take(name)}.values():
        yield part, copies_taken(context, part, step.stage)


def copies_taken(context: Context, part: Part, stage: str) -> int:
    """Return how many copies a step of this stage takes in hand; 0 where only its words say."""
    if stage in COUNTED:
        return context.copies(part)
    panel = any(place.part == (part.whole or part.id) for plan in context.design.panels for place in plan.places)
    return part.count if stage in JOINED and panel else 0


def standing(context: Context, own: int) -> Drawing | None:
    """Return what stands after the ``own``-th step: as far as it is built, else all of what was added to last; None before
    anything stands."""
    drawing = context.joined.drawing(f"state:{own}")
    if drawing is not None:
        return drawing
    built = [act for act in context.joined.additions if act.step <= own and not act.trial]
    return context.joined.drawing(f"whole:{built[-1].assembly}") if built else None


def whole_of(context: Context) -> Drawing | None:
    """Return the drawing of the last assembly of a design, which is the finished piece; None for a design without assemblies."""
    wholes = [drawing for drawing in context.joined.drawings if drawing.name.startswith("whole:")]
    return wholes[-1] if wholes else None


def wanted_parts(act: str, parts: tuple[tuple[Part, int], ...]) -> tuple[tuple[Part, int], ...]:
    """Return the parts that an act is done to."""
    fits: dict[str, Callable[[Part], bool]] = {
        "cut_openings": lambda part: bool(part.outline.holes or part.openings),
        "glue": lambda part: any(stretch.name.endswith(".tab") for stretch in part.outline.outer.stretches()),
        "score": face_sketches.scored,
        "bevel": lambda part: any(abs(edge.bevel) > 0.5 for edge in part.edges),
    }
    test = fits.get(act)
    return tuple(one for one in parts if test(one[0])) if test is not None else parts


def _said(parts: tuple[tuple[Part, int], ...]) -> str:
    return series(f"{count} × {part.letter}" if count else part.letter for part, count in parts)
