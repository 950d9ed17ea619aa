"""What a rewritten spec must keep."""

from publisher.basics import Rule, Severity

LEFT = Rule(
    "upgrade/by-hand",
    "Everything of a former format can be rewritten",
    "What cannot be rewritten with the same meaning is not guessed: the designer says what was meant.",
    Severity.ERROR,
)
PARTS = Rule(
    "upgrade/parts-differ",
    "The parts of a rewritten spec are those of the spec as it was",
    "A new way to write a size must not change what is cut.",
    Severity.ERROR,
)
TEXT = Rule(
    "upgrade/text-prints-unit",
    "A text says the same as before",
    "A size that got its unit prints it: behind it a unit of the text's own would stand twice.",
    Severity.WARNING,
)
RULES = (LEFT, PARTS, TEXT)
