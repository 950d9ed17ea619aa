"""Tools that the pictures of acts show in the hand: what is shown stands in the lists too, whether a step names it or not."""

from collections.abc import Iterable

from publisher.joints import brushed_on

OF_ACTS: dict[str, tuple[str, ...]] = {
    "trace": ("pencil",),
    "draw": ("pencil",),
    "press": ("blunt_pencil", "pencil"),  # the pencil that is listed is both
    "roll": ("bottle",),
    "seal": ("brushes", "spray_can", "spray_paint"),
    "paint": ("brushes", "spray_can", "spray_paint"),
}
"""The tool of an act, and others that do as well."""


def tools_of_acts(acts: Iterable[str], named: Iterable[str]) -> tuple[str, ...]:
    """Return the tools that acts take beside those that are ``named`` already, each once."""
    own = frozenset(named)
    wanted = (OF_ACTS[act] for act in acts if act in OF_ACTS and (act != "seal" or brushed_on(act, tuple(own))))
    return tuple(dict.fromkeys(tools[0] for tools in wanted if own.isdisjoint(tools)))
