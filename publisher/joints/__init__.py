"""Room 5: parts in, how they go together out.

Comes in: a ``Design`` and its ``Part``s. Goes out: layers of stacks, placed panels, facts, meetings of printed and
unprinted things, findings, line drawings. Never: repairs a shape, knows paper, imports material.
"""

from publisher.basics import Rule
from publisher.joints.advice import TRIED_WHOLE, Tried, suggest, try_cures
from publisher.joints.budget import PENCIL_SPREAD, budget_of, safe_ends, sold_words, takes_words
from publisher.joints.checks import CHECKS, NEED_NOT_MET
from publisher.joints.cover import whole_names
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
from publisher.joints.idle_steps import without_idle_steps
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
from publisher.joints.put_together import as_glued, facts_of, propose_steps, put_together

RULES: tuple[Rule, ...] = (*CHECKS, MEETING_SIZE_ALONE, PACKS_DO_NOT_MEET)

__all__ = [
    "COVER_PICTURE",
    "NEED_NOT_MET",
    "PENCIL_SPREAD",
    "RULES",
    "SHOP_PHOTO",
    "SIZES_TALL",
    "SIZES_WIDE",
    "TRIED_WHOLE",
    "BoardRange",
    "Drawing",
    "DrawingLabel",
    "DrawnLine",
    "Joined",
    "Meeting",
    "Member",
    "Placed",
    "ScaleBudget",
    "SpaceMatrix",
    "StackLayer",
    "Tried",
    "as_glued",
    "budget_of",
    "compare_members",
    "draw_parts",
    "drawing_name",
    "facts_of",
    "limit_of",
    "margin_of",
    "propose_steps",
    "put_together",
    "safe_ends",
    "said_limit",
    "sentences_of",
    "sentences_on",
    "shop_photo",
    "side_key",
    "sides_of",
    "sold_words",
    "spare_words",
    "spread_ends",
    "suggest",
    "takes_words",
    "try_cures",
    "whole_names",
    "with_promises",
    "without_idle_steps",
]
