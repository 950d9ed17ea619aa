"""How large a thing of a design may be: one number for parts, sheets and papers, whichever room judges it."""

LONGEST_MM = 5000.0
"""mm. What is longer is a slip of the decimal point (a PDF page ends at 5080 mm)."""
