"""Room 10: proved files in, a versioned bundle out.

Comes in: finished, proved files as bytes, and what a listing must say. Goes out: a folder put in place by one rename, with manifest,
listing text and zip. Never: changes a byte that it packs, overwrites a version with other content.
"""

from publisher.basics import Rule
from publisher.release.bundle import VERSION_EXISTS, Bundle, make_bundle, place_bundle
from publisher.release.listing import Listing, SheetsToBuy, listing_text
from publisher.release.names import (
    list_name,
    pack_name,
    pack_stem,
    paper_of,
    part_name,
    preview_name,
    record_name,
    sheet_name,
    yield_name,
)
from publisher.release.offer import Offer, Output, bundle_of, listing_of, pack_list, proof_record
from publisher.release.packs import place_packs
from publisher.release.placing import CANNOT_WRITE, put_in_place

RULES: tuple[Rule, ...] = (VERSION_EXISTS, CANNOT_WRITE)

__all__ = [
    "RULES",
    "Bundle",
    "Listing",
    "Offer",
    "Output",
    "SheetsToBuy",
    "bundle_of",
    "list_name",
    "listing_of",
    "listing_text",
    "make_bundle",
    "pack_list",
    "pack_name",
    "pack_stem",
    "paper_of",
    "part_name",
    "place_bundle",
    "place_packs",
    "preview_name",
    "proof_record",
    "put_in_place",
    "record_name",
    "sheet_name",
    "yield_name",
]
