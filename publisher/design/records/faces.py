"""Panels that lie or stand on a face of another one. Millimetres and degrees."""

from math import asin, atan, cos, degrees, radians, sin, tan
from typing import Literal

from publisher.basics import Place, Point, record

WhichFace = Literal["outside", "inside"]


@record
class FaceSeat:
    """``panel`` is put on the ``face`` of ``host``: with its inside face (``edge`` is ''), or standing on one of its edges.

    ``at``: where the middle of what touches lies, in the host's own coordinates as its template shows them; None where joins
    hold the panel. ``turn``: degrees, anticlockwise as one looks at that face, from the template's across (on the inside,
    where left and right change places, from its across to the left) to the panel's own across, or to the way its edge runs.
    ``slope``: how far the face lies out of the level, rising up the template; the edge is cut so that the panel stands
    upright on it. None: it stands square on the face. ``opening``: the one of the host that its end goes into from that face, until
    it lies level with the other face; '' for none.
    """

    panel: str
    host: str
    face: WhichFace
    edge: str
    at: Point | None
    turn: float
    slope: float | None
    place: Place
    opening: str = ""

    @property
    def placed(self) -> bool:
        """Whether it says where the panel is: joins hold one that is not."""
        return self.at is not None or bool(self.opening)

    @property
    def slant(self) -> float:
        """Degrees by which the edge is cut out of square in the plane of the panel, rising along its run."""
        return 0.0 if self.slope is None else _tidy(asin(sin(radians(self.turn)) * sin(radians(self.slope))))

    @property
    def bevel(self) -> float:
        """Degrees from square, positive when the panel's inside face becomes shorter.

        On a face with the normal n and the level direction x, uphill of it u, an edge runs along e = cos φ·x + sin φ·u; the
        upright panel runs into i, the vertical square to e, and looks along e × i. Its share of n over that of i is the tangent.
        """
        return 0.0 if self.slope is None else _tidy(atan(cos(radians(self.turn)) * tan(radians(self.slope))))


def _tidy(angle: float) -> float:
    """Return degrees without the dust of sines: a quarter turn bevels nothing."""
    return round(degrees(angle), 9) + 0.0
