"""What is offered: the finished files of each variant, and from them the listing's figures, what was proved, the bundle."""

import json
from collections.abc import Iterator
from hashlib import sha256
from math import inf
from typing import Any

from publisher.basics import FileKind, record
from publisher.brief import NOTHING_READ, Inputs
from publisher.design import Design, Fact, OwnLicence, own_licence
from publisher.joints import BoardRange
from publisher.material import BoardNeeds
from publisher.pages import (
    Covering,
    Pack,
    cautions_for,
    covering_words,
    language_titles,
    materials_to_buy,
    papers,
    said_for,
    tools_to_buy,
)
from publisher.proof import FolderProof, Proof
from publisher.release.bundle import Bundle, make_bundle
from publisher.release.listing import FinishedSize, Listing, SheetsToBuy, Variant, listing_text, sheet_words
from publisher.release.names import (
    LIST,
    cut_folder,
    given_name,
    pack_name,
    pack_stem,
    preview_folder,
    record_name,
    shop_pictures,
)
from publisher.release.proved import PROOF, beside_entry, pack_entry, proof_document, proof_text

LICENCE = "LICENCE.txt"
EXTRA_WORDS: dict[FileKind, str] = {
    "test_page": "free test page, {}: try your printer and your board before you buy",
    "phone": "phone copy of the instructions, for {}: to read beside your work, not to print",
    "shop": "",
}
LIST_FORMAT = 2  # of the list of packs; 1 was a list for each variant that did not name all files


@record
class Output:
    """A finished file: its path below the design's output folder, and its bytes."""

    path: str
    data: bytes


@record
class Offer:
    """One variant: its design, its board sheets, its packs with what proof says of each, all its files, what they were made of, what
    proof says of the files ``beside`` the packs, and what ``covers`` its bent pieces; ``extras``: what is given beside the packs, with what
    proof says of it."""

    design: Design
    needs: BoardNeeds
    packs: tuple[tuple[Pack, Proof], ...]
    outputs: tuple[Output, ...] = ()
    boards: tuple[BoardRange, ...] = ()
    inputs: Inputs = NOTHING_READ
    facts: tuple[Fact, ...] = ()
    beside: FolderProof = FolderProof()
    covers: tuple[Covering, ...] = ()
    extras: tuple[tuple[Pack, Proof], ...] = ()


def bundle_of(offers: tuple[Offer, ...]) -> Bundle:
    """Return the release of one design: the files of all its variants, what was proved, and the listing."""
    first = offers[0].design
    files = [(output.path, output.data) for offer in offers for output in offer.outputs]
    files.append((LIST, list_text(list_of(offers))))
    files.append((PROOF, proof_text(proof_of(offers))))
    files.append(("LISTING.md", listing_text(listing_of(offers)).encode("utf-8")))
    licence = own_licence(first.licence, first.designer)
    for design in {offer.design.language: offer.design for offer in reversed(offers)}.values():
        if licence is not None:
            files.append((licence_name(design, first), licence_text(licence, design)))
    return make_bundle(first.slug, first.version, tuple(files))


def licence_name(design: Design, first: Design) -> str:
    """Return the name of the licence beside packs in a design's language: ``LICENCE.txt`` for the first one, ``LICENCE-de.txt``."""
    return LICENCE if design.language == first.language else LICENCE.replace(".", f"-{design.language}.")


def licence_text(licence: OwnLicence, design: Design) -> bytes:
    """Return ``LICENCE.txt``: what the pack prints of a licence of ours, in the design's language."""
    version = said_for(design, (f"version {design.version}",))[0]
    lines = [f"{design.title}, {version}", *said_for(design, (licence.title, *licence.text))]
    return ("\n\n".join(lines) + "\n").encode("utf-8")


def listing_of(offers: tuple[Offer, ...]) -> Listing:
    """Return what the listing says; tools and cautions are those of the first variant (all share them)."""
    design = offers[0].design
    first = offers[0].packs[0][0]
    keys = (*design.tools, *(m.name for m in design.materials if m.name))
    return Listing(
        title=design.title,
        version=first.version,
        designer=first.designer,
        licence=first.licence,
        summary=first.summary,
        variants=tuple(_variant_of(offer, design.language) for offer in offers),
        tools=tools_to_buy(design),
        cautions=tuple(f"{c.title}: {c.text}" for c in cautions_for(keys)),
    )


