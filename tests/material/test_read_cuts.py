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


def test_a_cut_through_waste_is_read_at_a_long_stroke_of_the_rule() -> None:
    boxes = np.array(((0.0, 0.0, 50.0, 40.0), (53.0, 0.0, 100.0, 40.0)))
    cut = CutPromise(False, 51.5, 0.0, 200.0, 0)
    (metric,), clear = read_cuts((cut,), boxes, boxes, 0.5)
    assert clear and metric.at in (51.0, 52.0)
    (inches,), clear = read_cuts((cut,), boxes, boxes, 25.4 / 32)
    assert clear and inches.at == 50.8  # 2 in, 0.8 mm off the nearer piece
    free = CutPromise(False, 342.1, 0.0, 200.0, 0)
    assert read_cuts((free,), boxes, boxes, 0.1)[0][0].at == 342.0
    on_a_side = CutPromise(False, 50.0, 0.0, 200.0, 2)
    assert read_cuts((on_a_side,), boxes, boxes, 0.1)[0][0].at == 50.0
