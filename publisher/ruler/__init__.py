"""Room 11: what came out of a printer in, a verdict out.

Comes in: readings of a printed sheet, and the facts that a pack carries. Goes out: the scale on each axis with its uncertainty, a
verdict, likely causes, what to do. Never: imports a producing room.
"""

from publisher.ruler.judge import Scale, Verdict, judge
from publisher.ruler.pack_facts import Budget, PackFacts, read_pack_facts
from publisher.ruler.readings import TOOLS, Reading, take_reading

__all__ = [
    "TOOLS",
    "Budget",
    "PackFacts",
    "Reading",
    "Scale",
    "Verdict",
    "judge",
    "read_pack_facts",
    "take_reading",
]
