"""A part that is bent: the strip before, its slits, the way it curls."""

from itertools import pairwise

import numpy as np

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark
from publisher.joints.act_pictures.scene import Solid
from publisher.joints.act_pictures.strip import SLITS_APART, strip_sketch
from publisher.joints.drawings import PANEL_VIEW
from publisher.joints.panels import PanelFrame


def test_slits_are_thinned_and_both_ends_curl_in_over_the_strip(make: object) -> None:
    slits = tuple(
        Mark(LineKind.SCORE, Purpose.BEND, polyline(((float(x), 0.0), (float(x), 40.0))), name="slit")
        for x in range(10, 190, 2)
    )
    wall = make.wall("strip", 200, 40)  # type: ignore[attr-defined]
    part = make.part("strip", wall.outline.outer, marks=slits)  # type: ignore[attr-defined]
    made = strip_sketch(Solid("strip", part, PanelFrame(np.eye(3), np.zeros(3))), PANEL_VIEW)
    shown = made.lines["detail"]
    assert 10 < len(shown) < len(slits)
    gaps = [a.distance(b) for a, b in pairwise(shown)]
    assert min(gaps) >= SLITS_APART
    left, right = sorted(made.arrows, key=lambda arrow: float(arrow[:, 0].mean()))
    assert left[-1][0] > left[0][0] and right[-1][0] < right[0][0]
