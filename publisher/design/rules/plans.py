"""Rules of boards, parts, assemblies and steps: what can be built."""

from publisher.basics import Rule, Severity

ERROR = Severity.ERROR
WARNING = Severity.WARNING

BOARD_THICKNESS = Rule(
    "design/board-thickness",
    "A board is thicker than 0 and at most 100 mm thick",
    "Everything that meets a board follows its thickness.",
    ERROR,
)
BOARD_MEASURE = Rule(
    "design/board-measure",
    "Spread, knife gap and edge margin of a board are measures that can be",
    "A negative gap would lay parts over each other.",
    ERROR,
)
SHEET_SIZE = Rule(
    "design/sheet-size",
    "A sheet on sale reads 20 x 30 in or 297 x 420 mm",
    "Buyers buy board by the sheet; the yield table lays parts on it.",
    ERROR,
)
SHEET_TWICE = Rule(
    "design/sheet-twice",
    "A board lists each sheet size once",
    "One size under two names is laid out twice, and a buyer is told of a choice that is none.",
    WARNING,
)
UNKNOWN_BOARD = Rule(
    "design/unknown-board",
    "A part names a board of the design",
    "Without a board a part has no thickness.",
    ERROR,
)
UNKNOWN_PART = Rule(
    "design/unknown-part",
    "An assembly or step names parts of the design",
    "A piece that is not drawn cannot be built.",
    ERROR,
)
LETTER = Rule(
    "design/letter",
    "Each part has its own letter",
    "The letter is how a buyer tells templates apart.",
    ERROR,
)
PART_OUTLINE = Rule(
    "design/part-outline",
    "A part has either a shape or a drawing",
    "Two outlines for one part contradict each other, and none cannot be drawn.",
    ERROR,
)
DRAWING_SCALE = Rule(
    "design/drawing-scale",
    "The scale of a drawing makes a part of it",
    "A scale of nothing leaves no part, and one beyond a hundred is a slip of units.",
    Severity.ERROR,
)
PART_COUNT = Rule(
    "design/part-count",
    "A part's count comes from the assemblies, or from itself when none uses it",
    "A count stated twice is soon two counts.",
    ERROR,
)
COUNT_RANGE = Rule(
    "design/count-range",
    "A count lies between its least and its most",
    "Nobody cuts more than 10000 copies, a shape says how many of a thing it takes, and no spec may hang the machine.",
    ERROR,
)
TOO_MANY_PARTS = Rule(
    "design/too-many-parts",
    "A design has at most 200 parts",
    "Nobody sorts more templates, and no spec may hang the machine.",
    ERROR,
)
TRACE_ALLOWANCE = Rule(
    "design/trace-allowance",
    "A trace allowance is between 0 and 3 mm",
    "It is the width that a pencil adds: 0.3 to 0.5 mm in common practice.",
    ERROR,
)
TRACE_UNUSED = Rule(
    "design/trace-allowance-unused",
    "Pasted templates have no trace allowance",
    "Paper pasted on the board is cut through: no pencil runs round it.",
    WARNING,
)
STACK_HEIGHT = Rule(
    "design/too-many-layers",
    "All stacks together have at most 400 layers",
    "That is two metres of board; no spec may hang the machine.",
    ERROR,
)
LOWEST = Rule(
    "design/lowest-layer-moved",
    "The lowest layer of a stack is neither turned nor shifted by itself",
    "Turn and shift are against the layer below, and there is none: a value without effect is a mistake waiting to be cut.",
    WARNING,
)
SECTION = Rule(
    "design/section",
    "A section has its own name and stands on one below it",
    "A section that stands on nothing known cannot be placed.",
    ERROR,
)
ASSEMBLY = Rule(
    "design/assembly",
    "An assembly is either a stack, panels or things",
    "A stack lies in layers, panels stand at edges, things stand on each other; each is worked out in its own way.",
    ERROR,
)
NAME_TAKEN = Rule(
    "design/name-taken",
    "Parts, assemblies and sections have names of their own",
    "A fact such as stair.height must have one meaning.",
    ERROR,
)
UNKNOWN_PLACE = Rule(
    "design/unknown-place",
    "A join names places of its own assembly, as place.edge",
    "A join to a panel that is not there holds nothing.",
    ERROR,
)
EDGE_ITSELF = Rule(
    "design/edge-with-itself",
    "A join has two edges of two panels",
    "A panel cannot be joined to itself.",
    ERROR,
)
EDGE_TWICE = Rule(
    "design/edge-joined-twice",
    "An edge is joined once, or along lines that lie apart",
    "Two panels cannot meet one edge at the same place.",
    ERROR,
)
JOIN_OPTION = Rule(
    "design/join-option",
    "A join says all that its joint needs, and nothing else",
    "An option that has no effect is a mistake waiting to be cut.",
    ERROR,
)
CORNER = Rule(
    "design/corner",
    "A corner is more than 0 and at most 180 degrees, and square for butt and tab joints",
    "A square-cut edge only sits flush on a face at right angles to it.",
    ERROR,
)
EQUAL_CORNERS = Rule(
    "design/equal-corners",
    "Equal corners are those of mitres that go round a closed ring",
    "With n corners alike, each is 180 − 360/n degrees; of panels in a row nothing follows.",
    ERROR,
)
FACE = Rule(
    "design/face",
    "A panel on a face says which one, where it lies there and, on its edge, how steep the face is",
    "What is put on a face has one place there; a slope is more than 0 and at most 75 degrees, as no knife cuts a flatter bevel.",
    ERROR,
)
THINGS = Rule(
    "design/things",
    "Things are assemblies of the design, and each stands on others or on the table",
    "What stands on nothing, or on itself, is never put down.",
    ERROR,
)
SLOT_EDGE = Rule(
    "design/slot-near-edge",
    "A closed slot keeps two board thicknesses from its edge",
    "A thinner rim beside a slot tears out when the tab is pushed in.",
    ERROR,
)
RABBET = Rule(
    "design/rabbet-without-paper",
    "A rabbet is cut in board with paper faces whose paper is measured",
    "Only the outside paper is left over the rabbet, and the mate is shorter by it: bare foam would leave nothing.",
    ERROR,
)
FOLD = Rule(
    "design/fold",
    "Panels that are folded are one flat piece of board before",
    "A ring does not lie flat, and a piece has one board, one outline and one count.",
    ERROR,
)
FOLD_SKIN = Rule(
    "design/fold-without-skin",
    "Board that is folded has paper on its outside",
    "The groove leaves nothing but the outer skin, and bare foam breaks there (common practice).",
    WARNING,
)
PLACES_DIFFER = Rule(
    "design/places-differ",
    "All places of a part are joined alike",
    "One template can only have one set of tabs, slots and bevels.",
    ERROR,
)
UNJOINED = Rule(
    "design/unjoined-place",
    "Every panel is joined to the one that stands on the table",
    "A panel that nothing holds has no place in the piece.",
    ERROR,
)
NEED_LIMIT = Rule(
    "design/need-limit",
    "A need says at least, at most, or both, in that order of size",
    "A need without a limit cannot be judged, and contradicting limits can never be met.",
    ERROR,
)
STEP_NEVER_SHOWN = Rule(
    "design/step-never-shown",
    "Each step is for packs that the design has",
    "A step for a way of use or a variant that no pack has is read by nobody.",
    ERROR,
)
NO_STEPS = Rule(
    "design/no-steps",
    "A design has steps",
    "A buyer with templates alone does not know in which order they go together.",
    WARNING,
)
PART_IN_NO_STEP = Rule(
    "design/part-in-no-step",
    "Every part is mentioned in a step",
    "A piece that was cut and is never put anywhere is left over on the table, or missing in the piece.",
    WARNING,
)
STAGE_ORDER = Rule(
    "design/stage-order",
    "Steps come in the order in which they can be done",
    "What is glued cannot be cut any more, and a print is measured before anything is cut by it.",
    WARNING,
)
UNSIGNED = Rule(
    "design/unsigned",
    "A design says who made it, and on what terms",
    "A buyer must know whom to ask and what is allowed; a release without either is an error.",
    WARNING,
)
LICENCE = Rule(
    "design/licence",
    "A licence is an SPDX identifier",
    "Only a known name says what a buyer may do; terms of one's own are LicenseRef-NAME (SPDX 3.0, annex on licence expressions).",
    ERROR,
)
FIT_MEASURE = Rule(
    "design/fit-measure",
    "A fit has measures that can be",
    "What goes in has a width of more than 0; paint, spread and the loosest play are lengths of 0 or more.",
    ERROR,
)
NEED_ADJUST = Rule(
    "design/need-adjust",
    "A need adjusts a size of the design",
    "Only a named size can be changed to meet a need.",
    ERROR,
)
FIGURE = Rule(
    "design/figure",
    "figure_base is the width of a figure's base, figure_mass its grams",
    "By these two sizes is judged what stands, tips, bends and breaks under the figures.",
    ERROR,
)
FIGURE_UNKNOWN = Rule(
    "design/figure-mass-unknown",
    "A base wider than 60 mm comes with the mass of its figure",
    "Figures on larger bases weigh anything; a piece that was judged by too light a one breaks on the table.",
    WARNING,
)
UNKNOWN_FACT = Rule(
    "design/unknown-fact",
    "A fact starts with a part or an assembly",
    "Facts are named part.fact or assembly.fact.",
    ERROR,
)
UNKNOWN_MATERIAL = Rule(
    "design/unknown-material",
    "A step uses tools and materials that the design lists",
    "What a step uses stands on the cover and brings its caution.",
    ERROR,
)
PICTURE = Rule(
    "design/picture",
    "A picture shows one thing that is in the design",
    "A step without the picture that it names leaves the buyer alone.",
    ERROR,
)
ADDS = Rule(
    "design/adds",
    "A step adds what is in the design",
    "The tool follows the building by what each step adds, and can neither draw nor check what is not there.",
    ERROR,
)
ADDED_TWICE = Rule(
    "design/added-twice",
    "Nothing is added that stands already",
    "A buyer who is told twice to glue a wall in looks for a second wall.",
    ERROR,
)
NEVER_ADDED = Rule(
    "design/never-added",
    "Where steps say what they add, they add all there is",
    "A part that no step puts in its place stays on the table when the last page is read.",
    ERROR,
)
PAPER_SIZE = Rule(
    "design/paper-size",
    "A paper of one's own has a width, a height and margins that leave room",
    "A page holds its header, its footer and its calibration box, or it can be neither read nor measured.",
    ERROR,
)

