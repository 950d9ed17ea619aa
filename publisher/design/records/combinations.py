"""What makes one shape out of several: steps of a combination, and parts that are layers of one family."""

from typing import Literal

from publisher.basics import Place, record


@record
class Parameter:
    """A shape's or surface's parameter: a number (mm, degrees, plain) or a word from the parameter's own list."""

    name: str
    value: float | str
    expression: str
    place: Place


@record
class Family:
    """A part that is layer ``layer`` (1 at the table) of the ``layers`` layers that the spec's part ``name`` stands for."""

    name: str
    layer: int
    layers: int


@record
class CombineStep:
    """One step of a combination, done to the shape so far.

    ``add`` and ``cut`` join or take away another shape: ``shape`` with ``parameters`` and its own ``steps``, its origin
    at ``at`` (mm), turned by ``turn`` degrees; its edges get the name ``called`` before their own. ``repeat`` (and add and
    cut with a ``count``) lays ``count`` copies ``pitch`` mm apart along the straight edge ``along``. ``mirror`` turns the
    shape over: ``flip`` is ``left_right`` or ``up_down``, or the name of an edge beside which the mirror image is added.
    ``turn`` turns the shape about its origin.
    """

    kind: Literal["add", "cut", "mirror", "repeat", "turn"]
    place: Place
    shape: str = ""
    parameters: tuple[Parameter, ...] = ()
    steps: tuple["CombineStep", ...] = ()
    called: str = ""
    at: tuple[float, float] = (0.0, 0.0)
    turn: float = 0.0
    count: int = 1
    pitch: float = 0.0
    along: str = ""
    flip: str = ""
