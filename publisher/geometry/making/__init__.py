"""Parts made from shapes: combined, given openings and joints, checked, traced, marked and lettered.

Comes in: plans and shapes. Goes out: parts at true size.
Never: cut a part into pieces.
"""

from publisher.geometry.making.edges_left import surviving_edges
from publisher.geometry.making.joint_places import stated_edge
from publisher.geometry.making.labels import BEVEL_OUT, edge_words
from publisher.geometry.making.middle import middle_of
from publisher.geometry.making.moves import carried, placing, renamed
from publisher.geometry.making.parts import make_parts, shape_infos
from publisher.geometry.making.rabbets import behind_paper, strip

__all__ = [
    "BEVEL_OUT",
    "behind_paper",
    "carried",
    "edge_words",
    "make_parts",
    "middle_of",
    "placing",
    "renamed",
    "shape_infos",
    "stated_edge",
    "strip",
    "surviving_edges",
]
