"""What the pipeline hands on: a variant as far as it was worked out, made otherwise, or built."""

from pathlib import Path

from publisher.basics import Finding, errors, record
from publisher.brief import Brief
from publisher.design import Design
from publisher.geometry import Part
from publisher.joints import Joined
from publisher.material import BoardNeeds
from publisher.pages import Pack
from publisher.proof import Proof
from publisher.release import Bundle, Offer, Output


@record
class Worked:
    """One variant of one design, as far as it got: a room that found an error is the last one that ran."""

    brief: Brief
    variant: str
    design: Design | None = None
    parts: tuple[Part, ...] = ()
    joined: Joined | None = None
    needs: BoardNeeds | None = None
    findings: tuple[Finding, ...] = ()
    pieces: tuple[Part, ...] = ()  # what is cut from board: the parts, those that are split in their pieces and plates


@record
class Made:
    """One variant with other values of some sizes, as far as its parts: ``pieces`` are what is cut. What stopped it is in the findings."""

    design: Design | None = None
    parts: tuple[Part, ...] = ()
    pieces: tuple[Part, ...] = ()
    findings: tuple[Finding, ...] = ()


@record
class BuiltPack:
    """One pack for one paper: the pages, the finished PDF, its record, what proof says of it."""

    pack: Pack
    pdf: Output
    record: Output
    proof: Proof


@record
class Built:
    """One variant, built for all its papers. ``outputs`` are all its files; () when an error stopped it."""

    worked: Worked
    packs: tuple[BuiltPack, ...]
    outputs: tuple[Output, ...]
    findings: tuple[Finding, ...]

    @property
    def good(self) -> bool:
        """Whether no error was found."""
        return not errors(self.findings)

    @property
    def slug(self) -> str:
        """The design's name."""
        return self.worked.brief.slug

    @property
    def variant(self) -> str:
        """The variant's name; '' for the sizes as written."""
        return self.worked.variant

    @property
    def pages(self) -> int:
        """The pages of all its packs."""
        return sum(len(one.pack.pages) for one in self.packs)

    @property
    def sheets(self) -> int:
        """The sheets of board that are bought for it: of each board those of the first size that takes every part."""
        needed = self.worked.needs.yields if self.worked.needs is not None else ()
        return sum({one.board: len(one.sheets) for one in reversed(needed) if one.sheets and not one.left_out}.values())

    @property
    def offer(self) -> Offer:
        """What ``release`` takes. Raises ValueError when the variant could not be built."""
        design, joined, needs = self.worked.design, self.worked.joined, self.worked.needs
        if not self.good or design is None or joined is None or needs is None:
            raise ValueError("what could not be built cannot be offered")
        packs = tuple((one.pack, one.proof) for one in self.packs)
        return Offer(design, needs, packs, self.outputs, joined.boards, self.worked.brief.inputs, joined.facts)


@record
class Released:
    """One design, released: ``bundle`` stands at ``folder``; None when a variant had an error. ``new``: not released before.

    ``others``: files that lie in the folder and are none of the release."""

    builds: tuple[Built, ...]
    bundle: Bundle | None = None
    folder: Path | None = None
    new: bool = False
    others: tuple[str, ...] = ()
