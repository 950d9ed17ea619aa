"""A block of words in its place on the page: where it stands, what is drawn, what is promised."""

from dataclasses import replace
from math import hypot

import shapely

from publisher.basics import Box, Carried, Point, Pose, TextPromise, record
from publisher.joints import side_key
from publisher.pages.model import Drawn
from publisher.pages.templates.labels import Label, placed
from publisher.pages.type import Setter


@record
class Spot:
    """A block of words in its place: its lower left corner in mm, and the degrees by which it stands turned about that corner."""

    label: Label
    at: Point
    turn: float = 0.0

    @property
    def polygon(self) -> shapely.Polygon:
        """The rectangle that the block fills."""
        wide, tall = self.label.width, self.label.height
        return shapely.Polygon(
            Pose(*self.at, self.turn).apply_all(((0.0, 0.0), (wide, 0.0), (wide, tall), (0.0, tall)))
        )

    @property
    def box(self) -> Box:
        """The upright rectangle round it."""
        return Box(*self.polygon.bounds)

    def moved(self, pose: Pose) -> "Spot":
        """Return the block carried along with its part; one that would stand on its head is set the other way."""
        turn = (self.turn + pose.turn + 180.0) % 360.0 - 180.0
        if -90.0 < turn <= 90.0:
            return replace(self, at=pose.apply(self.at), turn=turn)
        far = Pose(*self.at, self.turn).apply((self.label.width, self.label.height))
        return replace(self, at=pose.apply(far), turn=turn - 180.0 if turn > 0.0 else turn + 180.0)


def spot_drawn(setter: Setter, spot: Spot, up: float) -> tuple[Drawn, ...]:
    """Return what is drawn of the block; ``up``: the turn in which its part lies."""
    return placed(spot.label, setter, Pose(*spot.at, spot.turn), up)


def sides_carried(page: int, box: Box, part: str, copy: int, mirrored: bool) -> Carried:
    """Say that the words in a box are where the print of a part says what was promised of its sides."""
    return Carried(side_key(part, mirrored), page, box, copy=copy)


def spot_promises(page: int, spot: Spot, part: str = "", copy: int = 0) -> tuple[TextPromise, ...]:
    """Promise the words of the block near where it stands, and with ``part`` inside that copy's outline."""
    box = spot.box
    middle = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
    within = hypot(box.width, box.height) / 2 + 3.0
    return tuple(TextPromise(page, text, middle, within, part, copy) for text in spot.label.promised)
