"""Parts as the spec says them: shapes with their parameters, combinations, seams, letters, counts.

Comes in: the scope and the fields of a part. Goes out: part plans without what joins do to their edges.
Never: look at an assembly.
"""

from publisher.design.parts.letters import letter
from publisher.design.parts.part_plans import PartsReader
from publisher.design.parts.parts_known import KnownParts, know_parts
