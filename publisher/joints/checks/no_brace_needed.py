"""Steps that tell of knee braces where no step of the stair needs one."""

import re

from publisher.basics import Check, Findings, Severity, checked
from publisher.design import Blank
from publisher.joints.assembled import Assembled
from publisher.joints.idle_steps import unneeded_braces


@checked(
    "joints/no-brace-needed",
    "A step tells of knee braces only where there are some",
    "under: weak makes a brace for each step that would break, and none where none does: a step that does nothing but glue them is then "
    "left out, and one that does other things as well tells of 0 braces",
    Severity.WARNING,
    may_be_empty=True,
)
def no_brace_needed(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look in every step that is not left out for the number or the part of braces that no step needs."""
    none = unneeded_braces(subject.design, subject.parts)
    for number, step in enumerate(subject.design.steps, 1):
        blanks = [p.expression for text in (step.title, step.say) for p in text.pieces if isinstance(p, Blank)]
        words = {word for expression in blanks for word in re.findall(r"[A-Za-z_]\w*\.?\w*", expression)}
        for part, assembly in none.items():
            told = f"{assembly}.braces" in words or any(word.partition(".")[0] == part for word in words)
            if told:
                yield check.found(
                    f"the step tells of the braces of {assembly}, and none of its steps is weak: there are 0 of them",
                    subject=f"step {number}",
                    hint=f"put all that is said of them into a step of its own, with adds: [{assembly}.braces]: it is left out where "
                    "there are none; or leave the brace out",
                    place=step.say.place,
                )
    return len(none) and len(subject.design.steps)
