"""Which tools and boards in section the sketches of steps show beside their parts: it follows from the act, and looks as the table of
scenes says. Promised here, before any page."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Literal

from publisher.basics import DrawingPromise, Purpose
from publisher.design import Design, StepPlan
from publisher.geometry import Part
from publisher.joints.acts_of_steps import (
    SQUARE_ENOUGH,
    CountedPart,
    InHand,
    acts_of_step,
    bevelled_later,
    counted_parts,
    covered_by,
    covered_face,
    face_paper,
    has_relief,
    parts_of_act,
    pricked_marks,
    scored,
    slit_face,
    taken_apart,
    turned_over,
)
from publisher.joints.in_hand import FROM_BOTTLES, coat_scenes, cut_with_knife, from_bottle, painted_with
from publisher.joints.model import Drawing, Joined
from publisher.joints.promised_acts import APART, SIGNS, InPieces, does_key
from publisher.joints.scenes import scene_promise
from publisher.joints.stack_trials import trials_of
from publisher.joints.trades import bevelling_picture

GAUGED = "act:board:does:gauge"
"""Begins the keys of what the act shows that measures the board."""

PRINTING, MAKING_CARDS, MARKING_OUT = "act:print:does:print", "act:card:does:card", "act:mark:does:mark"
"""Begin those of the other acts of a pack."""

NOT_GLUED = ("paper between", "lifts off")
"""What has one of these labels takes no glue where it goes."""

HOLDS_TIGHT = ("white_glue", "hot_glue", "superglue", "spray_glue", "masking_tape")
"""What would hold it there for good."""

PinsFrom = Literal["corner", "above", "below", "none"]
"""Where pins go in: from outside into the end of another board, from below into what bends under it, from above through layers; or
wherever the words say."""

LIES_ON = ("books", "flat_board")
"""What presses on it while it dries."""

TOOLS = {
    "trace": ("pencil",),
    "draw": ("pencil",),
    "press": ("stick",),
    "cut_openings": (),
    "glue": (),
    "seal": (),
    "paint": (),
}
"""Acts that have a sketch whatever the parts are, and the tools in it that do not follow from what the step uses."""


def act_scenes(design: Design, pieces: Sequence[Part], joined: Joined) -> tuple[DrawingPromise, ...]:
    """Return what the sketches of all steps show beside their parts."""
    works = InPieces(design, tuple(pieces), joined)
    return (*_of_pack(works), *_scenes(works))


def _of_pack(works: InHand) -> Iterator[DrawingPromise]:
    """Yield what the sketches of what comes before the first step show: prints, the gauge in which the board is measured, templates that
    are made, the coupon that is tried and the board that is marked out."""
    if not works.design.steps or not works.parts:
        return
    carded = any(part.printed != "sizes" for part in works.parts)
    slotted = any(one.slots or one.laps for plan in works.design.parts for one in plan.treatments)
    coupon = "coupon_slot" if slotted else "coupon_step"
    shown: dict[str, tuple[str, ...]] = {
        PRINTING: ("printed_first", *(("printed_then",) if carded else ())),
        GAUGED: ("strip_cut", "strip_stood", "gauge_tried") if is_gauged(works) else (),
        MAKING_CARDS: ("cards_glued",) if carded and works.design.use == "trace" else (),
        MARKING_OUT: ("layout_shown", coupon),
    }
    for key, names in shown.items():
        yield from (replace(scene_promise(f"{key}:scene:{name}", name), among=True) for name in names)


def is_gauged(works: InHand) -> bool:
    """Tell whether the pack's own acts have one in which a strip of the board is tried in the gauge."""
    used = {part.board for part in works.parts}
    spread = all(board.spread > 0.0 for board in works.design.boards if board.id in used)
    return bool(works.design.steps and works.parts and spread and not trials_of(works.design, works.joined))


def _scenes(works: InHand) -> Iterator[DrawingPromise]:
    for number, step in enumerate(works.design.steps, 1):
        having = any(True for _ in counted_parts(works, step))
        for act in dict.fromkeys(acts_of_step(works, step)):
            parts = parts_of_act(works, step, act)
            shown = bool(parts) if act in SIGNS else act in TOOLS and (having or stands(works))
            for name in _of_act(works, step, act, parts) if shown else ():
                key = f"{does_key(works.design, step, act)}:scene:{name}"
                made = bevelling_picture(key, _bevels(parts)) if name == "bevelling" else scene_promise(key, name)
                yield replace(made, among=True)
            if parts and act in SIGNS and turned_over(works, step, act):
                key = f"{does_key(works.design, step, act)}:scene:turned_over"
                yield replace(scene_promise(key, "turned_over"), among=True)
        if taken_apart(works, step):
            made = scene_promise(f"{does_key(works.design, step, APART)}:scene:taken_apart", "taken_apart")
            yield replace(made, among=True)
        if step.wait and (having or stands(works)):
            yield from _waiting(works, step, number)


def stands(works: InHand) -> bool:
    """Tell whether something is put together that a sketch may show."""
    return any(drawing.name.startswith("whole:") for drawing in works.joined.drawings)


