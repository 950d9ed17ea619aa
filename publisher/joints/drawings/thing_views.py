"""Things on things as a whole, lifted off each other, and seen square to the piece."""

import numpy as np

from publisher.joints.drawings.lines import Sketch
from publisher.joints.drawings.panel_solids import solids_of
from publisher.joints.drawings.panel_views import draw_solids, few_marks
from publisher.joints.drawings.view import PANEL_VIEW, View
from publisher.joints.panels import PanelFrame
from publisher.joints.wholes import PlacedWhole

LIFTED = 0.35
"""How far a thing is lifted off what carries it, as a share of the mean size of the whole in plan."""


def whole_view(whole: PlacedWhole) -> Sketch:
    """Draw the things put together."""
    return _drawn(whole, 0.0)


def exploded_view(whole: PlacedWhole) -> Sketch:
    """Draw the things as they are, each lifted off what carries it."""
    return _drawn(whole, LIFTED)


def flat_view(whole: PlacedWhole, view: View) -> Sketch:
    """Draw the things put together, seen square to the piece."""
    sketch = Sketch()
    panels = [(panel.part, panel.frame) for panel in whole.panels]
    draw_solids(solids_of(panels, view, slots=False, surface=False), sketch)
    return sketch


def _drawn(whole: PlacedWhole, share: float) -> Sketch:
    low, high = whole.box
    lift = share * float((high - low)[:2].mean())
    floors: dict[str, int] = {}
    panels = []
    for one in whole.things:
        floors[one.thing.name] = max((floors[name] + 1 for name in one.thing.on), default=0)
        up = np.array([0.0, 0.0, floors[one.thing.name] * lift])
        panels += [(panel.part, PanelFrame(panel.frame.axes, panel.frame.origin + up)) for panel in one.panels]
    sketch = Sketch()
    draw_solids(solids_of(panels, PANEL_VIEW, slots=False, surface=few_marks(whole.panels)), sketch)
    return sketch
