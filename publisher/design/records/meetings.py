"""Plans of what must fit beside a design's own parts: knee braces under steps, sizes at which packs meet."""

from publisher.basics import Place, record
from publisher.design.records.texts import Blank


@record
class BracePlan:
    """Knee braces under the steps of a stack: horizontal run and vertical drop in mm.

    ``under``: the steps that get one, by their numbers from the table up; () for every step that is high enough for it.
    ``weak``: of these only the steps that break without one. ``part``: what is cut for them, from ``board`` ('' for that of the steps).
    """

    run: float
    drop: float
    under: tuple[int, ...]
    weak: bool
    place: Place
    part: str = ""
    board: str = ""


@record
class FitPlan:
    """A thing that goes into a room of a part or an assembly: a dowel, a magnet, a part that slides or lifts off. Mm.

    ``into`` is the fact that says how wide the room is. What goes in is either ``goes`` mm wide, ± ``spread``, and does not
    shrink with the paper, or as wide as the fact ``goes_fact`` says. ``paint`` comes on each painted face; ``loosest`` is the
    most play that still holds (None: any).
    """

    name: str
    into: str
    goes: float | None
    goes_fact: str
    spread: float
    paint: float
    loosest: float | None
    place: Place


@record
class MeetPlan:
    """A size at which this design meets other packs: its name, the same in each of them, and an expression of sizes and facts."""

    name: str
    amount: Blank
    place: Place
