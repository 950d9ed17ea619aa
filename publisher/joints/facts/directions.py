"""Which way the figure of a fact is rounded: it is given where the fact is made, and kept wherever it is printed."""

from publisher.basics import Place
from publisher.basics.wording import Rounds
from publisher.design import Fact, Kind

PROMISED = frozenset(
    (
        "base_that_stands", "base_that_does_not_tip", "headroom", "tread", "inside_width", "inside_depth", "least_wall",
        "least_beside_slot", "balance_margin", "balance_with_figures", "push_to_tip", "push_to_slide", "step_carries",
        "deck_carries", "strength_factor", "deck_strength_factor", "contact", "contact_least", "joint_stagger", "height_least",
        "climb_least", "headroom_least", "height_likely_least", "climb_likely_least", "headroom_likely_least",
    )
)  # fmt: skip
"""Facts that somebody relies on: there is at least so much. They go down."""

BURDENS = frozenset(
    (
        "packed_length", "packed_width", "packed_height", "longest", "least_plinth_radius", "height_spread", "overhang",
        "overhang_reach", "flying_reach", "root_stress", "height_most", "climb_most", "headroom_most", "height_likely_most",
        "climb_likely_most",
        "headroom_likely_most",
    )
)  # fmt: skip
"""Facts that room or strength must be found for: it is at most so much. They go up."""


def rounds_of(name: str) -> Rounds:
    """Return how the figure of a fact is rounded, by the last word of its name."""
    word = name.rpartition(".")[2]
    return "down" if word in PROMISED else "up" if word in BURDENS else "nearest"


def made_fact(name: str, value: float, kind: Kind, place: Place | None, clear: bool = False) -> Fact:
    """Return a fact with its direction. ``clear``: it is the size of an opening, which something must pass."""
    return Fact(name, float(value), kind, place, "down" if clear else rounds_of(name))
