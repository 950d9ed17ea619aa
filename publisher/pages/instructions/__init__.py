"""The instructions: numbered steps with their pictures, and the acts of the trade that they ask for.

Comes in: steps and line drawings. Goes out: drafts of pages.
Never: draw an assembly.
"""

from publisher.pages.instructions.steps import step_drafts
from publisher.pages.instructions.trade_acts import trade_act_drafts
