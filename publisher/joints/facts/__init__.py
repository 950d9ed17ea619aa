"""Facts of parts, and needs and families held against facts.

Comes in: parts, named numbers. Goes out: facts, and which needs they meet.
Never: place a part.
"""

from publisher.joints.facts.directions import made_fact
from publisher.joints.facts.families import (
    MEETING_SIZE_ALONE,
    PACKS_DO_NOT_MEET,
    Member,
    compare_members,
)
from publisher.joints.facts.narrow_places import Narrow, narrow_places
from publisher.joints.facts.needs import (
    NEED_CLOSE,
    hint_of,
    limit_of,
    margin_of,
    message_of,
    nearest_fact,
    said_limit,
    same_kind,
    shortfall,
    spare_words,
    spread_ends,
)
from publisher.joints.facts.part_facts import (
    beside,
    bores_of,
    pockets_of,
    round_holes,
    short_side,
    slot_width,
    slots_of,
)
from publisher.joints.facts.weak_places import SHARP, arch_of, points_of, tabs_of
