"""Proof's own units: it restates them, so that an error in the press cannot hide behind a shared constant."""

MM_PER_INCH = 25.4  # the inch of 1 July 1959, exact
PT_PER_INCH = 72.0  # ISO 32000-1, 8.3.2.3: default user space unit is 1/72 inch
MM_PER_PT = MM_PER_INCH / PT_PER_INCH
