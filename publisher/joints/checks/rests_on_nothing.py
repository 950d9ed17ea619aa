"""Parts that a step adds before what they rest on."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled
from publisher.joints.building import built_by_steps, called


@checked(
    "joints/rests-on-nothing",
    "What a step adds rests on what is there",
    "a roof that is glued on before its gables stand, or a bridge set on piers that come two steps later, has to be held in the air",
    may_be_empty=True,
)
def rests_on_nothing(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Hold all that the steps add against what it is joined to, lies on or is put on, and the table."""
    building = built_by_steps(subject)
    for lost in building.unheld:
        what, name = called(lost.lacks), called((lost.name,))
        if lost.unbuilt:
            message = f"{name} of {lost.assembly} is set down before anything of {what} is put together"
            hint = f"add what {what} is made of in a step before"
        elif not lost.all_of:
            message = f"{name} of {lost.assembly} meets nothing that stands yet: it is joined to {what}"
            hint = "add one of them before it"
        else:
            them = "it" if len(lost.lacks) == 1 else "them"
            message = f"{name} of {lost.assembly} rests on {what}, and no step before has added {them}"
            hint = f"add {what} before it"
        yield check.found(message, subject=f"step {lost.step}", hint=hint, place=lost.place)
    return building.looked_at
