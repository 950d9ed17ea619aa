"""Which acts a step does to which of its parts, and on which face: what it says, else what follows from its stage, its parts and what it
uses. Worked out here, before any page: pages show it, and proof holds them against it."""

from collections.abc import Callable, Iterator, Sequence
from typing import Literal, Protocol

from publisher.basics import LineKind, Purpose, remembered_few
from publisher.design import Design, StepPlan, SurfacePlan
from publisher.geometry import Mark, Part
from publisher.joints.model import Joined

COUNTED = ("cut", "texture")  # stages in which every copy is taken in hand, spares among them
DRY = "dry_fit"
JOINED = (DRY, "glue")  # in which every copy of a panel is, but no spare
KNIVES = ("craft_knife", "hot_wire_cutter")
BLUNT = "blunt_pencil"
BOTTLE = "bottle"
BEVEL_SHOWN = 10.0  # degrees: from there on a step shows how to bevel; less is cut with the outline, as its words say
SQUARE_ENOUGH = 0.5  # degrees: a hand that holds a blade upright strays more
ON_THE_FACE = ("trace", "press", "draw", "cut_openings", "cut_outlines")  # done to the face that the template shows
OF_STAGES: dict[str, tuple[str, ...]] = {"seal": ("seal",), "paint": ("paint",)}
"""The acts of a step that names none."""

UP = "THIS SIDE UP"
"""What is printed on the face of a part that lies up when it is traced, and stands in pictures at that face."""

PRICKED = (Purpose.SURFACE, Purpose.CENTRE, Purpose.LAP)
LEAST_PRICKED = 10.0  # mm: of a shorter line one sees both ends at once
LEAST_SCORED = 10.0  # mm: a shorter mark is none to fold along

CountedPart = tuple[Part, int]
How = Literal["press", "draw"]
BentFace = Literal["outside", "inside"]
FacePaper = Literal["bare", "peeled", "kept"]
"""What is on the face of a board that is worked on: nothing, nothing any more, or its paper."""


class InHand(Protocol):
    """A design with the pieces that are cut for it, and how they go together."""

    @property
    def design(self) -> Design:
        """The design."""

    @property
    def parts(self) -> tuple[Part, ...]:
        """The pieces that are cut."""

    @property
    def joined(self) -> Joined:
        """How they go together."""


def to_take(context: InHand, part_id: str) -> tuple[Part, ...]:
    """Return what a step takes in hand when it names a part: itself, its pieces and plates, or the piece that it is folded in."""
    own = tuple(part for part in context.parts if part.id == part_id)
    return own or tuple(piece for piece in context.parts if piece.whole == part_id or part_id in piece.folded)


@remembered_few
def parts_in_hand(context: InHand, step: StepPlan) -> tuple[Part, ...]:
    """Return the parts that a step takes in hand, each once, in the order in which it names them."""
    return tuple({part.id: part for name in step.parts for part in to_take(context, name)}.values())


def step_number(design: Design, step: StepPlan) -> int:
    """Return which of a design's steps this is, from 1; 0 for one of another design."""
    return next((number for number, one in enumerate(design.steps, 1) if one.place == step.place), 0)


def covered_face(part: Part) -> BentFace | None:
    """Return the face of a part that is covered before it is bent; one that keeps the middle of its board stretches outside."""
    if part.bending is None or part.bending.covered == "none":
        return None
    return "inside" if part.bending.keeps == "inside" else "outside"


def slit_face(part: Part) -> BentFace | None:
    """Return the face of a part that is slit, None where it is bent whole."""
    if part.bending is None or not part.bending.slits:
        return None
    return "inside" if part.bending.keeps == "outside" else "outside"


def scored(part: Part) -> bool:
    """Tell whether a part has a line that is cut half through to be folded there; what is slit to be bent has its own act."""
    lines = (mark.path.length for mark in part.marks if mark.kind is LineKind.SCORE and mark.purpose is Purpose.SURFACE)
    return part.bending is None and (bool(part.folds) or any(long >= LEAST_SCORED for long in lines))


@remembered_few
def acts_of_step(context: InHand, step: StepPlan) -> tuple[str, ...]:
    """Return the acts that a step names, else those that follow from its stage, its parts and what it uses."""
    if step.acts is not None:
        return step.acts
    parts = [part for part, _ in counted_parts(context, step)]
    if step.stage == "cut":
        return tuple(_cut(context, step, parts))
    if step.stage == "texture":
        return tuple(dict.fromkeys(how for part in parts if (how := how_textured(context, step, part))))
    if step.stage == "glue":
        rolled = BOTTLE in step.uses and bool(_bent(parts)) and not _named(context, "roll", _bent(parts))
        return ("roll",) if rolled else ()
    return OF_STAGES.get(step.stage, ())


