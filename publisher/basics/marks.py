"""Names that parts, pages and proof share: kinds of line, and purposes of marks."""

from enum import StrEnum


class LineKind(StrEnum):
    """What the buyer does along a line. Pages give each kind its own ISO 128 line type and width."""

    CUT = "cut"
    SCORE = "score"
    DRAW = "draw"
    FOLD = "fold"
    GLUE = "glue"
    REFERENCE = "reference"


class Purpose(StrEnum):
    """Why a mark stands on a part."""

    JOINT_TICK = "joint_tick"  # mortar joint at the edge of a stack layer
    LINE_UP = "line_up"  # where the next layer's edge must lie
    CLIMB = "climb"  # arrow: the way a stair climbs
    MATCH = "match"  # letter that both edges of a join carry
    BASE = "base"  # true-size circle of a figure base
    BEVEL = "bevel"  # angle beside a bevelled edge
    GRAIN = "grain"
    SURFACE = "surface"  # texture to draw
    CENTRE = "centre"
    POCKET = "pocket"  # a place cut half through for a magnet or a weight
    RABBET = "rabbet"  # line up to which foam is cut away behind the paper
    BEND = "bend"  # slit or groove at which the board is bent
    LAP = "lap"  # area that the next layer or another part covers
    NAME = "name"  # words that name a place on a part, such as its front edge
    TOP = "top"  # arrow: which way is up on a part that stands


class Layer(StrEnum):
    """Optional-content layers of a finished page, as viewers list them."""

    OUTLINES = "outlines"
    SURFACE = "surface"
    NOTES = "notes"
    DIMENSIONS = "dimensions"
    PAGE = "page"
