"""Rules of expressions, sizes and texts: what a value must be."""

from publisher.basics import Rule, Severity

ERROR = Severity.ERROR

SYNTAX = Rule(
    "design/unreadable-expression",
    "An expression can be read",
    "A value that cannot be read has no size, and a guess would be cut in board.",
    ERROR,
)
TOO_BIG = Rule(
    "design/expression-too-big",
    "An expression is short enough to read",
    "No spec may hang the machine: at most 300 letters, 40 brackets deep.",
    ERROR,
)
NUMBER_RANGE = Rule(
    "design/number-out-of-range",
    "Numbers stay within a thousand million",
    "Larger numbers are slips of the finger, and beyond the reach of exact geometry.",
    ERROR,
)
EXPONENT = Rule(
    "design/exponent",
    "An exponent is a whole or half number from -16 to 16",
    "Other powers have no meaning for lengths and grow beyond all bounds.",
    ERROR,
)
UNKNOWN_UNIT = Rule(
    "design/unknown-unit",
    "A unit is one of mm, cm, in, deg",
    "A length in a unit that the tool does not know would come out at a wrong size.",
    ERROR,
)
UNKNOWN_NAME = Rule(
    "design/unknown-name",
    "Every name in an expression is known",
    "A name without a value is a slip, and a guess would be cut in board.",
    ERROR,
)
FACT_IN_SIZE = Rule(
    "design/fact-in-size",
    "Facts are used in texts, needs and materials only",
    "Facts follow from the parts; a size that followed from a fact would go round in a circle.",
    ERROR,
)
MIXED = Rule(
    "design/mixed-kinds",
    "Only like things are added or compared",
    "A length plus a plain number says nothing: the unit is missing.",
    ERROR,
)
WRONG_KIND = Rule(
    "design/wrong-kind",
    "A value is of the kind that its field asks for",
    "An angle where a length belongs is a slip that would draw a wrong part.",
    ERROR,
)
RATIO_AS_SIZE = Rule(
    "design/ratio-as-size",
    "A ratio never becomes mm or degrees",
    "A quotient of lengths is a share or a count; taken for mm it would be wrong by the size of the divisor.",
    ERROR,
)
NO_UNIT = Rule(
    "design/no-unit",
    "A length or an angle has a unit",
    "A plain number may be mm, inches or degrees: nobody knows which was meant. Only 0 needs no unit.",
    ERROR,
)
NOT_WHOLE = Rule(
    "design/not-whole",
    "A count is a whole number",
    "Nobody cuts seven and a half layers.",
    ERROR,
)
NO_VALUE = Rule(
    "design/no-value",
    "An expression has a value",
    "Division by zero and the like have no result that could be drawn.",
    ERROR,
)
ROUNDED_LENGTH = Rule(
    "design/rounded-length",
    "Only plain numbers and ratios are rounded",
    "Rounding a length needs a step: whole mm and whole inches are different lengths.",
    ERROR,
)
SIZE_CYCLE = Rule(
    "design/size-cycle",
    "Sizes do not go round in a circle",
    "A size that depends on itself has no value.",
    ERROR,
)
RESERVED = Rule(
    "design/reserved-name",
    "Units and functions are not names of sizes",
    "A size called in or max would change what expressions mean.",
    ERROR,
)
TOO_MANY_SIZES = Rule(
    "design/too-many-sizes",
    "A design has at most 2000 sizes",
    "Nobody can read more, and no spec may hang the machine.",
    ERROR,
)
UNKNOWN_SET = Rule(
    "design/unknown-set",
    "A size set on the command line is a size of the design",
    "A misspelt name would change nothing, and the pack would have the old size.",
    ERROR,
)
NO_RANGE = Rule(
    "design/no-range",
    "A range names a size, its least value and a greater one",
    "Between two values that are the same, or that nobody can read, there is nothing to try.",
    ERROR,
)
UNKNOWN_VARIANT = Rule(
    "design/unknown-variant",
    "A variant and the sizes that it changes are in the design",
    "A misspelt name would change nothing, and the pack would have the old size.",
    ERROR,
)
VARIANT_NAME_TAKEN = Rule(
    "design/variant-name-taken",
    "No variant is called as the sizes as written are, as the packs to paste, or as those in another language",
    "Its cut files and pictures would take the place of the others.",
    ERROR,
)
TEXT_LANGUAGE = Rule(
    "design/text-language",
    "A text that stands in several languages stands in that of the pack",
    "A pack in one language with a sentence in another is not read where it matters.",
    Severity.WARNING,
)
TEXT_BLANK = Rule(
    "design/text-blank",
    "Braces in a text hold an expression",
    "A brace that does not close would be printed as it stands.",
    ERROR,
)
TEXT_NAME = Rule(
    "design/unknown-in-text",
    "Every name in a text is a size or a fact",
    "A buyer would read a name instead of a measure.",
    ERROR,
)

EXPRESSION_RULES = (
    SYNTAX,
    TOO_BIG,
    NUMBER_RANGE,
    EXPONENT,
    UNKNOWN_UNIT,
    UNKNOWN_NAME,
    FACT_IN_SIZE,
    MIXED,
    WRONG_KIND,
    RATIO_AS_SIZE,
    NO_UNIT,
    NOT_WHOLE,
    NO_VALUE,
    ROUNDED_LENGTH,
    SIZE_CYCLE,
    RESERVED,
    TOO_MANY_SIZES,
    UNKNOWN_SET,
    NO_RANGE,
    UNKNOWN_VARIANT,
    VARIANT_NAME_TAKEN,
    TEXT_LANGUAGE,
    TEXT_BLANK,
    TEXT_NAME,
)
