"""Every rule of the commands: about what was typed, and about files that a command alone reads or writes."""

from publisher.basics import Rule, Severity

FILE_UNREADABLE = Rule(
    "cli/file-unreadable",
    "The file that is given can be read",
    "Nothing can be said of a file that cannot be opened.",
    Severity.ERROR,
)
NO_OUTLINE = Rule(
    "cli/no-outline",
    "A drawing has a closed outline",
    "A part is cut along a closed line; a drawing without one gives no part.",
    Severity.ERROR,
)
PICTURE_NOT_WRITTEN = Rule(
    "cli/picture-not-written",
    "The picture can be written where it is asked for",
    "A picture that is silently missing would be taken for an old one.",
    Severity.ERROR,
)
NOT_PROMISED = Rule(
    "cli/not-promised",
    "The spec promises the file that is given",
    "Only a file whose design, version, variant and paper are known can be held against its promises.",
    Severity.ERROR,
)
UNKNOWN_SHAPE = Rule(
    "cli/unknown-shape",
    "The shape that is asked for exists",
    "A name with a typing slip should find its shape.",
    Severity.ERROR,
)
UNKNOWN_LIST = Rule(
    "cli/unknown-list",
    "The list of words that is asked for exists",
    "A name with a typing slip should find its list.",
    Severity.ERROR,
)
KEEP_WHAT = Rule(
    "cli/keep-what",
    "Only layouts of the design as it is written are kept",
    "Layouts for other sizes or sheets would never be found again, and would only swell the store.",
    Severity.ERROR,
)

OWN_FAULT = Rule(
    "cli/own-fault",
    "This program has no fault",
    "A fault of ours must not look like one of a design, nor stop the other designs.",
    Severity.ERROR,
)
ONE_NAME_TWICE = Rule(
    "cli/one-name-twice",
    "Designs that are placed together have names of their own",
    "A design's folder gives its packs their name: of two with one name the second would silently replace the first.",
    Severity.ERROR,
)

RULES: tuple[Rule, ...] = (
    FILE_UNREADABLE,
    NO_OUTLINE,
    PICTURE_NOT_WRITTEN,
    NOT_PROMISED,
    UNKNOWN_SHAPE,
    UNKNOWN_LIST,
    KEEP_WHAT,
    ONE_NAME_TWICE,
    OWN_FAULT,
)
