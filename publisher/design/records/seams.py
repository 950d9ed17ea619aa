"""Plans of seams: where a part that is too long for the boards on sale is cut in two."""

from typing import Literal

from publisher.basics import Place, record


@record
class SplitPlan:
    """A straight seam across a part, ``at`` mm from its finished left or lower end.

    ``plate``: width in mm of a lap plate glued behind the seam; 0: none. ``step``: how far the two halves of the seam lie apart in mm,
    so that it is not one straight line; 0: straight.
    """

    at: float
    start: Literal["left", "bottom"]
    plate: float
    step: float
    place: Place
