"""Room 11: what came out of a printer in, a verdict out.

Comes in: readings of a printed sheet, and the facts that a pack carries. Goes out: the scale on each axis with its uncertainty, a
verdict, likely causes, what to do. Never: imports a producing room.
"""

from publisher.basics import Rule
from publisher.ruler.answers import SCALE_BAD, SCALE_DOUBTFUL, say_range
from publisher.ruler.boards import BOARD_MISFIT, BoardVerdict, board_range, judge_board, read_thickness
from publisher.ruler.judge import Verdict, judge
from publisher.ruler.pack_facts import (
    FACTS_ASKEW,
    NEVER_PRINTED,
    NEWER_RECORD,
    NO_FACTS,
    AllowedScale,
    PackFacts,
    read_pack_facts,
)
from publisher.ruler.readings import READING_UNUSABLE, TOOLS, Reading, take_reading, take_readings
from publisher.ruler.scales import Scale
from publisher.ruler.slips import LONG_RULERS
from publisher.ruler.squares import NO_SUCH_SQUARE, SQUARE_NOT_SAID, check_square, square_readings
from publisher.ruler.written import UNITS, read_length

RULES: tuple[Rule, ...] = (
    NO_FACTS,
    FACTS_ASKEW,
    NEWER_RECORD,
    NEVER_PRINTED,
    READING_UNUSABLE,
    SQUARE_NOT_SAID,
    NO_SUCH_SQUARE,
    SCALE_BAD,
    SCALE_DOUBTFUL,
    BOARD_MISFIT,
)

__all__ = [
    "LONG_RULERS",
    "RULES",
    "TOOLS",
    "UNITS",
    "AllowedScale",
    "BoardVerdict",
    "PackFacts",
    "Reading",
    "Scale",
    "Verdict",
    "board_range",
    "check_square",
    "judge",
    "judge_board",
    "read_length",
    "read_pack_facts",
    "read_thickness",
    "say_range",
    "square_readings",
    "take_reading",
    "take_readings",
]
