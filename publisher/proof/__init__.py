"""Room 9: finished files and their promises in, findings out, reading the files as a stranger would.

Comes in: the bytes of a finished PDF and, where there are any, its promises. Goes out: a ``Proof``: findings, readings, what was judged
and what could not be. Never: imports a room that made the file, takes a length from tags in the file, undoes tiles by the poses
that made them (it uses the printed match marks), shares a unit constant with another room.
"""

from publisher.proof.checks import ALONE, OPENING, PROMISED, RULES
from publisher.proof.prove import prove
from publisher.proof.reading import Measured, Proof

__all__ = ["ALONE", "OPENING", "PROMISED", "RULES", "Measured", "Proof", "prove"]
