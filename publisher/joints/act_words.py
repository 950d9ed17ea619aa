"""What the sketches of acts say beside their parts: which side is up, angles, how many, in which order; promised here, before any page."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from publisher.basics import SaidPromise
from publisher.basics.wording import said_angle
from publisher.design import Design, StepPlan
from publisher.geometry import Part
from publisher.joints.act_scenes import (
    GAUGED,
    MAKING_CARDS,
    MARKING_OUT,
    PRINTING,
    is_gauged,
    joints_alone,
    stands,
    waits_with,
)
from publisher.joints.acts_of_steps import (
    SQUARE_ENOUGH,
    UP,
    CountedPart,
    InHand,
    acts_of_step,
    counted_parts,
    covered_face,
    face_up,
    parts_of_act,
    scored,
    slit_face,
)
from publisher.joints.in_hand import FROM_BOTTLES, coat_scenes, painted_with
from publisher.joints.model import Joined
from publisher.joints.promised_acts import InPieces, does_key

UNDERNEATH = "now underneath:"
"""Stands over the sign of the face that looks down in an act."""

SHOWN_UP = ("trace", "draw", "cut_openings", "cut_outlines", "bevel", "cover")
"""Acts of which each sketch says which side is up."""

OF_ALL = ("trace", "draw", "press", "cut_openings", "cut_outlines", "slit")
"""Acts of which the sketch says it over all their parts; of the others beside the board in section."""

AND = "+"
"""Stands between what is used together."""


def act_words(design: Design, pieces: Sequence[Part], joined: Joined) -> tuple[SaidPromise, ...]:
    """Return what the sketches of the pack's own acts and of all steps say."""
    works = InPieces(design, tuple(pieces), joined)
    return (*_of_pack(works), *_of_steps(works))


def times_built(works: InHand, own: int) -> int:
    """Return how many of what the ``own``-th step adds to are built so, where a picture of one of them stands for all; else 1."""
    acts = [act for act in works.joined.additions if act.step == own and not act.trial]
    times = {act.times for act in acts}
    counts = [count for _, count in counted_parts(works, works.design.steps[own - 1])]
    found = times.pop() if len(times) == 1 else 1
    return found if all(count % found == 0 for count in counts) else 1


def _of_pack(works: InHand) -> Iterator[SaidPromise]:
    """Yield what the sketches of what comes before the first step say, as far as no page is named."""
    if not works.design.steps or not works.parts:
        return
    yield SaidPromise(PRINTING, ("100 %",))
    if is_gauged(works):
        yield SaidPromise(GAUGED, ("?",))
    if works.design.use == "trace" and any(part.printed != "sizes" for part in works.parts):
        yield SaidPromise(MAKING_CARDS, (UP,))
    counts = tuple(f"{part.count + part.spare} × {part.letter}" for part in works.parts)
    yield SaidPromise(MARKING_OUT, (UP,), counts)


def _of_steps(works: InHand) -> Iterator[SaidPromise]:
    for number, step in enumerate(works.design.steps, 1):
        having = any(True for _ in counted_parts(works, step))
        for act in dict.fromkeys(acts_of_step(works, step)):
            parts = parts_of_act(works, step, act)
            said = _of_act(works, act, parts) if parts and having else None
            if act in ("seal", "paint") and (having or stands(works)):
                said = SaidPromise(
                    "", _of_coats(act, step.uses), dark=act == "paint" and painted_with(step.uses) == "paint"
                )
            if said is not None and (said.texts or said.listed):
                over = UP if act in OF_ALL and UP in said.texts else ""
                yield replace(said, key=does_key(works.design, step, act), over=over)
        if step.wait and (having or stands(works)):
            yield _waiting(works, step, number)


def _of_act(works: InHand, act: str, parts: Sequence[CountedPart]) -> SaidPromise | None:
    """Return what the sketch of an act that is done to parts says; None of one that has nothing to say."""
    texts: tuple[str, ...] = (UP,) if act in SHOWN_UP else ()
    listed: tuple[str, ...] = ()
    first = parts[0][0]
    if act == "trace":
        carded = tuple(part.id for part, _ in parts if part.printed != "sizes")
        return SaidPromise("", texts, (), carded) if carded else None
    if act == "press":
        texts = () if joints_alone(parts) else (UP,)
    elif act == "score":
        folded = [part for part, _ in parts if scored(part)] or [part for part, _ in parts]
        listed = _angles(fold.corner for part in folded for fold in part.folds)
    elif act == "bevel":
        listed = _angles(abs(edge.bevel) for part, _ in parts for edge in part.edges if abs(edge.bevel) > SQUARE_ENOUGH)
    elif act == "cover":
        faces = [(covered_face(part), face_up(works, part)) for part, _ in parts]
        texts = (UP, UNDERNEATH) if any(face and face != up for face, up in faces) else (UP,)
    elif act == "slit":
        up = all(slit_face(part) == face_up(works, part) for part, _ in parts)
        texts, listed = (("tape", UP) if up else ("tape",)), _slits(parts)
    elif act == "roll":
        bent = next((part for part, _ in parts if part.bending is not None), first)
        texts = (bent.bending.covered,) if bent.bending is not None and covered_face(bent) else ()
    return SaidPromise("", texts, listed)


def _of_coats(act: str, uses: tuple[str, ...]) -> tuple[str, ...]:
    """Return what the sketch of a coat says: that glue is thinned, or which of two coats of paint comes first."""
    if act == "seal":
        return (AND,) if "bottle" in coat_scenes(act, uses) else ()
    return ("1", "2") if painted_with(uses) == "paint" else ()


def _angles(degrees: Iterator[float]) -> tuple[str, ...]:
    return tuple(f"{angle:g}°" for angle in sorted({said_angle(one) for one in degrees}))


def _slits(parts: Sequence[CountedPart]) -> tuple[str, ...]:
    """Return how many slits there are: once where all have as many, else of each part."""
    slit = [(part.letter, part.bending.slits) for part, _ in parts if part.bending is not None and part.bending.slits]
    if len({count for _, count in slit}) == 1:
        return (f"{slit[0][1]} ×",)
    return tuple(f"{letter}: {count} ×" for letter, count in slit)


def _waiting(works: InHand, step: StepPlan, number: int) -> SaidPromise:
    """Return what stands beside what dries: how many of how many parts, and what belongs to the clock."""
    times = times_built(works, number)
    glued = any(one in FROM_BOTTLES for one in waits_with(works, step, number))
    texts = (*((AND,) if glued else ()), *((f"{times} ×",) if times > 1 else ()))
    listed = tuple(f"{count // times} × {part.letter}" for part, count in counted_parts(works, step) if count)
    return SaidPromise(does_key(works.design, step, "wait"), texts, listed)
