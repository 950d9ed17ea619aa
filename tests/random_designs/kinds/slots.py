"""Tabs and slots: what a join says of them, and the thickest board in its slot."""

from manifold3d import CrossSection, Manifold

from tests.random_designs.design import Base, Fit, Spec, mm
from tests.random_designs.solids import block


def least_tab(t: float) -> float:
    """Return how long a tab is at least (mm; common practice), by the thickness of its board."""
    return 12.0 * max(1.0, t / 5.0)


def options(base: Base, play: float, length: float) -> Spec:
    """Return what a join says of two tabs, or of one on an edge too short for two; its loosest play wide enough for the thinnest
    board. Tabs and gaps are equally long."""
    return {
        "tabs": 2 if length >= 4 * least_tab(base.t) else 1,
        "play": mm(play),
        "loosest": mm(play + 2 * base.spread + 0.1),
    }


def fit(name: str, base: Base, play: float) -> Fit:
    """Return a tab of the thickest board in the middle of a slot, which is as wide as the board as measured and its play."""
    t, thickest = base.t, base.t + base.spread
    slotted = CrossSection.square((60.0, 60.0)) - CrossSection.square((t + play, 20.0)).translate((20.0, 20.0))
    left = 20.0 + (t + play - thickest) / 2
    return Fit(name, block((left, 21.0, 0.0), (left + thickest, 39.0, t)), Manifold.extrude(slotted, t))