COMBINE = Rule(
    "design/combination",
    "A combination says what is done to which shape",
    "A step that names no shape, or shapes that are made of each other, would leave the part's outline open.",
    ERROR,
)

SPLIT = Rule(
    "design/split",
    "A seam has a plate and a step that can be cut",
    "A plate narrower than its seam holds nothing, and a step of a hair cannot be cut by hand.",
    ERROR,
)
BRACE = Rule(
    "design/brace",
    "A knee brace has a run and a drop",
    "A brace without length props nothing.",
    ERROR,
)

PLAN_RULES = (
    BRACE,
    BOARD_THICKNESS,
    BOARD_MEASURE,
    SHEET_SIZE,
    SHEET_TWICE,
    UNKNOWN_BOARD,
    UNKNOWN_PART,
    LETTER,
    PART_OUTLINE,
    PART_COUNT,
    COUNT_RANGE,
    TOO_MANY_PARTS,
    TRACE_ALLOWANCE,
    TRACE_UNUSED,
    DRAWING_SCALE,
    STACK_HEIGHT,
    LOWEST,
    SECTION,
    ASSEMBLY,
    NAME_TAKEN,
    UNKNOWN_PLACE,
    EDGE_ITSELF,
    EDGE_TWICE,
    JOIN_OPTION,
    CORNER,
    EQUAL_CORNERS,
    FACE,
    THINGS,
    SLOT_EDGE,
    RABBET,
    FOLD,
    FOLD_SKIN,
    PLACES_DIFFER,
    UNJOINED,
    NEED_LIMIT,
    FIT_MEASURE,
    STEP_NEVER_SHOWN,
    NO_STEPS,
    PART_IN_NO_STEP,
    STAGE_ORDER,
    UNSIGNED,
    LICENCE,
    NEED_ADJUST,
    FIGURE,
    FIGURE_UNKNOWN,
    UNKNOWN_FACT,
    UNKNOWN_MATERIAL,
    PICTURE,
    ADDS,
    ADDED_TWICE,
    NEVER_ADDED,
    PAPER_SIZE,
    COMBINE,
    SPLIT,
)
