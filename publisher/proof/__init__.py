"""Room 9: finished files and their promises in, findings out, reading the files as a stranger would.

Comes in: the bytes of a finished PDF and, where there are any, its promises, or the bytes that its spec builds today. Goes out: a
``Proof`` (truth: findings, readings, what was judged and what could not be), or an ``Identity`` (the same file, or which pages differ).
Neither trusts the other. Never: imports a room that made the file, takes a length from tags in the file, undoes tiles by the poses
that made them (it uses the printed match marks), shares a unit constant with another room.
"""

from publisher.basics import Rule
from publisher.proof.checks import ALONE, OPENING, PROMISED
from publisher.proof.checks import RULES as TRUTH
from publisher.proof.identity import AS_BUILT, Identity, identify
from publisher.proof.prove import prove
from publisher.proof.reading import Measured, Proof

RULES: tuple[Rule, ...] = (*TRUTH, AS_BUILT)

__all__ = ["ALONE", "OPENING", "PROMISED", "RULES", "Identity", "Measured", "Proof", "identify", "prove"]
