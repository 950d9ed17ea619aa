"""Faces that a step works on when other boards stand close before them."""

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import say_mm
from publisher.joints.assembled import Assembled
from publisher.joints.building import BRUSH_REACH, built_by_steps, closed_in

WORKED_ON = {"texture": "a pencil", "paint": "a brush"}
"""Stages that work on drawn faces, and what with."""


@checked(
    "joints/out-of-reach",
    "What a step textures or paints is within reach",
    f"with less than {BRUSH_REACH:.0f} mm in front of a face, and as far from the open, neither a brush nor a blunt pencil gets at it "
    "(common practice, no source): that face is done before the one in front of it is put in",
    Severity.WARNING,
    may_be_empty=True,
)
def out_of_reach(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look from the drawn faces of the parts that a step names, or where it names none of those with a pattern, as they stand by then, to
    what stands before them."""
    looked_at = 0
    building = built_by_steps(subject)
    patterned = tuple(plan.id for plan in subject.design.parts if plan.surface is not None)
    for number, step in enumerate(subject.design.steps, 1):
        tool = WORKED_ON.get(step.stage)
        parts = step.parts or patterned
        if tool is None or not parts or not building.additions:
            continue
        done = [act for act in building.additions if act.step < number and not act.trial]
        for assembly in dict.fromkeys(act.assembly for act in done):
            there = tuple(name for act in done if act.assembly == assembly for name in act.added)
            for found in closed_in(subject, assembly, there, parts):
                looked_at += 1
                if found.by:
                    yield check.found(
                        f"{tool} does not reach the face of {found.name} of {assembly}: {found.by} stands {say_mm(found.gap)} before it"
                        + (", and the room between them is closed all round" if found.shut else ""),
                        subject=f"step {number}",
                        hint="do it while one side of the room is open"
                        if found.shut
                        else f"do it before {found.by} is put in",
                        place=step.place,
                        value=None if found.shut else found.gap,
                        limit=None if found.shut else BRUSH_REACH,
                    )
    return looked_at
