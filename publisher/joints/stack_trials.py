"""What to try before layers are cut: a pile of scraps as high as the stack, and what to do when it is not; said here, before any page."""

from publisher.basics import NumberPromise, SentencePromise, record
from publisher.basics.wording import LengthUnit, rounded_down, rounded_up, say_length
from publisher.design import Design
from publisher.joints.facts import spread_ends
from publisher.joints.model import Joined
from publisher.joints.stacks import GLUE_LINE

SHOWN = 0.5
"""mm: a stack that may come out less than this higher or lower needs no trial. Common practice, no source."""


@record
class Pile:
    """The trial of one stack: its name, how many scraps are pressed together, what each is thick and how high they are to be; from
    least to most in mm, and whether more than nine of ten come out so or all do. ``limits``: the heights between which no layer more
    or fewer brings it nearer, as they are read on a rule."""

    name: str
    scraps: int
    thickness: float
    height: float
    least: float
    most: float
    likely: bool

    @property
    def limits(self) -> tuple[float, float]:
        """Half a layer to both sides, inwards to what a rule shows; to a tenth where boards are so thin that nothing would be left."""
        low, high = self.height - self.thickness / 2.0, self.height + self.thickness / 2.0
        for parts in (2, 10):
            ends = rounded_up(low * parts, 0) / parts, rounded_down(high * parts, 0) / parts
            if ends[0] < self.height < ends[1]:
                return ends
        return low, high

    def limits_words(self, first: LengthUnit) -> str:
        """Return ``97.5 mm (3.84 in) and 102.5 mm (4.04 in)``."""
        return " and ".join(say_length(end, first=first) for end in self.limits)


def trials_of(design: Design, joined: Joined) -> tuple[Pile, ...]:
    """Return each stack of equal boards whose height is to agree with something and may be off by a step that shows."""
    found = []
    for name, layers in joined.layers:
        height, ends = joined.fact(f"{name}.height"), spread_ends(f"{name}.height", joined.facts)
        thicknesses = {layer.thickness for layer in layers}
        if height is None or not ends or len(thicknesses) != 1 or not _asked(design, name):
            continue
        least, most = (end.value for end in ends)
        if max(height.value - least, most - height.value) < SHOWN:
            continue
        (thick,) = thicknesses
        found.append(Pile(name, len(layers), thick, height.value, least, most, "likely" in ends[0].name))
    return tuple(found)


def pile_sentences(design: Design, joined: Joined, first: LengthUnit = "mm") -> tuple[SentencePromise, ...]:
    """Return in words what to do for each of these stacks, as ``pile:NAME``, with its numbers."""
    return tuple(pile_sentence(pile, first) for pile in trials_of(design, joined))


def pile_sentence(pile: Pile, first: LengthUnit = "mm") -> SentencePromise:
    """Return in words what to do for one stack."""
    glue = "0.05 mm" if first == "mm" else "0.002 in (0.05 mm)"
    # as many decimals as are shown: below 10 mm a hundredth, which is the figure that was worked out
    low = say_length(rounded_down(pile.least, _decimals(pile.least)), first=first)
    high = say_length(rounded_up(pile.most, _decimals(pile.most)), first=first)
    height, thick = (say_length(length, first=first) for length in (pile.height, pile.thickness))
    within = pile.limits_words(first)
    likely = "Of ten such stacks of mixed boards more than nine" if pile.likely else "In the worst case they"
    said = (
        f"{pile.name.replace('_', ' ').capitalize()}: press a pile of {pile.scraps} scraps of your board together. It is to be "
        f"{height} high; between {within} go on. Where it is lower cut one layer more, and one for each further {thick} that it lacks; "
        "where it is higher as many fewer. Glue card between the layers for what is still missing. "
        f"{likely} come out from {low} to {high} high; we take it that a line of glue is up to {glue} thick."
    )
    numbers = (
        NumberPromise("scraps", float(pile.scraps), "count", str(pile.scraps)),
        NumberPromise("height", pile.height, "length", height),
        *(
            NumberPromise(name, end, "length", say_length(end, first=first))
            for name, end in zip(("low", "high"), pile.limits, strict=True)
        ),
        NumberPromise("thickness", pile.thickness, "length", thick),
        NumberPromise("least", pile.least, "length", low),
        NumberPromise("most", pile.most, "length", high),
        NumberPromise("glue", GLUE_LINE, "length", glue),
    )
    return SentencePromise(f"pile:{pile.name}", said, numbers)


def _decimals(mm: float) -> int:
    """Return with how many decimals ``say_length`` shows a length."""
    return 1 if mm >= 10.0 else 2


def _asked(design: Design, name: str) -> bool:
    """Tell whether a need or a meeting with other packs speaks of a stack's height."""
    height = f"{name}.height"
    return any(need.fact == height for need in design.needs) or any(
        height in meet.amount.expression for meet in design.meets
    )