def _cut(context: InHand, step: StepPlan, parts: Sequence[Part]) -> Iterator[str]:
    """Yield the acts of a step that cuts: one that takes a pencil and no knife traces. Openings are cut with the outlines, and what is
    bent is covered and slit then, where no step says so."""
    if "pencil" in step.uses and not any(knife in step.uses for knife in KNIVES):
        yield "trace"
        return
    holed = [part for part in parts if part.outline.holes]
    if not all(_named(context, "cut_openings", [part]) for part in holed):
        yield "cut_openings"
    if parts:
        yield "cut_outlines"
    if any(scored(part) for part in parts):
        yield "score"
    if any(abs(edge.bevel) >= BEVEL_SHOWN for part in parts for edge in part.edges):
        yield "bevel"
    if any(map(covered_face, parts)) and not _named(context, "cover", _bent(parts)):
        yield "cover"
    if any(map(slit_face, parts)) and not _named(context, "slit", _bent(parts)):
        yield "slit"


def _named(context: InHand, act: str, parts: Sequence[Part]) -> bool:
    """Tell whether a step of the design names an act for one of these parts."""
    asked = {part.id for part in parts}
    steps = (step for step in context.design.steps if act in (step.acts or ()))
    return any(part.id in asked for step in steps for part, _ in counted_parts(context, step))


def _bent(parts: Sequence[Part]) -> list[Part]:
    return [part for part in parts if part.bending is not None]


def how_textured(context: InHand, step: StepPlan, part: Part) -> How | None:
    """Return how a step that textures works on a part: of one that has no pattern only what the step takes in hand tells it, and a step
    that pricks lines through, or names no tool, neither presses nor draws."""
    ticked = any(mark.purpose in (Purpose.SURFACE, Purpose.JOINT_TICK) for mark in part.marks)
    if ticked or _surfaces(context, part):
        return how_made(context, step, part)
    if BLUNT in step.uses:
        return "press"
    return "draw" if "pencil" in step.uses else None


def _surfaces(context: InHand, part: Part) -> tuple[SurfacePlan, ...]:
    """Return the patterns of a part, or of those that it is folded in or cut out of."""
    own = {part.id, part.whole, *part.folded}
    return tuple(plan.surface for plan in context.design.parts if plan.id in own and plan.surface is not None)


def how_made(context: InHand, step: StepPlan, part: Part) -> How:
    """Return how the pattern of a part is made: as its surface says; left to the buyer, it is drawn on paper that stays on the board,
    where the step has no blunt pencil, and pressed into bare foam."""
    said = next((surface.how for surface in _surfaces(context, part) if surface.how), "")
    if said:
        return "draw" if said == "drawn" else "press"
    return "draw" if face_paper(context, ((part, 1),)) == "kept" and BLUNT not in step.uses else "press"


def face_paper(context: InHand, parts: Sequence[CountedPart]) -> FacePaper:
    """Return what is on the faces that are worked on: with paper on one face alone the bare one is taken."""
    boards = [board for board in context.design.boards if any(part.board == board.id for part, _ in parts)]
    if any(board.faces == "paper_both" for board in boards):
        return "kept"
    return "peeled" if any(board.peeled for board in boards) else "bare"


def counted_parts(context: InHand, step: StepPlan) -> Iterator[CountedPart]:
    """Yield the parts of a step, each with how many it takes in hand; 0 where only its words say."""
    for part in parts_in_hand(context, step):
        yield part, copies_taken(context, part, step)


def copies_taken(context: InHand, part: Part, step: StepPlan) -> int:
    """Return how many copies a step takes in hand; 0 where only its words say. Of layers as many as it adds, and all of them where it
    puts them up dry and says not which."""
    if step.stage in COUNTED:
        return part.count + part.spare
    if step.stage not in JOINED:
        return 0
    if any(place.part == (part.whole or part.id) for plan in context.design.panels for place in plan.places):
        return part.count
    added = context.joined.added(step_number(context.design, step), part.whole or part.id)
    return added or (part.count if step.stage == DRY and _is_layer(context, part) else 0)


def _is_layer(context: InHand, part: Part) -> bool:
    """Tell whether a part lies in a stack."""
    return any(row.part == (part.whole or part.id) for plan in context.design.stacks for row in plan.rows)


def wanted_parts(act: str, parts: tuple[CountedPart, ...]) -> tuple[CountedPart, ...]:
    """Return the parts that an act is done to."""
    fits: dict[str, Callable[[Part], bool]] = {
        "cut_openings": lambda part: bool(part.outline.holes or part.openings),
        "glue": lambda part: any(stretch.name.endswith(".tab") for stretch in part.outline.outer.stretches()),
        "score": scored,
        "bevel": lambda part: any(abs(edge.bevel) > SQUARE_ENOUGH for edge in part.edges),
    }
    bends: dict[str, Callable[[Part], bool]] = {
        "cover": lambda part: covered_face(part) is not None,
        "slit": lambda part: part.bending is not None,
        "roll": lambda part: part.bending is not None,
    }
    if act in bends:  # a designer may cover what is not bent: then all that is named is
        return tuple(one for one in parts if bends[act](one[0])) or parts
    test = fits.get(act)
    return tuple(one for one in parts if test(one[0])) if test is not None else parts


