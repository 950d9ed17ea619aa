"""Fit checks: one per file, each with a good and a bad case in the tests."""

from publisher.basics import Check
from publisher.joints.assembled import Assembled
from publisher.joints.checks import (
    brace_does_not_fit,
    does_not_meet,
    does_not_rest,
    edge_lengths_differ,
    edge_unknown,
    fact_unknown,
    falls_over,
    glued_too_little,
    layers_do_not_touch,
    need_not_met,
    need_of_another_kind,
    needs_contradict,
    off_its_face,
    panel_not_placed,
    part_too_thin,
    parts_share_space,
    ring_does_not_close,
    room_fit,
    rows_do_not_meet,
    slot_fit,
    slot_too_close_to_edge,
    step_too_weak,
    straight_joint,
    tab_misses_slot,
    tips_over,
    traced_without_allowance,
)

CHECKS: tuple[Check[Assembled], ...] = (
    edge_unknown.CHECK,
    panel_not_placed.CHECK,
    edge_lengths_differ.CHECK,
    ring_does_not_close.CHECK,
    tab_misses_slot.CHECK,
    does_not_meet.CHECK,
    does_not_rest.CHECK,
    off_its_face.CHECK,
    parts_share_space.CHECK,
    slot_too_close_to_edge.CHECK,
    slot_fit.TOO_NARROW,
    slot_fit.AT_LIMITS,
    slot_fit.BEYOND_USE,
    room_fit.NO_SUCH_ROOM,
    room_fit.DOES_NOT_GO_IN,
    room_fit.TOO_LOOSE,
    room_fit.GAPES,
    room_fit.AT_LIMITS,
    traced_without_allowance.CHECK,
    layers_do_not_touch.CHECK,
    glued_too_little.CHECK,
    part_too_thin.CHECK,
    straight_joint.CHECK,
    rows_do_not_meet.CHECK,
    falls_over.CHECK,
    tips_over.CHECK,
    step_too_weak.CHECK,
    brace_does_not_fit.CHECK,
    fact_unknown.CHECK,
    need_of_another_kind.CHECK,
    needs_contradict.CHECK,
    need_not_met.CHECK,
)

NEEDS_CONTRADICT = needs_contradict.CHECK  # advice replaces what these two say by what would cure it
NEED_NOT_MET = need_not_met.CHECK

__all__ = ["CHECKS", "NEEDS_CONTRADICT", "NEED_NOT_MET"]
