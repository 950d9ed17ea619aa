"""What a step of the instructions adds to what stands so far."""

from publisher.basics import Place, record


@record
class AddPlan:
    """Things of one assembly that a step adds, one after another in this order.

    ``names``: places of an assembly of panels, things of a whole, or layers of a stack as ``layer_1`` from the table up;
    ``BRACES`` for all knee braces of a stack. ``together``: they were joined before, and are put on as one. ``text`` is how the
    spec says it.
    """

    assembly: str
    names: tuple[str, ...]
    together: bool
    text: str
    place: Place


@record
class Buildable:
    """An assembly as steps may add to it: ``kind`` is stack, panels or things; ``names``: all that it is made of, layers from the
    table up, but for knee braces, which a ``braced`` stack has. ``whole``: all of it could be read."""

    name: str
    kind: str
    names: tuple[str, ...]
    whole: bool
    braced: bool
    place: Place


BRACES = "braces"
"""Stands for all knee braces of a stack: how many there are follows from what its steps bear."""


def layer_name(number: int) -> str:
    """Return what the layer with this number, from 1 at the table, is called."""
    return f"layer_{number}"