def parts_of_act(context: InHand, step: StepPlan, act: str) -> tuple[CountedPart, ...]:
    """Return the parts of a step that one of its acts is done to: a pattern that is drawn is not pressed."""
    own = wanted_parts(act, tuple(counted_parts(context, step)))
    if act not in ("press", "draw"):
        return own
    return tuple(one for one in own if how_made(context, step, one[0]) == act) or own


def pricked_marks(part: Part) -> tuple[Mark, ...]:
    """Return the straight lines within a card whose ends are pricked through with pins: of its pattern, and where it or what comes to it
    has its middle or its place. Slits and grooves have a side of their own."""
    marks = (mark for mark in part.marks if mark.purpose in PRICKED and not mark.path.closed)
    return tuple(mark for mark in marks if len(mark.path.points) == 2 and mark.path.length >= LEAST_PRICKED)


def taken_apart(context: InHand, step: StepPlan) -> bool:
    """Tell whether what stands dry is taken apart at the end of a step: the last that puts it up so, of parts that it names."""
    number = step_number(context.design, step)
    steps = context.design.steps
    goes_on = number < len(steps) and steps[number].stage == DRY
    tried = any(act.trial and act.step == number for act in context.joined.additions)
    return tried and not goes_on and any(count for _, count in counted_parts(context, step))


def has_relief(context: InHand) -> bool:
    """Tell whether a step presses a pattern in: then what lies between its joints is raised."""
    return any(
        "press" in acts_of_step(context, step) and any(counted_parts(context, step)) for step in context.design.steps
    )


def covering_of(context: InHand, step: StepPlan) -> tuple[str, ...]:
    """Return the materials with which a step covers parts: what is not bent, or is bent bare, gets paper where a step says so."""
    if "cover" not in acts_of_step(context, step):
        return ()
    bent = [part for part, _ in parts_of_act(context, step, "cover") if covered_face(part)]
    covers = [covered_by(step, part) for part in bent] or [covered_by(step, None)]
    return tuple(dict.fromkeys("masking_tape" if cover == "tape" else "thin_paper" for cover in covers))


def covered_by(step: StepPlan, part: Part | None) -> str:
    """Return what covers a part, paper or tape: as its bend says; else tape where a step names that and no glue for paper."""
    if part is not None and part.bending is not None and covered_face(part):
        return part.bending.covered
    return "tape" if "masking_tape" in step.uses and not any("glue" in one for one in step.uses) else "paper"


def bevelled_later(context: InHand, step: StepPlan) -> frozenset[str]:
    """Return the parts whose bevels are cut in an act of their own, in a step or after it: their edges are left till then."""
    steps = context.design.steps
    at = next((number for number, one in enumerate(steps) if one is step), 0)
    acts = (one for one in steps[at:] if "bevel" in acts_of_step(context, one))
    return frozenset(part.id for one in acts for part, _ in parts_of_act(context, one, "bevel"))


def opened_before(context: InHand, step: StepPlan) -> frozenset[str]:
    """Return the parts whose openings are cut before a step cuts outlines, by an act of its own or of an earlier step: an opening at an
    edge is open then."""
    steps = context.design.steps
    at = next((number for number, one in enumerate(steps) if one is step), 0)
    acts = (one for one in steps[: at + 1] if "cut_openings" in acts_of_step(context, one))
    return frozenset(part.id for one in acts for part, _ in parts_of_act(context, one, "cut_openings"))


def turned_over(context: InHand, step: StepPlan, act: str) -> bool:
    """Tell whether a part lies on its other face for an act than for the last one before it, of this step or of one before."""
    last: dict[str, str] = {}
    for one in context.design.steps:
        for done in acts_of_step(context, one):
            faces = {part.id: _face(context, done, part) for part, _ in parts_of_act(context, one, done)}
            if one is step and done == act:
                return any(face and last.get(name, face) != face for name, face in faces.items())
            last |= {name: face for name, face in faces.items() if face}
    return False


def face_up(context: InHand, part: Part) -> str:
    """Return the face of a part that its template shows."""
    side = next(side for side in context.joined.sides if side.part == part.id and not side.mirrored)
    return "inside" if side.face == "inside" else "outside"


def _face(context: InHand, act: str, part: Part) -> str:
    """Return the face of a part that lies up for an act; "" where that is all the same."""
    if act == "cover":
        return covered_face(part) or ""
    if act == "slit":
        return slit_face(part) or ""
    if act == "score" and part.folds:
        return "inside"
    return face_up(context, part) if act in ON_THE_FACE else ""
