"""How large a thing of a design may be: one number for parts, sheets and papers, whichever room judges it; and its papers if unsaid."""

LONGEST_MM = 5000.0
"""mm. What is longer is a slip of the decimal point (a PDF page ends at 5080 mm)."""

LEAST_PAPER_MM = 100.0
"""mm. The least side of a paper: a page needs its header, its footer and words between them."""

LEAST_ROOM_MM = 60.0
"""mm. The least width and height inside a paper's margins: the calibration box stands there."""

USUAL_PAPERS = ("a4", "letter")
"""The papers of a design that says none."""
