"""Parts made from shapes: combined, given openings and joints, checked, traced, marked and lettered.

Comes in: plans and shapes. Goes out: parts at true size.
Never: cut a part into pieces.
"""

from publisher.geometry.making.alike_ends import settle_letters
from publisher.geometry.making.dimensions import Dimension, dimensions_of, radii_of, whole_circle
from publisher.geometry.making.edges_left import surviving_edges
from publisher.geometry.making.joint_places import GLUED_BEHIND, stated_edge
from publisher.geometry.making.labels import BEVEL_OUT, edge_words
from publisher.geometry.making.marks_left import left_of
from publisher.geometry.making.middle import middle_of
from publisher.geometry.making.moves import placed, renamed
from publisher.geometry.making.parts import make_parts, shape_infos
from publisher.geometry.making.piece import piece_words, promised_piece
from publisher.geometry.making.rabbets import behind_paper, strip
