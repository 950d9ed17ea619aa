"""Steps that have nothing to do: they glue braces of a stack none of whose steps needs one."""

from dataclasses import replace

from publisher.design import BRACES, Design, StepPlan
from publisher.geometry import Part


def without_idle_steps(design: Design, parts: tuple[Part, ...]) -> Design:
    """Return a design without the steps that do nothing but glue braces that none needs; ``parts``: those that are cut.

    Only a step that says so is left out: by what it adds, or by its parts where it adds nothing.
    """
    none = unneeded_braces(design, parts)
    return replace(design, steps=tuple(s for s in design.steps if not _is_idle(s, none))) if none else design


def unneeded_braces(design: Design, parts: tuple[Part, ...]) -> dict[str, str]:
    """Return the braces that no step needs, by their part: the assembly of each."""
    cut = {part.id for part in parts}
    plans = {plan.id for plan in design.parts}
    braces = {stack.brace.part for stack in design.stacks if stack.brace is not None and stack.brace.weak}
    return {part: part.removesuffix("_brace") for part in sorted(braces) if part in plans and part not in cut}


def _is_idle(step: StepPlan, none: dict[str, str]) -> bool:
    if any(part not in none for part in step.parts) or not (step.adds or step.parts):
        return False
    return all(plan.names == (BRACES,) and plan.assembly in none.values() for plan in step.adds)