def _of_act(works: InHand, step: StepPlan, act: str, parts: Sequence[CountedPart]) -> Iterator[str]:
    """Yield the scenes of an act that is done to parts."""
    yield from TOOLS.get(act, ())
    yield from _in_hand(step, act)
    first = parts[0][0] if parts else None
    if act == "trace" and "pins" in step.uses:
        carded = (part for part, _ in parts if part.printed != "sizes")
        yield from ("pricking",) if any(map(pricked_marks, carded)) else ()
    if act == "paint" and painted_with(step.uses) == "paint" and has_relief(works):
        yield from ("painted_dark", "painted_raised")
    if act == "press":
        yield from _pressed(works, parts)
    if act == "cut_outlines" and cut_with_knife(step) and {part.id for part, _ in parts} - bevelled_later(works, step):
        yield "knife"
    if act == "score":
        yield "scored_grooved" if any(part.folds for part, _ in parts if scored(part)) else "scored_plain"
        yield from ("knife", "cut_through")
    if act == "bevel" and _bevels(parts):
        yield "bevelling"
    if act == "cover":
        tape = covered_by(step, next((part for part, _ in parts if covered_face(part)), None)) == "tape"
        yield "coming_down_tape" if tape else "coming_down_paper"
        if not tape and from_bottle(step):
            yield "bottle"
    if act == "slit":
        yield from ("knife", "slit_through")
    if act == "roll" and first is not None:
        bent = next((part for part, _ in parts if part.bending is not None), first)
        yield f"rolled_{covered_face(bent) or 'bare'}_{slit_face(bent) or 'whole'}"


def _in_hand(step: StepPlan, act: str) -> Iterator[str]:
    """Yield what is in the hand by what a step uses, whatever the parts are."""
    if act in ("seal", "paint"):
        yield from coat_scenes(act, step.uses)
    if act == "cut_openings" and cut_with_knife(step):
        yield "knife"
    if act == "glue" and from_bottle(step):
        yield "bottle"


def _pressed(works: InHand, parts: Sequence[CountedPart]) -> Iterator[str]:
    """Yield how a pattern is pressed: of layers with ticks at their edges down these."""
    yield from ("cut_through", "knife")
    yield from (
        ("edge_grooved", "pressed_grooved") if joints_alone(parts) else (f"pressed_{face_paper(works, tuple(parts))}",)
    )


def joints_alone(parts: Sequence[CountedPart]) -> bool:
    """Tell whether all that is pressed into parts are the joints at their edges: layers, of which either side may be up."""
    return all(_has(part, Purpose.JOINT_TICK) and not _has(part, Purpose.SURFACE) for part, _ in parts)


def _has(part: Part, purpose: Purpose) -> bool:
    return any(mark.purpose is purpose for mark in part.marks)


def _bevels(parts: Sequence[CountedPart]) -> tuple[float, ...]:
    """Return the bevels of parts (degrees; outwards less than 0), without what strays no more than a hand does."""
    return tuple(edge.bevel for part, _ in parts for edge in part.edges if abs(edge.bevel) > SQUARE_ENOUGH)


def _waiting(works: InHand, step: StepPlan, number: int) -> Iterator[DrawingPromise]:
    """Yield the clock with how long to wait, the bottle of what is glued, and what holds it so long: a weight, tape."""
    key = does_key(works.design, step, "wait")
    clock = scene_promise(f"{key}:scene:clock", "clock")
    yield replace(clock, labels=((step.wait, (0.0, -7.0)),))
    uses = waits_with(works, step, number)
    if any(one in FROM_BOTTLES for one in uses):
        yield scene_promise(f"{key}:scene:bottle", "bottle")
    if any(one in LIES_ON for one in uses):
        yield scene_promise(f"{key}:scene:pressed_down", "pressed_down")
    if "masking_tape" in uses:
        yield scene_promise(f"{key}:scene:taped_corner", "taped_corner")
    way = pins_from(works.joined, number)
    under = way == "above" and any(one in LIES_ON for one in uses)  # under a weight no pin is left standing
    stands = way == "corner" or works.joined.drawing(f"state:{number}") is not None
    if "pins" in uses and way != "none" and stands and not under:
        yield scene_promise(f"{key}:scene:pin_out", "pin_out")


def waits_with(works: InHand, step: StepPlan, number: int) -> tuple[str, ...]:
    """Return what a step uses while it dries: of what lifts off again nothing that would hold it for good."""
    own = (drawing for drawing in works.joined.drawings if drawing.name.startswith(f"act:{number}:"))
    loose = any(map(lifts_off, own))
    return tuple(one for one in step.uses if not loose or one not in HOLDS_TIGHT)


def lifts_off(drawing: Drawing) -> bool:
    """Tell whether what a picture adds is not glued to its place."""
    return any(label.text in NOT_GLUED for label in drawing.labels)


def pins_from(joined: Joined, number: int) -> PinsFrom:
    """Return from where pins hold what a step adds."""
    acts = [act for act in joined.additions if act.step == number and not act.trial]
    if any(act.how == "bent" for act in acts):
        return "below" if all(act.way is not None and act.way[2] > 0.5 for act in acts if act.how == "bent") else "none"
    return "above" if acts and all(act.one_on_another for act in acts if act.how != "laid") else "corner"
