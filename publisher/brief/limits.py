"""Limits on what a designer's folder may hold. Each is far above real need; each finding that refuses one names it."""

SPEC_BYTES = 1_000_000
NODES = 20_000  # values of a spec, counted with every alias written out
DEPTH = 12  # mappings and lists inside each other
ALIASES = 8
FINDINGS = 100  # more than anybody reads at once
KEY_LETTERS = 60
SLUG_LETTERS = 40  # the page code has room for no more
PATH_LETTERS = 200
PICTURE_BYTES = 40_000_000
PICTURE_PIXELS = 80_000_000
DRAWING_BYTES = 8_000_000
FONT_BYTES = 20_000_000
LAYOUTS_BYTES = 20_000_000
FILES_BYTES = 120_000_000  # all files of one folder together
