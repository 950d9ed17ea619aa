"""What stands in words beside and in the picture of a laid-out sheet: measures, straight cuts, the offcut, what sheet it is."""

from publisher.basics import Box, CutPromise, LayoutPromise, MeasurePromise, PlacePromise, record
from publisher.basics.units import inches
from publisher.basics.wording import LengthUnit, fixed, ruled, ruled_inches
from publisher.pages.templates import LAYOUT_POINTS

POINTS = tuple(f"{point} " for point in LAYOUT_POINTS)  # of a copy that lies askew
STRAIGHT = "straight cut"  # what “cut 4” means in the words of a layout; on a label it is how many are cut
ACROSS, DOWN, UP = "→", "↓", "↑"


@record
class SheetWords:
    """The words of one sheet's picture, in mm or inches. A sheet that stands is shown turned by a quarter to the right, so that its
    long side runs across: what lies over its lower edge is then measured from the left, what lies to its right from the top."""

    promise: LayoutPromise
    first: LengthUnit

    @property
    def turned(self) -> bool:
        """Whether the sheet is shown turned."""
        return self.promise.height > self.promise.width

    def caption(self) -> str:
        """Say which sheet it is, and from which edges it is measured in which unit."""
        one = self.promise
        which = f"sheet {one.number} of {one.total}"
        if one.alike > 1:
            which = f"{one.alike} sheets of {one.total} are laid out like this"
        edges = "the left and the top edge" if self.turned else "the left and the bottom edge"
        unit = "mm" if self.first == "mm" else "inches"
        name = sheet_name(one.sheet, one.width, one.height)
        return f"{one.board.replace('_', ' ')}, {name}: {which}. Measured in {unit} from {edges}."

    def name(self, place: PlacePromise) -> str:
        """Say the number of a copy's place, as which it comes free, and its letter."""
        return f"{place.order} {place.letter}"

    def measures(self, place: PlacePromise) -> tuple[tuple[str, str], ...]:
        """Return the words of each point that marks a copy out: how far from the left, and from the other edge."""
        marks = POINTS if len(place.measures) > 1 else ("",)
        return tuple(
            (mark + over, along) for mark, (over, along) in zip(marks, map(self._pair, place.measures), strict=True)
        )

    def cut(self, cut: CutPromise) -> str:
        """Say where a straight cut runs, and from where to where if not from edge to edge."""
        upright = cut.level == self.turned
        size = self.promise.width if cut.level else self.promise.height
        whole = cut.start <= 0.0 and cut.end >= size
        read = (cut.mm if self.first == "mm" else cut.inches) or cut
        said = f"{'upright' if upright else 'across'} at {self.figure(read.at)}"
        return said if whole else f"{said}, from {self.figure(read.start)} to {self.figure(read.end)}"

    def offcut(self, box: Box) -> tuple[str, ...]:
        """Say what is worth keeping, in lines of which the last ones may be left out."""
        sides = (box.height, box.width) if self.turned else (box.width, box.height)
        metric = " × ".join(fixed(side, 0, "down") for side in sides) + " mm"
        imperial = " × ".join(fixed(inches(side), 1, "down") for side in sides) + " in"
        return ("keep", *((metric, imperial) if self.first == "mm" else (imperial, metric)))

    def figure(self, mm: float) -> str:
        """Say a measure as it is read on a rule."""
        one = self.promise
        return ruled(mm, one.step_mm) if self.first == "mm" else ruled_inches(mm, one.parts_of_inch)

    def _pair(self, measure: MeasurePromise) -> tuple[str, str]:
        x, y = measure.at
        over, along = (y, x) if self.turned else (x, y)
        return ACROSS + self.figure(over), (DOWN if self.turned else UP) + self.figure(along)


def sheet_name(label: str, width: float, height: float) -> str:
    """Say a sheet in the words of the shop and in the other unit."""
    if "in" in label:
        return f"{label} ({width:.0f} × {height:.0f} mm)"
    return f"{label} ({fixed(inches(width), 1)} × {fixed(inches(height), 1)} in)"
