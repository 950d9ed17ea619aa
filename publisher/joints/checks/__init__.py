"""Fit checks: one per file, each with a good and a bad case in the tests."""

from publisher.basics import Check
from publisher.joints.assembled import Assembled
from publisher.joints.checks import room_fit, slot_fit
from publisher.joints.checks.bears_no_hand import bears_no_hand
from publisher.joints.checks.bent_edge_joined import bent_edge_joined
from publisher.joints.checks.bent_too_tightly import bent_too_tightly
from publisher.joints.checks.brace_does_not_fit import brace_does_not_fit
from publisher.joints.checks.cannot_be_put_in import cannot_be_put_in
from publisher.joints.checks.carrier_bends import carrier_too_weak, leg_buckles, leg_too_narrow
from publisher.joints.checks.corner_not_as_shaped import corner_not_as_shaped
from publisher.joints.checks.deck_bends import reaches_far, sags, too_weak
from publisher.joints.checks.does_not_meet import does_not_meet
from publisher.joints.checks.does_not_rest import does_not_rest
from publisher.joints.checks.edge_lengths_differ import edge_lengths_differ
from publisher.joints.checks.edge_unknown import edge_unknown
from publisher.joints.checks.fact_unknown import fact_unknown
from publisher.joints.checks.falls_over import falls_over
from publisher.joints.checks.glued_too_little import glued_too_little
from publisher.joints.checks.holes_not_in_line import holes_not_in_line
from publisher.joints.checks.layers_do_not_touch import layers_do_not_touch
from publisher.joints.checks.leans_on_its_slope import leans_on_its_slope
from publisher.joints.checks.lift_off_locked import lift_off_locked
from publisher.joints.checks.mitre_of_two_boards import mitre_of_two_boards
from publisher.joints.checks.neck_too_weak import neck_too_weak
from publisher.joints.checks.need_not_met import need_not_met
from publisher.joints.checks.need_of_another_kind import need_of_another_kind
from publisher.joints.checks.need_over_spread import need_over_spread
from publisher.joints.checks.needs_contradict import needs_contradict
from publisher.joints.checks.no_brace_needed import no_brace_needed
from publisher.joints.checks.notch_elsewhere import notch_elsewhere
from publisher.joints.checks.off_its_curve import off_its_curve
from publisher.joints.checks.off_its_face import off_its_face
from publisher.joints.checks.out_of_reach import out_of_reach
from publisher.joints.checks.panel_not_placed import panel_not_placed
from publisher.joints.checks.part_too_thin import part_too_thin
from publisher.joints.checks.parts_share_space import parts_share_space
from publisher.joints.checks.point_too_sharp import point_too_sharp
from publisher.joints.checks.post_off_its_opening import post_off_its_opening
from publisher.joints.checks.pressed_on_paper import pressed_on_paper
from publisher.joints.checks.reaches_below import reaches_below
from publisher.joints.checks.rests_on_nothing import rests_on_nothing
from publisher.joints.checks.ring_does_not_close import ring_does_not_close
from publisher.joints.checks.row_off_the_middle import row_off_the_middle
from publisher.joints.checks.rows_do_not_meet import rows_do_not_meet
from publisher.joints.checks.size_in_words import size_in_words
from publisher.joints.checks.slot_too_close_to_edge import slot_too_close_to_edge
from publisher.joints.checks.stands_on_its_head import stands_on_its_head
from publisher.joints.checks.step_names_no_mark import step_names_no_mark
from publisher.joints.checks.step_too_weak import step_too_weak
from publisher.joints.checks.stops_short import props_nothing, stops_short
from publisher.joints.checks.straight_joint import straight_joint
from publisher.joints.checks.tab_misses_slot import tab_misses_slot
from publisher.joints.checks.thing_gapes import thing_gapes
from publisher.joints.checks.thing_not_carried import thing_not_carried
from publisher.joints.checks.tips_over import tips_over
from publisher.joints.checks.traced_without_allowance import traced_without_allowance
from publisher.joints.checks.waits_unsaid import waits_unsaid

CHECKS: tuple[Check[Assembled], ...] = (
    edge_unknown,
    panel_not_placed,
    edge_lengths_differ,
    ring_does_not_close,
    corner_not_as_shaped,
    tab_misses_slot,
    mitre_of_two_boards,
    does_not_meet,
    does_not_rest,
    off_its_face,
    leans_on_its_slope,
    off_its_curve,
    bent_edge_joined,
    parts_share_space,
    stops_short,
    props_nothing,
    stands_on_its_head,
    thing_not_carried,
    thing_gapes,
    lift_off_locked,
    slot_too_close_to_edge,
    post_off_its_opening,
    slot_fit.TOO_NARROW,
    slot_fit.TOO_WIDE,
    slot_fit.AT_LIMITS,
    slot_fit.BEYOND_USE,
    room_fit.no_such_room,
    room_fit.DOES_NOT_GO_IN,
    room_fit.TOO_LOOSE,
    room_fit.GAPES,
    room_fit.AT_LIMITS,
    traced_without_allowance,
    holes_not_in_line,
    layers_do_not_touch,
    row_off_the_middle,
    notch_elsewhere,
    glued_too_little,
    part_too_thin,
    point_too_sharp,
    bent_too_tightly,
    pressed_on_paper,
    straight_joint,
    rows_do_not_meet,
    reaches_below,
    falls_over,
    tips_over,
    step_too_weak,
    neck_too_weak,
    carrier_too_weak,
    leg_too_narrow,
    leg_buckles,
    too_weak,
    sags,
    reaches_far,
    bears_no_hand,
    brace_does_not_fit,
    no_brace_needed,
    fact_unknown,
    need_of_another_kind,
    needs_contradict,
    need_not_met,
    need_over_spread,
    step_names_no_mark,
    waits_unsaid,
    size_in_words,
    cannot_be_put_in,
    rests_on_nothing,
    out_of_reach,
)

NEEDS_CONTRADICT = needs_contradict  # advice replaces what these two say by what would cure it
NEED_NOT_MET = need_not_met
