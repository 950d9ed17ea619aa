"""Checks of what lies beside a PDF: its record, and the pictures of its pages."""

from collections.abc import Iterator
from hashlib import sha256
from io import BytesIO

import numpy as np

from publisher.basics import Check, Findings, PackFiles, errors
from publisher.proof.folder.case import FolderCase, few, judged_files
from publisher.proof.identity import OTHER_DOT
from publisher.proof.measuring import MOST_PIXELS, page_dots
from publisher.proof.reading import Array

OTHERS = 0.0005  # share of dots that may differ by more than
OTHER_RIM = 24  # of 255


@judged_files(
    "proof/record-attached",
    "The record beside a pack is the one that it carries",
    "whoever measures a print by a record of another build judges it by wrong sizes",
)
def record_attached(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Compare the record's hash with those of the files attached to the PDF."""
    looked = 0
    for pack in folder.expected.packs:
        if pack.pdf in folder.proofs and pack.record in folder.files:
            looked += 1
            if sha256(folder.files[pack.record]).hexdigest() not in folder.proofs[pack.pdf].attached:
                said = [f"is not the record that {pack.pdf} carries"]
                yield from few(check, pack.record, said, "build the design again, and keep PDF and record together")
    return looked


@judged_files(
    "proof/preview",
    "The pictures of pages show the pages",
    "a shop shows these pictures: each is drawn from the page of the finished file that bears its number",
)
def previews(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Draw each page anew, as large as its picture, and compare the dots."""
    looked = 0
    for pack in folder.expected.packs:
        proof = folder.proofs.get(pack.pdf)
        if proof is not None and not errors(proof.findings) and pack.pictures:  # else its pages are wrong themselves
            there = tuple(folder.files.get(name) for name in pack.pictures)
            looked += sum(picture is not None for picture in there)
            for name, said in _unlike(pack, folder.files[pack.pdf], there):
                yield from few(check, name, [said], "build the design again, and take its pictures")
    return looked


def _unlike(pack: PackFiles, pdf: bytes, pictures: tuple[bytes | None, ...]) -> Iterator[tuple[str, str]]:
    seen = [None if picture is None else _dots(picture) for picture in pictures]
    sizes = tuple((0, 0) if dots is None else (dots.shape[1], dots.shape[0]) for dots in seen)
    drawn = page_dots(pdf, sizes)
    if drawn is None or len(drawn) != len(pictures):
        yield (
            pack.pdf,
            f"has {0 if drawn is None else len(drawn)} pages that can be drawn, and {len(pictures)} pictures",
        )
        return
    for name, picture, dots, page in zip(pack.pictures, pictures, seen, drawn, strict=True):
        if picture is None:
            continue
        if dots is None:
            yield name, "is no picture that can be read"
        elif page is None:
            yield name, "has not the shape of its page"
        elif not np.array_equal(dots, page) and _other(dots, page):
            yield name, f"does not show its page of {pack.pdf}"


def _other(dots: Array, page: Array) -> bool:
    away = np.abs(dots.astype(np.int16) - page.astype(np.int16))
    return bool(away.max() > OTHER_DOT or (away > OTHER_RIM).mean() > OTHERS)


def _dots(picture: bytes) -> Array | None:
    """Return the greys of a PNG (rows, columns) in bytes; None when it is none, or too large."""
    from PIL import Image

    try:
        with Image.open(BytesIO(picture), formats=("PNG",)) as image:
            if image.width * image.height > MOST_PIXELS:
                return None
            return np.asarray(image.convert("L"))
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        return None
