"""A whole as it stands of board that is thicker or thinner than the design says. Mm."""

from publisher.design import Design, WholePlan
from publisher.geometry import Part
from publisher.joints.panels import of_thicker_board, place_panels, thicker_board
from publisher.joints.stacks import lay_all
from publisher.joints.wholes.put import PlacedWhole, put_things
from publisher.joints.wholes.things import panels_of_stack


def whole_of_thicker_board(
    design: Design, plan: WholePlan, parts: dict[str, Part], board: str, by: float
) -> PlacedWhole | None:
    """Return a whole cut from a board that is ``by`` mm thicker, without knee braces; None where it cannot be put together."""
    used = {thing.assembly for thing in plan.things}
    made = thicker_board(parts, board, by)
    stacks, _ = lay_all(design.stacks, made)
    panels = {s.name: panels_of_stack(s, made, plan.place) for s in stacks if s.name in used and s.layers}
    for own in design.panels:
        if own.name in used:
            assembly = place_panels(*of_thicker_board(own, parts, board, by))
            panels |= {} if assembly.unplaced else {own.name: assembly.solid}
    return put_things(plan, panels, lambda _: 1.0)
