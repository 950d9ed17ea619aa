"""What is offered: the finished files of each variant, and from them the listing's figures, what was proved, the bundle."""

import json
from hashlib import sha256
from typing import Any

from publisher.basics import record
from publisher.brief import NOTHING_READ, Inputs
from publisher.design import Design
from publisher.joints import BoardRange, takes_words
from publisher.material import BoardNeeds
from publisher.pages import Pack, cautions_for, thing
from publisher.proof import Proof
from publisher.release.bundle import Bundle, make_bundle
from publisher.release.listing import Listing, SheetsToBuy, listing_text
from publisher.release.names import LIST, pack_name, pack_stem, record_name

LIST_FORMAT = 2  # of the list of packs; 1 was a list for each variant that did not name all files


@record
class Output:
    """A finished file: its path below the design's output folder, and its bytes."""

    path: str
    data: bytes


@record
class Offer:
    """One variant: its design, its board sheets, its packs with what proof says of each, all its files, and what they were made of."""

    design: Design
    needs: BoardNeeds
    packs: tuple[tuple[Pack, Proof], ...]
    outputs: tuple[Output, ...] = ()
    boards: tuple[BoardRange, ...] = ()
    inputs: Inputs = NOTHING_READ


def bundle_of(offers: tuple[Offer, ...]) -> Bundle:
    """Return the release of one design: the files of all its variants, what was proved, and the listing."""
    first = offers[0].design
    files = [(output.path, output.data) for offer in offers for output in offer.outputs]
    files.append((LIST, list_text(list_of(offers))))
    files.append(("proof.json", proof_record(offers)))
    files.append(("LISTING.md", listing_text(listing_of(offers)).encode("utf-8")))
    return make_bundle(first.slug, first.version, tuple(files))


def listing_of(offers: tuple[Offer, ...]) -> Listing:
    """Return what the listing says; tools, materials and cautions are those of the first variant (all share them)."""
    design = offers[0].design
    first = offers[0].packs[0][0]
    keys = (*design.tools, *(m.name for m in design.materials if m.name))
    return Listing(
        title=design.title,
        version=first.version,
        designer=first.designer,
        licence=first.licence,
        summary=first.summary,
        pages=tuple(
            (offer.design.variant_title, pack.paper.title, len(pack.pages))
            for offer in offers
            for pack, _ in offer.packs
        ),
        boards=tuple({(b.board, takes_words(b), b.thickness): b for offer in offers for b in offer.boards}.values()),
        sheets=tuple(
            SheetsToBuy(offer.design.variant_title, need.board, need.sheet.label, len(need.sheets))
            for offer in offers
            for need in offer.needs.yields
            if need.sheets
        ),
        tools=tuple(found.name for key in design.tools if (found := thing(key))),
        materials=tuple(found.name for m in design.materials if (found := thing(m.name))),
        cautions=tuple(f"{c.title}: {c.text}" for c in cautions_for(keys)),
    )


def proof_record(offers: tuple[Offer, ...]) -> bytes:
    """Return ``proof.json``: what was judged in each PDF, how many readings, and the largest difference that was read (mm)."""
    files = [
        {
            "pack": f"{pack.variant or 'standard'}, {pack.paper.name}",
            "judged": list(proof.judged),
            "readings": len(proof.measured),
            "largest_difference_mm": round(max((abs(m.found - m.promised) for m in proof.measured), default=0.0), 6),
        }
        for offer in offers
        for pack, proof in offer.packs
    ]
    return (json.dumps({"format": 1, "files": files}, indent=2, ensure_ascii=False) + "\n").encode("utf-8")


def list_of(offers: tuple[Offer, ...]) -> dict[str, Any]:
    """Return the list of a set: of what it was made, its packs, and every file that was made. No pack knows of the others."""
    first = offers[0]
    return {
        "format": LIST_FORMAT,
        "slug": first.design.slug,
        "version": first.design.version,
        "kind": "trial" if first.inputs.sets else "standard",
        "sets": [{"name": name, "value": value} for name, value in sorted(first.inputs.sets)],
        "inputs": [{"name": file.name, "sha256": file.sha256} for file in first.inputs.files],
        "versions": dict(first.inputs.versions),
        "packs": [_pack_entry(pack, {o.path: o for o in offer.outputs}) for offer in offers for pack, _ in offer.packs],
        "files": [
            {"path": output.path, "size": len(output.data), "sha256": sha256(output.data).hexdigest()}
            for output in sorted((o for offer in offers for o in offer.outputs), key=lambda o: o.path)
        ],
    }


def list_text(document: dict[str, Any]) -> bytes:
    """Return a list as it is written."""
    return (json.dumps(document, indent=2, ensure_ascii=False) + "\n").encode("utf-8")


def _pack_entry(pack: Pack, outputs: dict[str, Output]) -> dict[str, Any]:
    stem = pack_stem(pack.slug, pack.version, pack.variant)
    pdf = outputs[pack_name(stem, pack.paper.name)]
    return {
        "id": pack.id,
        "variant": pack.variant,
        "paper": pack.paper.name,
        "pages": len(pack.pages),
        "file": pdf.path,
        "size": len(pdf.data),
        "sha256": sha256(pdf.data).hexdigest(),
        "record": record_name(stem, pack.paper.name),
    }
