"""What is in the hand when a step coats, cuts and glues: it follows from what the step uses. A sketch shows no bottle of thinned glue where
filler is taken, no brush where a can sprays, no knife where a hot wire cuts; of what no step says it shows less."""

from collections.abc import Iterable
from typing import Literal

from publisher.design import StepPlan

Coat = Literal["glue", "paint", "varnish", "filler", "spray", "unsaid"]
"""What goes on: white glue thinned with water, paint or varnish from a pot, filler, what a can sprays; or no word says what."""

BRUSHES = "brushes"
GLUE = "white_glue"
PAINT, VARNISH, FILLER = "acrylic_paint", "varnish", "filler"
CANS = ("spray_can", "spray_paint")
HOT_WIRE, KNIFE = "hot_wire_cutter", "craft_knife"

FROM_BOTTLES = (GLUE, "superglue")
"""Glue that comes out of a bottle."""

OTHER_GLUES = ("hot_glue", "hot_glue_gun", "spray_glue", "stick_glue", "masking_tape")
"""What holds too, and comes out of none."""


def sealed_with(uses: Iterable[str]) -> Coat:
    """Return with what a step seals that uses these: with filler alone it fills, and seals nothing all round."""
    used = frozenset(uses)
    if GLUE in used:
        return "glue"
    if {PAINT, VARNISH} & used:
        return "paint"
    if FILLER in used:
        return "filler"
    return "spray" if used & {*CANS} else "unsaid"


def painted_with(uses: Iterable[str]) -> Coat:
    """Return with what a step paints that uses these: in two shades from pots, unless it takes a can or varnish alone."""
    used = frozenset(uses)
    if used & {*CANS} and not used & {PAINT, BRUSHES}:
        return "spray"
    return "varnish" if VARNISH in used and not used & {PAINT, *CANS} else "paint"


def brushed_on(act: str, uses: tuple[str, ...]) -> bool:
    """Tell whether the picture of an act that coats shows a brush: filler goes on with one only where the step says so."""
    coat = sealed_with(uses) if act == "seal" else painted_with(uses)
    return coat != "spray" and (coat != "filler" or BRUSHES in uses)


def cut_with_knife(step: StepPlan) -> bool:
    """Tell whether a knife follows the outlines that a step cuts: not where it names a hot wire and no knife."""
    return HOT_WIRE not in step.uses or KNIFE in step.uses


def from_bottle(step: StepPlan) -> bool:
    """Tell whether glue of a step comes out of a bottle: not where it names other glue alone, or tape."""
    return any(one in step.uses for one in FROM_BOTTLES) or not any(one in step.uses for one in OTHER_GLUES)


def coat_scenes(act: str, uses: tuple[str, ...]) -> tuple[str, ...]:
    """Return what the sketch of an act that coats shows beside what is coated; of a coat that no word names no section."""
    brush = ("brush",) if brushed_on(act, uses) else ()
    if act == "paint":
        return {"spray": ("can",)}.get(painted_with(uses), (*brush, "pot"))
    coats: dict[Coat, tuple[str, ...]] = {
        "glue": ("bottle", "pot", "sealed"),
        "paint": ("pot", "sealed"),
        "spray": ("can",),
    }
    return (*brush, *coats.get(sealed_with(uses), ("pot",)))
