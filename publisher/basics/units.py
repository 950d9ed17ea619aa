"""The inch. Proof and ruler may not take it from here: a judge states units for itself (a contract keeps it so)."""

INCH_MM = 25.4
"""The inch of 1 July 1959 is 25.4 mm exactly ("Refinement of Values for the Yard and the Pound", US Federal Register
1 July 1959; UK Weights and Measures Act 1963)."""


def inches(mm: float) -> float:
    """Return the length ``mm`` in inches of 25.4 mm."""
    return mm / INCH_MM
