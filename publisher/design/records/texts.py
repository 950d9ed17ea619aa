"""What buyers read, as plans: texts with blanks, steps and their pictures, materials, papers."""

from typing import Literal

from publisher.basics import Place, record
from publisher.design.records.adds import AddPlan


@record
class Blank:
    """A place in a text that a size or fact fills: an expression over names, and the one unit that a length is asked for in;
    '' for both, that of the paper's edition first."""

    expression: str
    place: Place
    unit: Literal["", "mm", "in"] = ""


@record
class TextPlan:
    """Words with blanks, in order. ``design.fill`` makes the sentence when the facts are known."""

    pieces: tuple[str | Blank, ...]
    place: Place


@record
class PicturePlan:
    """What a step's picture shows. ``kind``: whole, exploded, plan (of an assembly), part, photo.

    ``target`` is the assembly, part or file; ``layer`` the stack layer of a plan, from 1 at the table; 0 if unsaid.
    """

    kind: Literal["whole", "exploded", "plan", "part", "photo"]
    target: str
    layer: int
    alt: TextPlan | None
    place: Place


@record
class StepPlan:
    """One step of the instructions. ``adds``: what it adds to what stands so far, in this order. ``acts``: what is done to its parts;
    None where the spec leaves that to its stage. ``wait``: how long it must dry then, such as ``24 h``; '' for not at all."""

    title: TextPlan
    stage: str
    say: TextPlan
    parts: tuple[str, ...]
    uses: tuple[str, ...]
    picture: PicturePlan | None
    place: Place
    adds: tuple[AddPlan, ...] = ()
    acts: tuple[str, ...] | None = None
    wait: str = ""


@record
class MaterialPlan:
    """Something to buy: a key of the caution table or free words, and an amount from sizes and facts."""

    name: str
    text: TextPlan | None
    amount: Blank | None
    place: Place


@record
class PaperWish:
    """A paper that the spec names; width, height and margins (left, bottom, right, top) in mm for one of its own."""

    name: str
    width: float | None
    height: float | None
    margins: tuple[float, float, float, float] | None
    place: Place
