"""Room 4: plans in, parts at true size out.

Comes in: ``PartPlan``s. Goes out: ``Part``s: outline, template, openings, marks, named edges; findings in words for
shapes that cannot be. Never: knows paper, pages or output formats.
"""

from publisher.geometry.model import (
    Edge,
    Mark,
    Opening,
    ParameterInfo,
    Part,
    Region,
    Ring,
    Run,
    ShapeInfo,
)

__all__ = ["Edge", "Mark", "Opening", "ParameterInfo", "Part", "Region", "Ring", "Run", "ShapeInfo"]
