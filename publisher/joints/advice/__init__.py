"""What would cure a need that is not met, worked out by trying it.

Comes in: needs that are not met. Goes out: findings with the size that would meet them.
Never: change the design.
"""

from publisher.joints.advice.cures import try_cures
from publisher.joints.advice.suggestions import TRIED_WHOLE, Tried, suggest
