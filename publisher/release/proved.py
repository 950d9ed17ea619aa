"""``proof.json``: what was looked at before files were put in place, by which reader, and how far the farthest lay off.

Its form is ``proof.schema.json``, its words are in ``docs/proof.md``.
"""

import json
from collections.abc import Iterable
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

from publisher.basics import Refusal, errors
from publisher.design import STANDARD
from publisher.pages import Pack
from publisher.proof import BESIDE_COVERS, COVERS, FolderProof, PageLooked, Proof, judge_lists

PROOF = "proof.json"
PROOF_FORMAT = 2  # 1 said of each PDF only what was judged, and the largest difference


@cache
def proof_schema() -> dict[str, Any]:
    """Return the JSON schema of ``proof.json``."""
    schema: dict[str, Any] = json.loads((Path(__file__).parent / "proof.schema.json").read_text(encoding="utf-8"))
    return schema


def proof_document(packs: list[dict[str, Any]], beside: list[dict[str, Any]]) -> dict[str, Any]:
    """Return the whole document, in an order that does not tell what was built first."""
    return {
        "format": PROOF_FORMAT,
        "covers": f"{COVERS} {BESIDE_COVERS}",
        "packs": sorted(packs, key=lambda one: str(one["file"])),
        "beside": sorted(beside, key=lambda one: str(one["variant"])),
    }


def proof_text(document: dict[str, Any]) -> bytes:
    """Return the document as it is written."""
    return (json.dumps(document, indent=1, ensure_ascii=False) + "\n").encode("utf-8")


def pack_entry(pack: Pack, proof: Proof, file: str, digest: str, pictures: int) -> dict[str, Any]:
    """Return what was looked at in one PDF: its checks, and page by page what was read and measured; how many ``pictures`` of it were
    compared with their pages."""
    return {
        "file": file,
        "sha256": digest,
        "variant": pack.variant or STANDARD,
        "paper": pack.paper.name,
        "judged": list(proof.judged),
        "readings": len(proof.measured),
        "largest_difference_mm": _mm(max((abs(m.found - m.promised) for m in proof.measured), default=0.0)),
        "pictures": pictures,
        "pages": [_page(page) for page in proof.pages],
    }


def beside_entry(variant: str, files: list[tuple[str, bytes]], proof: FolderProof) -> dict[str, Any]:
    """Return what was looked at in the cut files and the table of one variant."""
    return {
        "variant": variant or STANDARD,
        "files": [{"path": path, "sha256": sha256(data).hexdigest()} for path, data in sorted(files)],
        "looked_at": [{"what": one.what, "things": one.things} for one in proof.looked if one.things],
    }


def kept_entries(text: bytes | None, files: dict[str, str]) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    """Return the entries of an earlier ``proof.json`` about files that stay: ``files`` by path with their SHA-256. () of one that cannot be
    read: then nothing is said of these files."""
    try:
        document = json.loads(text or b"")
        if document["format"] != PROOF_FORMAT:
            return [], []
        packs = [one for one in document["packs"] if files.get(one["file"]) == one["sha256"]]
        beside = [
            one for one in document["beside"] if all(files.get(file["path"]) == file["sha256"] for file in one["files"])
        ]
    except (ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return [], []
    return packs, beside


def refuse_unlisted(files: Iterable[tuple[str, bytes]], folder: Path) -> None:
    """Raise Refusal when files that are to be put in place are not those that their own lists name."""
    found = errors(judge_lists(dict(files), str(folder)).findings)
    if found:
        raise Refusal(*found)


def _page(page: PageLooked) -> dict[str, Any]:
    return {
        "page": page.page,
        "looked_at": [
            {"what": one.what, "reader": one.reader, "things": one.things}
            | ({} if one.largest is None else {"largest_difference_mm": _mm(one.largest)})
            for one in page.looked
            if one.things
        ],
    }


def _mm(value: float) -> float:
    """Return a length to 0.00001 mm: finer is the noise of floating point, which other machines round otherwise."""
    return round(value, 5)
