"""Straight cuts as a rule is read for them."""

import numpy as np

from publisher.basics import CutPromise, CutReading
from publisher.material.read_cuts import read_cuts


def test_cuts_between_pieces_without_a_gap_choose_the_finest_rule() -> None:
    """No place on a rule lies between two tiles that touch and are rounded towards each other: the cut runs in the middle."""
    boxes = np.array(((0.0, 0.0, 50.0, 40.0), (50.0, 0.0, 100.0, 40.0)))
    laid = boxes + np.array(((0.04,), (-0.04,)))
    cut = CutPromise(False, 50.0, 0.0, 200.0, 2)
    assert read_cuts((cut,), boxes, boxes, 0.1) == ((CutReading(50.0, 0.0, 200.0),), True)
    assert read_cuts((cut,), boxes, laid, 0.1) == ((CutReading(50.0, 0.0, 200.0),), False)
