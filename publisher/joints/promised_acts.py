"""What the sketches of steps must show: which act is done to which parts, and to how many copies; promised before any page is made."""

from collections.abc import Iterable, Iterator

from publisher.basics import DonePromise, NeededPromise, record
from publisher.design import Design, StepPlan
from publisher.geometry import Part
from publisher.joints.acts_of_steps import (
    acts_of_step,
    copies_taken,
    counted_parts,
    parts_in_hand,
    parts_of_act,
    step_number,
    taken_apart,
)
from publisher.joints.model import Joined

APART = "apart"
"""What is done to what a step put up dry: no act that a designer names."""

SIGNS: dict[str, tuple[int, int]] = {
    "trace": (0, 0),
    "press": (1, 1),
    "draw": (0, 0),
    "cut_openings": (0, 0),
    "cut_outlines": (0, 0),
    "score": (1, 1),
    "bevel": (1, 0),
    "cover": (0, 0),
    "roll": (0, 0),
    "glue": (0, 0),
    "slit": (1, 1),
    APART: (1, 0),
}
"""Of each act that is done to parts: how often its sketch says that something is right, and that it is wrong."""


@record
class InPieces:
    """A design with its pieces and how they go together, as acts are asked for."""

    design: Design
    parts: tuple[Part, ...]
    joined: Joined


def done_by(design: Design, pieces: Iterable[Part], joined: Joined) -> tuple[DonePromise, ...]:
    """Return what is done to each part in each act of each step; () where no sides were worked out."""
    return tuple(_done(InPieces(design, tuple(pieces), joined)))


def _done(works: InPieces) -> Iterator[DonePromise]:
    for step in works.design.steps:
        if not any(counted_parts(works, step)):
            continue
        apart = (APART,) if taken_apart(works, step) else ()
        for act in dict.fromkeys((*acts_of_step(works, step), *apart)):
            key = does_key(works.design, step, act)
            for part, count in parts_of_act(works, step, act) if act in SIGNS else ():
                rings = tuple(path.points for path in part.outline.paths)
                yield DonePromise(f"{key}:{part.id}", act, part.letter, count, rings, *SIGNS[act])


def needed_by(design: Design, pieces: Iterable[Part], joined: Joined) -> tuple[NeededPromise, ...]:
    """Return what each step that names parts takes in hand."""
    works = InPieces(design, tuple(pieces), joined)
    found = []
    for number, step in enumerate(design.steps, 1):
        listed = tuple((part.letter, copies_taken(works, part, step)) for part in parts_in_hand(works, step))
        if listed or step.uses:
            found.append(NeededPromise(f"step:{number}:needs", listed, step.uses))
    return tuple(found)


def does_key(design: Design, step: StepPlan, act: str) -> str:
    """Return the key under which what a step does is promised, but for the part."""
    return f"step:{step_number(design, step)}:does:{act}"
