"""Room 10: proved files in, a versioned bundle out.

Comes in: finished, proved files as bytes, and what a listing must say. Goes out: a folder put in place by one rename, with manifest,
listing text and zip. Never: changes a byte that it packs, overwrites a version with other content.
"""

from publisher.basics import Rule
from publisher.release.bundle import VERSION_EXISTS, Bundle, make_bundle, place_bundle
from publisher.release.listing import Listing, SheetsToBuy, listing_text
from publisher.release.offer import Offer, listing_of, proof_record
from publisher.release.placing import CANNOT_WRITE, cannot_write, put_in_place

RULES: tuple[Rule, ...] = (VERSION_EXISTS, CANNOT_WRITE)

__all__ = [
    "RULES",
    "Bundle",
    "Listing",
    "Offer",
    "SheetsToBuy",
    "cannot_write",
    "listing_of",
    "listing_text",
    "make_bundle",
    "place_bundle",
    "proof_record",
    "put_in_place",
]
