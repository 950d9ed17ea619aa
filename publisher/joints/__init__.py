"""Room 5: parts in, how they go together out.

Comes in: a ``Design`` and its ``Part``s. Goes out: layers of stacks, placed panels, facts, meetings of printed and
unprinted things, findings, line drawings. Never: repairs a shape, knows paper, imports material.
"""

from publisher.joints.checks import CHECKS
from publisher.joints.drawings import draw_parts
from publisher.joints.families import MeetingSize, compare_meets, meeting_sizes
from publisher.joints.model import (
    Drawing,
    DrawnLine,
    Joined,
    Label,
    Layer,
    Matrix,
    Meeting,
    Placed,
    ScaleBudget,
)
from publisher.joints.needs import limit_of, margin_of
from publisher.joints.scale_budget import budget_of
from publisher.joints.suggesting import suggest
from publisher.joints.together import facts_of, put_together

__all__ = [
    "CHECKS",
    "Drawing",
    "DrawnLine",
    "Joined",
    "Label",
    "Layer",
    "Matrix",
    "Meeting",
    "MeetingSize",
    "Placed",
    "ScaleBudget",
    "budget_of",
    "compare_meets",
    "draw_parts",
    "facts_of",
    "limit_of",
    "margin_of",
    "meeting_sizes",
    "put_together",
    "suggest",
]
