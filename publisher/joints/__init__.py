"""Room 5: parts in, how they go together out.

Comes in: a ``Design`` and its ``Part``s. Goes out: layers of stacks, placed panels, facts, meetings of printed and
unprinted things, findings, line drawings. Never: repairs a shape, knows paper, imports material.
"""

from publisher.basics import Rule
from publisher.joints.act_scenes import GAUGED, HOLDS_TIGHT, LIES_ON, NOT_GLUED, PinsFrom, pins_from
from publisher.joints.acts_of_steps import (
    OF_STAGES,
    SQUARE_ENOUGH,
    CountedPart,
    FacePaper,
    acts_of_step,
    bevelled_later,
    copies_taken,
    counted_parts,
    covered_face,
    covering_of,
    face_paper,
    face_up,
    has_relief,
    how_made,
    opened_before,
    parts_in_hand,
    parts_of_act,
    pricked_marks,
    scored,
    slit_face,
    taken_apart,
    to_take,
    turned_over,
    wanted_parts,
)
from publisher.joints.advice import TRIED_WHOLE, Tried, suggest, try_cures
from publisher.joints.budget import PENCIL_SPREAD, budget_of, safe_ends, sold_words, takes_words
from publisher.joints.checks import CHECKS, NEED_NOT_MET
from publisher.joints.cover import LEAST_PICTURE, LEAST_VIEWS, whole_names
from publisher.joints.drawings import SIZES_TALL, SIZES_WIDE, draw_parts
from publisher.joints.facts import (
    MEETING_SIZE_ALONE,
    PACKS_DO_NOT_MEET,
    Member,
    compare_members,
    limit_of,
    margin_of,
    said_limit,
    spare_words,
    spread_ends,
)
from publisher.joints.glue_signs import glue_said, sign_key
from publisher.joints.handling import handling_sentences
from publisher.joints.how_pictures import HOW_BEVEL, HOW_TEMPLATE
from publisher.joints.idle_steps import without_idle_steps
from publisher.joints.joint_words import JOINT
from publisher.joints.model import (
    BoardRange,
    Drawing,
    DrawingLabel,
    DrawnLine,
    Joined,
    Meeting,
    Placed,
    ScaleBudget,
    SpaceMatrix,
    StackLayer,
)
from publisher.joints.promised import (
    COVER_PICTURE,
    SHOP_PHOTO,
    drawing_name,
    sentences_of,
    sentences_on,
    shop_photo,
    side_key,
    sides_of,
    with_promises,
)
from publisher.joints.promised_acts import APART, does_key
from publisher.joints.put_together import as_glued, facts_of, propose_steps, put_together
from publisher.joints.stack_trials import pile_sentences, trials_of
from publisher.joints.trades import STEEP_BEVEL, STEEPEST_DRAWN, TRADE, steep_bevels, trades_of
from publisher.joints.ways_up import WAYS_UP

RULES: tuple[Rule, ...] = (*CHECKS, MEETING_SIZE_ALONE, PACKS_DO_NOT_MEET)

__all__ = [
    "APART",
    "COVER_PICTURE",
    "GAUGED",
    "HOLDS_TIGHT",
    "HOW_BEVEL",
    "HOW_TEMPLATE",
    "JOINT",
    "LEAST_PICTURE",
    "LEAST_VIEWS",
    "LIES_ON",
    "NEED_NOT_MET",
    "NOT_GLUED",
    "OF_STAGES",
    "PENCIL_SPREAD",
    "RULES",
    "SHOP_PHOTO",
    "SIZES_TALL",
    "SIZES_WIDE",
    "SQUARE_ENOUGH",
    "STEEPEST_DRAWN",
    "STEEP_BEVEL",
    "TRADE",
    "TRIED_WHOLE",
    "WAYS_UP",
    "BoardRange",
    "CountedPart",
    "Drawing",
    "DrawingLabel",
    "DrawnLine",
    "FacePaper",
    "Joined",
    "Meeting",
    "Member",
    "PinsFrom",
    "Placed",
    "ScaleBudget",
    "SpaceMatrix",
    "StackLayer",
    "Tried",
    "acts_of_step",
    "as_glued",
    "bevelled_later",
    "budget_of",
    "compare_members",
    "copies_taken",
    "counted_parts",
    "covered_face",
    "covering_of",
    "does_key",
    "draw_parts",
    "drawing_name",
    "face_paper",
    "face_up",
    "facts_of",
    "glue_said",
    "handling_sentences",
    "has_relief",
    "how_made",
    "limit_of",
    "margin_of",
    "opened_before",
    "parts_in_hand",
    "parts_of_act",
    "pile_sentences",
    "pins_from",
    "pricked_marks",
    "propose_steps",
    "put_together",
    "safe_ends",
    "said_limit",
    "scored",
    "sentences_of",
    "sentences_on",
    "shop_photo",
    "side_key",
    "sides_of",
    "sign_key",
    "slit_face",
    "sold_words",
    "spare_words",
    "spread_ends",
    "steep_bevels",
    "suggest",
    "taken_apart",
    "takes_words",
    "to_take",
    "trades_of",
    "trials_of",
    "try_cures",
    "turned_over",
    "wanted_parts",
    "whole_names",
    "with_promises",
    "without_idle_steps",
]
