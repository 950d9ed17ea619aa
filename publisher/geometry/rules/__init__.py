"""What must hold of a part, each rule stated once."""

from publisher.basics import Rule, Severity
from publisher.geometry.rules.drawings import DRAWING_RULES

LEAST_WALL = 3.0  # mm of board that must stay between two cuts (common practice for foam board)
LEAST_CARD_WALL = 1.0  # mm: card keeps a narrower one (common practice, no source)
CARD = 1.5  # mm: what is thinner is paper or card
LEAST_SLIT_BOARD = 4.5  # mm: two thirds of it are all but 1.5 mm of it; thinner board bends whole
LEAST_HOLE = 0.5  # mm of radius: a smaller hole is pricked, not cut; a pin fits it

OUT_OF_RANGE = Rule(
    "geometry/size-out-of-range",
    "Sizes lie in the shape's range",
    "A size outside its range cannot be cut from board by hand, or is a slip of the pen.",
    Severity.ERROR,
)
IMPOSSIBLE_SIZES = Rule(
    "geometry/impossible-sizes",
    "Sizes of a shape agree with each other",
    "Each size may be fine and the shape still cannot exist: a core wider than the reach.",
    Severity.ERROR,
)
BROKEN_OUTLINE = Rule(
    "geometry/broken-outline",
    "An outline is one closed line that does not cross itself",
    "A knife cannot follow an outline that crosses itself, falls apart or encloses nothing.",
    Severity.ERROR,
)
UNKNOWN_EDGE = Rule(
    "geometry/unknown-edge",
    "Joins name edges that the shape has",
    "A join on an edge that is not there would leave the panel unchanged.",
    Severity.ERROR,
)
CURVED_EDGE = Rule(
    "geometry/edge-not-straight",
    "Panels join at straight edges",
    "Take-off, tabs and slots are measured along a straight edge.",
    Severity.ERROR,
)
LOST_EDGE = Rule(
    "geometry/edge-lost",
    "A panel keeps its edges after its joins",
    "A take-off or bevel larger than the panel allows would eat a neighbouring edge.",
    Severity.ERROR,
)
TAB_OFF_EDGE = Rule(
    "geometry/tab-off-edge",
    "Tabs and notches stand whole on their edge",
    "A tab that runs over the end of its shortened edge does not fit its slot.",
    Severity.ERROR,
)
CORNER_FREE = Rule(
    "geometry/corner-free",
    "Corners of a ring that are unsaid follow from its shapes",
    "Four walls of given lengths may still stand askew: what nothing fixes is taken as 90°, and said.",
    Severity.WARNING,
)
CORNERS_DIFFER = Rule(
    "geometry/corners-differ",
    "All places of a part are bevelled alike",
    "One template has one bevel at each edge; corners that follow from lengths may ask for two.",
    Severity.ERROR,
)
NO_SLOPE = Rule(
    "geometry/no-slope",
    "An edge that is cut to a slope has one",
    "The bevel follows from the slope that the panel lies at; without one there is nothing to cut to.",
    Severity.ERROR,
)
SLOT_OFF_PANEL = Rule(
    "geometry/slot-off-panel",
    "Slots lie inside the panel",
    "A slot that runs over the outline cannot hold a tab.",
    Severity.ERROR,
)
NO_OPENINGS = Rule(
    "geometry/opening-not-here",
    "Openings stand in shapes that take them",
    "Only walls and gables know where their bottom edge and their middle are.",
    Severity.ERROR,
)
OPENING_OVER_EDGE = Rule(
    "geometry/opening-over-edge",
    "Openings lie inside the wall",
    "An opening over an edge changes the outline in a way that joins and pages do not know.",
    Severity.ERROR,
)
OVERLAP = Rule(
    "geometry/openings-overlap",
    "Openings and slots keep apart",
    "Two openings that overlap cannot be cut as drawn.",
    Severity.ERROR,
)
THIN_WALL = Rule(
    "geometry/thin-wall",
    "At least 3 mm of board stay between cuts, 1 mm of card",
    "Foam narrower than about 3 mm tears when it is cut on both sides, card narrower than 1 mm (common practice).",
    Severity.ERROR,
)
LOST_IN_TRACING = Rule(
    "geometry/lost-in-tracing",
    "Every edge survives the trace allowance",
    "The template is smaller than the piece by the pencil's width; a detail narrower than twice that vanishes from it.",
    Severity.ERROR,
)
SURFACE_TOO_FINE = Rule(
    "geometry/surface-too-fine",
    "A surface pattern can be drawn by hand",
    "Nobody draws thousands of joints on one part, and a printed page with so many lines is slow to print.",
    Severity.ERROR,
)
SURFACE_HEAVY = Rule(
    "geometry/surface-heavy",
    "A surface pattern leaves its page light",
    "A page may hold 4000 path operators before old printers stop; a pattern should leave a quarter of them to all else.",
    Severity.WARNING,
)
COMBINATION = Rule(
    "geometry/combination",
    "Combined shapes make one piece",
    "A shape that misses the one it is cut from, or a part that falls apart, is not what the designer meant.",
    Severity.ERROR,
)
LAYER_IN_PIECES = Rule(
    "geometry/layer-in-pieces",
    "Each layer of a hill is one piece",
    "A layer that falls apart is cut and laid piece by piece; the drawn stack and its facts know only the largest.",
    Severity.WARNING,
)
SPLIT_OUTSIDE = Rule(
    "geometry/split-outside",
    "A seam crosses its part",
    "A seam beside the part would leave it as long as it is.",
    Severity.ERROR,
)
SPLIT_PLACE = Rule(
    "geometry/split-place",
    "A seam and its plate lie on whole board",
    "A seam through an opening, slot, tab or notch, or within 10 mm of one, leaves pieces that break or do not join (common practice).",
    Severity.ERROR,
)
FOLD_PLACE = Rule(
    "geometry/fold-place",
    "Panels that are folded lie flat beside each other",
    "Edges of one length that are whole make a fold; panels that lie over each other cannot be cut from one piece.",
    Severity.ERROR,
)
NOT_BY_SIZES = Rule(
    "geometry/not-by-sizes",
    "What has no template can be measured out",
    "A drawing with sizes takes the place of a template where a rule marks the piece out: upright sides, rectangles and round holes.",
    Severity.ERROR,
)
NO_HALF = Rule(
    "geometry/no-half",
    "Half a template belongs to a part that is its own mirror image",
    "Half a template flipped over draws the other half: outline, openings and lines must be the same on both sides of the line.",
    Severity.ERROR,
)
OWN_FAULT = Rule(
    "geometry/could-not-be-drawn",
    "Every shape is drawn or refused in words",
    "A part that the geometry library refuses must not stop the other parts.",
    Severity.ERROR,
)

RULES: tuple[Rule, ...] = (
    OUT_OF_RANGE,
    IMPOSSIBLE_SIZES,
    BROKEN_OUTLINE,
    UNKNOWN_EDGE,
    CURVED_EDGE,
    LOST_EDGE,
    TAB_OFF_EDGE,
    CORNER_FREE,
    CORNERS_DIFFER,
    NO_SLOPE,
    SLOT_OFF_PANEL,
    NO_OPENINGS,
    OPENING_OVER_EDGE,
    OVERLAP,
    THIN_WALL,
    LOST_IN_TRACING,
    SURFACE_TOO_FINE,
    SURFACE_HEAVY,
    *DRAWING_RULES,
    COMBINATION,
    LAYER_IN_PIECES,
    SPLIT_OUTSIDE,
    SPLIT_PLACE,
    FOLD_PLACE,
    NOT_BY_SIZES,
    NO_HALF,
    OWN_FAULT,
)
