"""Assemblies as the spec says them: stacks, panels, joins, folds, and what joins do to the edges of a part.

Comes in: the scope and the parts that are known. Goes out: plans of stacks and panels, edge treatments by part and edge.
Never: place a part.
"""

from publisher.design.assembly.assemblies import read_assemblies
from publisher.design.assembly.brace_parts import BRACE_SHAPE, brace_parts
from publisher.design.assembly.braces_and_meetings import read_meets
from publisher.design.assembly.folds import plan_folds
from publisher.design.assembly.joins import JointInfo, joint_infos
from publisher.design.assembly.match_letters import relettered
from publisher.design.assembly.treatments import treat
