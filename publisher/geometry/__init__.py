"""Room 4: plans in, parts at true size out.

Comes in: ``PartPlan``s. Goes out: ``Part``s: outline, template, openings, marks, named edges; findings in words for
shapes that cannot be. Never: knows paper, pages or output formats.
"""

from publisher.geometry.cutting import PLATE, cut_pieces, free_letters, half_marks, sizes_key, sizes_of, with_seams
from publisher.geometry.drawings import DRAWING_BYTES, Look, Seen, look_at
from publisher.geometry.making import (
    BEVEL_OUT,
    GLUED_BEHIND,
    Dimension,
    behind_paper,
    dimensions_of,
    make_parts,
    middle_of,
    piece_words,
    promised_piece,
    radii_of,
    settle_letters,
    shape_infos,
)
from publisher.geometry.making import strip as rabbet_strip
from publisher.geometry.model import (
    BendStretch,
    BentForm,
    DrawnFor,
    Edge,
    Fold,
    HalfTemplate,
    LaidSeam,
    Lap,
    Mark,
    Opening,
    ParameterInfo,
    Part,
    Region,
    ShapeInfo,
)
from publisher.geometry.openings import opening_infos
from publisher.geometry.paths import area, line_string, mitred, next_of, one_before, path_length, polygon
from publisher.geometry.rules import CARD, LEAST_SLIT_BOARD, RULES
from publisher.geometry.surfaces import surface_infos

__all__ = [
    "BEVEL_OUT",
    "CARD",
    "DRAWING_BYTES",
    "GLUED_BEHIND",
    "LEAST_SLIT_BOARD",
    "PLATE",
    "RULES",
    "BendStretch",
    "BentForm",
    "Dimension",
    "DrawnFor",
    "Edge",
    "Fold",
    "HalfTemplate",
    "LaidSeam",
    "Lap",
    "Look",
    "Mark",
    "Opening",
    "ParameterInfo",
    "Part",
    "Region",
    "Seen",
    "ShapeInfo",
    "area",
    "behind_paper",
    "cut_pieces",
    "dimensions_of",
    "free_letters",
    "half_marks",
    "line_string",
    "look_at",
    "make_parts",
    "middle_of",
    "mitred",
    "next_of",
    "one_before",
    "opening_infos",
    "path_length",
    "piece_words",
    "polygon",
    "promised_piece",
    "rabbet_strip",
    "radii_of",
    "settle_letters",
    "shape_infos",
    "sizes_key",
    "sizes_of",
    "surface_infos",
    "with_seams",
]
