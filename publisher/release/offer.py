"""What is offered: the finished files of each variant, and from them the listing's figures, what was proved, the bundle."""

import json
from hashlib import sha256

from publisher.basics import record
from publisher.design import Design
from publisher.joints import BoardRange, takes_words
from publisher.material import BoardNeeds
from publisher.pages import Pack, cautions_for, thing
from publisher.proof import Proof
from publisher.release.bundle import Bundle, make_bundle
from publisher.release.listing import Listing, SheetsToBuy, listing_text


@record
class Output:
    """A finished file: its path below the design's output folder, and its bytes."""

    path: str
    data: bytes


@record
class Offer:
    """One variant: its design, its board sheets, its packs with what proof says of each, and all its files, the list of packs last."""

    design: Design
    needs: BoardNeeds
    packs: tuple[tuple[Pack, Proof], ...]
    outputs: tuple[Output, ...] = ()
    boards: tuple[BoardRange, ...] = ()


def bundle_of(offers: tuple[Offer, ...]) -> Bundle:
    """Return the release of one design: the files of all its variants, what was proved, and the listing."""
    first = offers[0].design
    files = [(output.path, output.data) for offer in offers for output in offer.outputs]
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


def pack_list(packs: tuple[tuple[Pack, Output, Output], ...]) -> bytes:
    """Return the list of a variant's packs, each with its PDF and its record: no pack knows of the others."""
    first = packs[0][0]
    document = {
        "format": 1,
        "slug": first.slug,
        "version": first.version,
        "variant": first.variant,
        "kind": "trial" if first.trial else "standard",
        "packs": [
            {
                "id": pack.id,
                "paper": pack.paper.name,
                "pages": len(pack.pages),
                "file": pdf.path,
                "size": len(pdf.data),
                "sha256": sha256(pdf.data).hexdigest(),
                "record": record.path,
            }
            for pack, pdf, record in packs
        ],
    }
    return (json.dumps(document, indent=2, ensure_ascii=False) + "\n").encode("utf-8")
