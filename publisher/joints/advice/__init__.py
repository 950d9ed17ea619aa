"""What would cure a need that is not met, worked out by trying it; steps that a design could have.

Comes in: needs that are not met, a design put together. Goes out: findings with the size that would meet them; steps.
Never: change the design.
"""

from publisher.joints.advice.cures import try_cures
from publisher.joints.advice.steps import proposed_steps
from publisher.joints.advice.suggestions import TRIED_WHOLE, Tried, suggest
