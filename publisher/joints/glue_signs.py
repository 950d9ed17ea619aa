"""Whether the pictures of a step say that glue is taken, or that none is: decided once, and promised before any page shows the sign."""

from collections.abc import Iterable, Iterator

from publisher.basics import DrawingPromise
from publisher.design import Design, StepPlan
from publisher.joints.act_scenes import lifts_off
from publisher.joints.acts_of_steps import DRY
from publisher.joints.in_hand import FROM_BOTTLES
from publisher.joints.model import Drawing, Joined
from publisher.joints.scenes import scene_promise

TAPED = "tape"  # what has this label is taped, and takes no glue yet
WITH, WITHOUT = "with_glue", "without_glue"


def glue_signs(design: Design, drawings: Iterable[Drawing]) -> tuple[DrawingPromise, ...]:
    """Return the signs of all steps: beside each picture of what is put together, and beside the designer's own in a step that takes
    none."""
    return tuple(_signs(design, tuple(drawings)))


def _signs(design: Design, drawings: tuple[Drawing, ...]) -> Iterator[DrawingPromise]:
    for number, step in enumerate(design.steps, 1):
        for drawing in drawings:
            if drawing.name.startswith(f"act:{number}:") and (name := _sign(step, drawing)):
                yield scene_promise(sign_key(f"step:{number}:act:{drawing.name.split(':')[2]}"), name)
        if step.picture is not None and step.stage == DRY:
            yield scene_promise(sign_key(f"step:{number}:picture"), WITHOUT)


def _sign(step: StepPlan, drawing: Drawing) -> str:
    """Return which sign the picture of an act has; '' for none: it is taped, or a step that names no glue out of a
    bottle, which the sign shows."""
    loose, taped = lifts_off(drawing), any(label.text == TAPED for label in drawing.labels)
    if any(glue in step.uses for glue in FROM_BOTTLES) and not taped and not loose:
        return WITH
    return WITHOUT if loose or step.stage == DRY else ""


def sign_key(picture: str) -> str:
    """Return the key of the sign beside a picture, by the key of the picture."""
    return f"{picture}:glue"


def glue_said(joined: Joined, picture: str) -> bool | None:
    """Return whether the sign beside a picture says that glue is taken; None where there is none."""
    key = sign_key(picture)
    return next((promise.drawing == f"scene:{WITH}" for promise in joined.pictures if promise.key == key), None)
