"""Meetings of printed sizes with what does not shrink with the paper, and the print scales at which they all still fit.

Comes in: what was put together. Goes out: meetings, the range of print scale and what binds it.
Never: measure paper.
"""

from publisher.joints.budget.board_meetings import MOST_PLAY, SEAM_SHOWN
from publisher.joints.budget.board_ranges import board_ranges
from publisher.joints.budget.board_words import board_ends, safe_ends, sold_words, spread_words, takes_words
from publisher.joints.budget.meetings import meetings_of
from publisher.joints.budget.paper_sizes import size_on_paper
from publisher.joints.budget.scale_budget import GENERAL, PENCIL_SPREAD, budget_of
