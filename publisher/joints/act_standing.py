"""What stands in the sketches of acts that are done to what is put together: it waits, is sealed or painted, or is taken apart again. It
follows from the step; promised here, before any page."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from publisher.basics import DrawingPromise
from publisher.design import Design, StepPlan
from publisher.geometry import Part
from publisher.joints.acts_of_steps import acts_of_step, counted_parts, taken_apart
from publisher.joints.model import Drawing, Joined
from publisher.joints.picture_promise import picture_promise
from publisher.joints.promised_acts import APART, InPieces, does_key

STANDS = "@stands"
"""Ends the key of what stands in a sketch."""

BOUNDS = ("outline", "contour")
"""Weights of the lines with which it is drawn: no texture, nothing behind it."""


def standing(joined: Joined, own: int) -> Drawing | None:
    """Return what stands after the ``own``-th step: as far as it is built, else all of what was added to last; None before
    anything stands."""
    drawing = joined.drawing(f"state:{own}")
    if drawing is not None:
        return drawing
    built = [act for act in joined.additions if act.step <= own and not act.trial]
    return joined.drawing(f"whole:{built[-1].assembly}") if built else None


def whole_of(joined: Joined) -> Drawing | None:
    """Return the drawing of the last assembly of a design, which is the finished piece; None for a design without assemblies."""
    wholes = [drawing for drawing in joined.drawings if drawing.name.startswith("whole:")]
    return wholes[-1] if wholes else None


def coated(joined: Joined, own: int) -> Drawing | None:
    """Return what the ``own``-th step seals or paints, less what lifts off; None where it does so to parts."""
    return joined.drawing(f"off:{own}") or standing(joined, own)


def act_standing(design: Design, pieces: Sequence[Part], joined: Joined) -> tuple[DrawingPromise, ...]:
    """Return what stands in the sketches of all steps."""
    works = InPieces(design, tuple(pieces), joined)
    return tuple(
        _promise(f"{does_key(design, step, act)}:{STANDS}", shown)
        for number, step in enumerate(design.steps, 1)
        for act, shown in _shown(works, step, number)
        if shown is not None
    )


def _promise(key: str, shown: Drawing) -> DrawingPromise:
    lines = tuple(line.points for line in shown.lines if line.weight in BOUNDS)
    return replace(picture_promise(key, shown, labels=False), lines=lines, fine=(), kinds=(), heads=(), among=True)


def _shown(works: InPieces, step: StepPlan, own: int) -> Iterator[tuple[str, Drawing | None]]:
    """Yield of each act of a step that is done to what stands what that is."""
    joined = works.joined
    having = any(True for _ in counted_parts(works, step))
    alone = None if having else whole_of(joined)
    for act in dict.fromkeys(acts_of_step(works, step)):
        if act in ("seal", "paint"):
            yield act, coated(joined, own) or alone
    if taken_apart(works, step):
        yield APART, joined.drawing(f"trial:{own}")
    if step.wait:
        yield "wait", standing(joined, own) or alone
