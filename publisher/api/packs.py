"""Finished files: built, proved, put in place, released."""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterable
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from publisher.basics import Promises
    from publisher.batch import BuildOutcome, OwnFault
    from publisher.brief import Brief
    from publisher.pipeline import Built, ProvedFolder, Released
    from publisher.proof import Identity, Proof
    from publisher.release import Bundle, Offer, PlacedSet


def build(brief: Brief, variant: str = "", previews: bool = True, offered: bool = False) -> Built:
    """Build one variant for all papers of the inputs, in memory, and prove every PDF: a pure function of the inputs. ``offered``: what is
    given beside the packs too, as a release has it.

    Raises Refusal for an unknown paper.
    """
    from publisher import pipeline

    return pipeline.build(brief, variant, previews, offered)


def build_many(
    wanted: Iterable[tuple[Brief, str]], workers: int = 1, offered: bool = False
) -> Generator[BuildOutcome, None, None]:
    """Build many, (brief, variant), and yield the outcome of each in their order: what stops one does not stop the others. Its pages
    come without what is drawn on them, which ``compose`` gives. ``offered`` as with ``build``.

    ``workers``: processes that share the work; with more than one, a program of its own starts it under ``if __name__ ==
    "__main__"``. To be closed (``contextlib.closing``) by whoever leaves it early: that ends its processes.
    """
    from publisher import batch

    return batch.build_many(wanted, workers, offered)


def fault_of(error: Exception) -> OwnFault:
    """Return what is said of an error of this program, and where it was."""
    from publisher.batch import fault_of

    return fault_of(error)


def place(builds: Built | tuple[Built, ...], packs: Path) -> PlacedSet:
    """Put the files of one design's good builds into ``packs/<slug>``, as one set with one list, all or none, however the run ends.

    Packs of other variants and papers stay when they were made of the same files by the same program; else they are removed:
    ``removed`` says which and why. What was built with other sizes goes into a folder of its own and replaces nothing.
    Raises Refusal, with nothing changed, when something cannot be written; ValueError when a build has errors.
    """
    from publisher.release import place_packs

    return place_packs(_offers(builds), packs)


def is_placed(builds: Built | tuple[Built, ...], packs: Path) -> bool:
    """Look whether all files of good builds stand in ``packs``. Raises Refusal as ``settle`` does."""
    from publisher.release import is_placed

    return is_placed(_offers(builds), packs)


def discard_trials(slug: str, packs: Path) -> tuple[PlacedSet, ...]:
    """Remove what was built of a design with other sizes: of each trial the files that its list names and that are as they were made.

    Raises Refusal, with nothing changed in that trial, when something cannot be removed.
    """
    from publisher.release import discard_trials

    return discard_trials(slug, packs)


def settle(folder: Path) -> None:
    """Finish, or take back, what a run that was killed left unfinished in a folder of packs or releases; elsewhere do nothing.

    Raises Refusal when it cannot be done, or when that run is alive and does not end.
    """
    try:
        left = any(folder.glob(".publisher-*"))
    except OSError:  # a name that no disk can hold: nothing can be left there
        return
    if left:
        from publisher.release import settle

        settle(folder)


def release(brief: Brief, releases: Path, told: Callable[[Bundle], None] | None = None) -> Released:
    """Build all variants and papers, and put the version in place below ``releases`` at once, unless one has an error.

    ``told`` hears of the bundle before it is put in place. Raises Refusal when the version was released before with other
    content, when the copy there is damaged, when it cannot be written, or for a trial: a brief that sets sizes.
    """
    from publisher import pipeline

    return pipeline.release(brief, releases, told)


def is_released(bundle: Bundle, releases: Path) -> bool:
    """Look whether a bundle stands below ``releases``, whole. Raises Refusal as ``settle`` does."""
    from publisher.release import is_released

    return is_released(bundle, releases)


def promised(brief: Brief, pdf_name: str) -> Promises | None:
    """Return what a design promises of the file of this name; None when it promises no such file.

    Raises Refusal when the design has errors, or for an unknown paper.
    """
    from publisher.pipeline import promised_by

    pack = promised_by(brief, pdf_name)
    return None if pack is None else pack.promises


def rebuilt(brief: Brief, pdf_name: str) -> tuple[Promises, bytes] | None:
    """Return what a design promises of the file of this name, and the PDF that it builds today; else as ``promised``."""
    from publisher.pipeline import rebuilt_by

    made = rebuilt_by(brief, pdf_name)
    return None if made is None else (made[0].promises, made[1])


def identify(pdf: bytes, built: bytes, name: str) -> Identity:
    """Compare a PDF with the one that its design builds today: by bytes, else by what each page draws and by its pixels."""
    from publisher import proof

    return proof.identify(pdf, built, name)


def prove(pdf: bytes, name: str, promises: Promises | None = None) -> Proof:
    """Read a finished PDF as a stranger would and judge it; without promises its print scale cannot be judged."""
    from publisher import proof

    return proof.prove(pdf, promises, name)


def contents(path: Path) -> dict[str, bytes]:
    """Return all files of a set of packs, of a release or of its zip, by their paths below it. What file browsers left is passed over.

    Raises Refusal when it cannot be read, or is none.
    """
    from publisher.release import contents_of

    return dict(contents_of(path).files)


def prove_files(name: str, files: dict[str, bytes], brief: Brief | None = None, truth: bool = False) -> ProvedFolder:
    """Judge all files of a set of packs or a release: its PDFs, cut files, tables, pictures of pages and lists.

    With the ``brief`` they are held against what the design promises and, unless ``truth`` alone is asked, against what it builds
    today; without it against the records that the packs carry. Raises Refusal when the design has errors, or for an unknown paper.
    """
    from publisher.pipeline import prove_files

    return prove_files(name, files, brief, not truth)


def covers(folder: bool = False, design: bool = True) -> str:
    """Return in words what “proved” covers, of a PDF or a whole ``folder``, with the ``design`` at hand or without it."""
    from publisher import proof

    if folder:
        return f"{proof.COVERS} {proof.BESIDE_COVERS}" if design else f"{proof.ALONE_COVERS} {proof.BY_RECORD_COVERS}"
    return proof.COVERS if design else proof.ALONE_COVERS


def _offers(builds: Built | tuple[Built, ...]) -> tuple[Offer, ...]:
    return tuple(built.offer for built in (builds if isinstance(builds, tuple) else (builds,)))
