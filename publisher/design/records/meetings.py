"""Plans of what must fit beside a design's own parts: knee braces under steps, sizes at which packs meet."""

from publisher.basics import Place, record
from publisher.design.records.texts import Blank


@record
class BracePlan:
    """Knee braces under the steps of a stack: horizontal run and vertical drop in mm, on every n-th step from the top."""

    run: float
    drop: float
    every: int
    place: Place


@record
class MeetPlan:
    """A size at which this design meets other packs: its name, the same in each of them, and an expression of sizes and facts."""

    name: str
    amount: Blank
    place: Place
