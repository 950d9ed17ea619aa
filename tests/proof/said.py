"""What the pack that is drawn by hand says because every pack must: by name, its page from 0, its words and where they begin (mm)."""

FIRST = {
    "print at 100 %": "Print at 100 %: choose “actual size” or “no scaling”, never “fit”, “shrink” or “fill”;",
    "square measured": "Measure the square across and down.",
    "square limits": "Both must lie between 99.5 and 100.5 mm (3.92 and 3.95 in).",
    "square near a limit": "Near a limit, measure 100 mm of the long rulers too.",
    "corner marks": "Look for all four corner marks. One is missing: the page was clipped, print it again.",
    "gauge": "Try a strip of your board in the gauge.",
    "gauge how": "Slide a short strip of your board, on its edge, to where it fills the gap: at its left end stands its thickness in mm.",
    "gauge takes": "This pack is drawn for 5 mm, at the arrow, and takes board from 4.7 to 5.3 mm, under the heavy bar.",
    "other board": "For any other board find the pack that is drawn for it.",
    "card": "A card’s edges must meet the line all round.",
    "card hides": "If it hides the line, or leaves paper inside it: print again at 100 %.",
    "rest": "Read “Before you cut”.",
    "pieces": "Make the coupon, then the pieces.",
    "coupon": "Glue the print on a free strip of the sheet, and cut on the line, through paper and board.",
    "flush": "A second piece of board, stood on edge in the step, ends level with the first: go on.",
    "not flush": "Measure the board again. As far off as the board itself: go on. Farther: you did not cut on the line.",
    "true": "True size.",
    "small": "98 to under 99.5 mm Scaled, damp, or printer runs small.",
    "small then": "100 %; then dry paper, other printer.",
    "smaller": "95 to under 98 mm “Fit” or “fill”: margins, other paper.",
    "smaller then": "Set 100 % and this page’s paper.",
    "smallest": "under 95 mm “Fit” or “fill”: other paper, margins.",
    "smallest then": "100 %, this paper; from a PDF viewer.",
    "large": "over 100.5 mm “Fill”, borderless, or other paper.",
    "large then": "100 %, this paper; borderless off.",
    "one way": "true one way only. The paper slipped or stretched.",
    "one way then": "Print again on dry, flat paper.",
    "gluing": "After gluing measure each page’s square again: wet paper grows by 2 to 3 % across its grain.",
}
LAST = {
    "step print": "Print page 1 at 100 %, one side only, and measure its square across and down.",
    "step readings": "Stop and check: both readings lie between 99.5 and 100.5 mm (3.92 and 3.95 in).",
    "step rest": "When both readings are right, print pages 2-4 the same way.",
    "step straight cuts": "Make the straight cuts there once all is marked out and openings are cut, before any outline.",
    "step gauge": "Stand a strip of your board on its edge in the gauge on page 1.",
    "step tape": "Trim one tile of each pair along its trim line, lay it over the other until match marks of the same name "
    "cover each other, and",
    "step tape on": "fix it with masking tape at both ends of the seam.",
    "step taped": "Stop and check: taped, A measures 90 × 60 mm.",
    "step room": "Stop and check: 3 pieces (2 × A and 1 × B) find room on the board before you cut the first.",
    "step without template": "C has no template: draw it with pencil and rule, by the sizes on page 2.",
    "step list": "You need now",
}
SO, CLIPPED = "Print at 100 % / actual size, single-sided", "A corner mark missing: page clipped."
LONG = 46  # letters that a row of the narrow column holds
ROW = 2.8  # mm

Said = tuple[str, int, str, tuple[float, float]]


def what_is_said() -> list[Said]:
    """Return all of it, in rows where nothing else stands."""
    narrow = [(name, words) for name, words in FIRST.items() if len(words) <= LONG]
    wide = [(name, words) for name, words in FIRST.items() if len(words) > LONG]
    found: list[Said] = [(name, 0, words, (10.0, 127.0 - ROW * n)) for n, (name, words) in enumerate(narrow)]
    found += [(name, 0, words, (84.0, 66.0 - ROW * n)) for n, (name, words) in enumerate(wide)]
    found += [(name, 3, words, (12.0, 232.0 - ROW * n)) for n, (name, words) in enumerate(LAST.items())]
    for sheet, top in enumerate((262.0, 262.0, 262.0, 244.0)):
        found += [("print so", sheet, SO, (12.0, top)), ("clipped", sheet, CLIPPED, (12.0, top - ROW))]
    return found
