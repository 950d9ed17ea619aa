"""What must hold of boards, sheets and stored layouts, each rule stated once."""

from publisher.basics import Rule, Severity

STORE_UNREADABLE = Rule(
    "material/store-unreadable",
    "The store of layouts can be read",
    "A store that cannot be read is as good as none: every layout is worked out again, perhaps less well.",
    Severity.WARNING,
)
STORED_LAYOUT_WRONG = Rule(
    "material/stored-layout-wrong",
    "A stored layout holds",
    "A layout that was edited or damaged would promise sheets that no cutting reaches; it is never trusted, but made anew.",
    Severity.WARNING,
)
BOARD_WITHOUT_SHEETS = Rule(
    "material/board-without-sheets",
    "A board that parts are cut from has a sheet size",
    "Without a sheet on sale nobody can say how much board to buy.",
    Severity.WARNING,
)
SHEET_TOO_SMALL = Rule(
    "material/sheet-without-room",
    "A sheet has room inside its crushed edges",
    "An edge margin that eats the sheet leaves nothing to cut from.",
    Severity.ERROR,
)
PART_TOO_LARGE = Rule(
    "material/part-larger-than-sheets",
    "Every part fits a sheet on sale",
    "A part larger than every sheet cannot be cut in one piece.",
    Severity.ERROR,
)
PART_TOO_LARGE_FOR_ONE = Rule(
    "material/part-larger-than-sheet",
    "Parts fit each sheet size on sale",
    "A buyer who has this sheet must know that one part needs another.",
    Severity.WARNING,
)
TOO_MANY = Rule(
    "material/too-many-copies",
    "A list has a number of copies that someone could cut",
    "A list of tens of thousands of pieces is a slip of the pen, and laying it out would take hours.",
    Severity.ERROR,
)
LAYOUTS_NOT_STORED = Rule(
    "material/layouts-not-stored",
    "The layouts of a pack are stored beside its spec",
    "A table from a short search may promise less than a careful one, and is made again at every build.",
    Severity.WARNING,
)

RULES = (
    LAYOUTS_NOT_STORED,
    STORE_UNREADABLE,
    STORED_LAYOUT_WRONG,
    BOARD_WITHOUT_SHEETS,
    SHEET_TOO_SMALL,
    PART_TOO_LARGE,
    PART_TOO_LARGE_FOR_ONE,
    TOO_MANY,
)
