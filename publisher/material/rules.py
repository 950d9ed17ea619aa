"""Rules of the store of layouts. Those of boards and parts stand with their checks."""

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
LAYOUTS_STALE = Rule(
    "material/layouts-stale",
    "Layouts that are kept beside a spec are those of its parts",
    "Who keeps layouts wants the careful ones printed; after a change a short search may promise less, at every build anew.",
    Severity.WARNING,
)