def _variant_of(offer: Offer, first: str) -> Variant:
    """Return what a variant's entry says; one in another language than the ``first`` is called by it too."""
    language = "" if offer.design.language == first else dict(language_titles()).get(offer.design.language, "")
    known = tuple((paper.name.upper(), paper.width, paper.height) for paper in papers() if len(paper.name) == 2)
    return Variant(
        title=", ".join(filter(None, (offer.design.variant_title, language))),
        pages=tuple((pack.paper.title, len(pack.pages)) for pack, _ in offer.packs),
        extras=tuple(
            (EXTRA_WORDS[pack.purpose].format(pack.paper.title), len(pack.pages))
            for pack, _ in offer.extras
            if EXTRA_WORDS[pack.purpose]  # pictures for a shop are no buyer's
        ),
        sizes=_finished(offer),
        parts=len(offer.needs.cut_list),
        pieces=sum(row.count + row.spare for row in offer.needs.cut_list),
        spare=sum(row.spare for row in offer.needs.cut_list),
        boards=_boards(offer),
        sheets=tuple(
            SheetsToBuy(
                need.board, sheet_words(need.sheet.label, need.sheet.width, need.sheet.height, known), len(need.sheets)
            )
            for need in offer.needs.yields
            if need.sheets and not need.left_out
        ),
        materials=(*materials_to_buy(offer.design, offer.facts), *covering_words(offer.covers)),
    )


def _boards(offer: Offer) -> tuple[BoardRange, ...]:
    """Return every board that parts are cut from; one that meets nothing may have any thickness."""
    known = {one.board: one for one in offer.boards}
    used = {row.board for row in offer.needs.cut_list}
    return tuple(
        known.get(board.id) or BoardRange(board.id, board.sold_as, board.shop, board.thickness, board.spread, 0.0, inf)
        for board in offer.design.boards
        if board.id in used
    )


def _finished(offer: Offer) -> tuple[FinishedSize, ...]:
    """Return how large the finished pieces are: what things make up a whole are not told again by themselves."""
    design, facts = offer.design, {fact.name: fact.value for fact in offer.facts}
    inside = {thing.assembly for whole in design.wholes for thing in whole.things}
    names = dict.fromkeys(name.split(".")[0] for name in facts if name.endswith(".depth"))
    sizes = {name: [facts.get(f"{name}.{way}") for way in ("width", "depth", "height")] for name in names}
    return tuple(
        FinishedSize(name.replace("_", " "), *(way for way in ways if way is not None))
        for name, ways in sizes.items()
        if name not in inside and None not in ways
    )


def proof_of(offers: tuple[Offer, ...]) -> dict[str, Any]:
    """Return what was looked at in the files of all variants, as ``proof.json`` says it."""
    return proof_document([entry for offer in offers for entry in _proved(offer)], [_beside(offer) for offer in offers])


def _proved(offer: Offer) -> Iterator[dict[str, Any]]:
    for pack, proof in offer.packs:
        entry = _pack_entry(offer, pack)
        pictures = f"{preview_folder(pack.variant, pack.paper.name)}/"
        seen = sum(output.path.startswith(pictures) for output in offer.outputs)
        yield pack_entry(pack, proof, entry["file"], entry["sha256"], seen)
    for pack, proof in offer.extras:
        entry = _extra_entry(offer, pack)
        yield pack_entry(pack, proof, entry["file"], entry["sha256"], len(shop_pictures(pack)))


def _beside(offer: Offer) -> dict[str, Any]:
    folder = f"{cut_folder(offer.design.variant)}/"
    files = [(output.path, output.data) for output in offer.outputs if output.path.startswith(folder)]
    return beside_entry(offer.design.variant, files, offer.beside)


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
        "packs": [_pack_entry(offer, pack) for offer in offers for pack, _ in offer.packs],
        "extras": [_extra_entry(offer, pack) for offer in offers for pack, _ in offer.extras],
        "files": [
            {"path": output.path, "size": len(output.data), "sha256": sha256(output.data).hexdigest()}
            for output in sorted((o for offer in offers for o in offer.outputs), key=lambda o: o.path)
        ],
    }


def list_text(document: dict[str, Any]) -> bytes:
    """Return a list as it is written."""
    return (json.dumps(document, indent=2, ensure_ascii=False) + "\n").encode("utf-8")


def _pack_entry(offer: Offer, pack: Pack) -> dict[str, Any]:
    stem = pack_stem(offer.design, offer.inputs.sets)
    entry = _entry(offer, pack, pack_name(stem, pack.paper.name))
    return {**entry, "record": record_name(stem, pack.paper.name)}


def _extra_entry(offer: Offer, pack: Pack) -> dict[str, Any]:
    stem = pack_stem(offer.design, offer.inputs.sets)
    pictures = shop_pictures(pack)
    shown = {"pictures": list(pictures)} if pictures else {}
    return {"kind": pack.purpose, **_entry(offer, pack, given_name(pack, stem)), **shown}


def _entry(offer: Offer, pack: Pack, path: str) -> dict[str, Any]:
    """Return what a list says of a PDF."""
    pdf = next(output for output in offer.outputs if output.path == path)
    return {
        "id": pack.id,
        "variant": pack.variant,
        "paper": pack.paper.name,
        "pages": len(pack.pages),
        "file": pdf.path,
        "size": len(pdf.data),
        "sha256": sha256(pdf.data).hexdigest(),
    }
