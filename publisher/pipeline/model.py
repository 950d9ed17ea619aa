"""What the pipeline hands on: a variant as far as it was worked out, made otherwise, or built."""

from pathlib import Path
from typing import Literal

from publisher.basics import FilePromises, Finding, Promises, errors, record
from publisher.brief import Brief
from publisher.design import Design
from publisher.geometry import Part
from publisher.joints import Joined
from publisher.material import BoardNeeds
from publisher.pages import Pack, coverings_of
from publisher.proof import FolderProof, Identity, LookedAt, Proof
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
class BuiltExtra:
    """A small file that is given beside the packs: its pages, the finished PDF, what proof says of it."""

    pack: Pack
    pdf: Output
    proof: Proof


@record
class Built:
    """One variant, built for all its papers. ``outputs`` are all its files; () when an error stopped it; ``beside``: what proof says of
    those beside the PDFs; ``extras``: what is given beside the packs, where that was asked for."""

    worked: Worked
    packs: tuple[BuiltPack, ...]
    outputs: tuple[Output, ...]
    findings: tuple[Finding, ...]
    beside: FolderProof = FolderProof()
    extras: tuple[BuiltExtra, ...] = ()

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
        extras = tuple((one.pack, one.proof) for one in self.extras)
        return Offer(
            design,
            needs,
            packs,
            self.outputs,
            joined.boards,
            self.worked.brief.inputs,
            joined.facts,
            self.beside,
            coverings_of(self.worked.pieces, needs.cut_list),
            extras,
        )


@record
class Released:
    """One design, released: ``bundle`` stands at ``folder``; None when a variant had an error. ``new``: not released before.

    ``others``: files that lie in the folder and are none of the release."""

    builds: tuple[Built, ...]
    bundle: Bundle | None = None
    folder: Path | None = None
    new: bool = False
    others: tuple[str, ...] = ()


@record
class Expected:
    """What a design promises of the files of a folder: of those beside its packs, of each PDF by path; and ``built``, the PDFs and cut
    files as they are built today, where that was asked for."""

    files: FilePromises
    promises: dict[str, Promises]
    built: dict[str, bytes]


@record
class ProvedPdf:
    """A PDF of a folder: truth, and identity where the design was at hand and it was to be built again."""

    proof: Proof
    identity: Identity | None = None

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All that was found in it."""
        return (*(self.identity.findings if self.identity else ()), *self.proof.findings)


@record
class ProvedFolder:
    """A set of packs, a release or its zip: each PDF, what was looked at beside them, and all that was found.

    ``by``: what the files beside the PDFs were held against: the design, or the records that the packs carry. ``as_built``: how many cut
    files and tables are byte by byte what the design builds today; None when it was not built again.
    """

    name: str
    pdfs: tuple[ProvedPdf, ...]
    looked: tuple[LookedAt, ...]
    findings: tuple[Finding, ...]
    by: Literal["design", "records"]
    as_built: int | None = None

    @property
    def proved(self) -> bool:
        """Whether every PDF was held against promises, and no error was found."""
        judged = bool(self.pdfs) and not any(one.proof.unjudged for one in self.pdfs)
        return judged and self.by == "design" and not errors(self.findings)
