"""Room 10: proved files in, a versioned bundle out.

Comes in: finished, proved files as bytes, and what a listing must say. Goes out: a design's packs in their folder with one list, or a
version in a folder of its own with manifest, listing text and zip; all of it or nothing, however a run ends. Never: changes a byte that
it packs, overwrites a version with other content, removes what it did not make.
"""

from publisher.basics import Rule
from publisher.release.bundle import (
    DAMAGED,
    TRIAL_RELEASED,
    VERSION_EXISTS,
    Bundle,
    Release,
    is_released,
    make_bundle,
    place_bundle,
    refuse_trial,
)
from publisher.release.contents import NOT_AN_OUTPUT, Contents, contents_of
from publisher.release.listing import FinishedSize, Listing, SheetsToBuy, Variant, listing_text
from publisher.release.lock import BUSY
from publisher.release.names import (
    EXTRAS,
    NAME_TAKEN,
    board_name,
    extra_name,
    extra_paper_of,
    given_name,
    name_findings,
    pack_name,
    pack_stem,
    paper_of,
    part_name,
    preview_name,
    record_name,
    sheet_name,
    shop_paper_of,
    shop_pictures,
    trial_name,
    yield_name,
)
from publisher.release.offer import Offer, Output, bundle_of, list_of, listing_of, proof_of
from publisher.release.packs import Left, PlacedSet, discard_trials, is_placed, place_packs, set_folder
from publisher.release.placing import CANNOT_WRITE, held, place, put_in_place, settle
from publisher.release.proved import PROOF, proof_schema

RULES: tuple[Rule, ...] = (BUSY, CANNOT_WRITE, DAMAGED, NAME_TAKEN, NOT_AN_OUTPUT, TRIAL_RELEASED, VERSION_EXISTS)

__all__ = [
    "EXTRAS",
    "PROOF",
    "RULES",
    "Bundle",
    "Contents",
    "FinishedSize",
    "Left",
    "Listing",
    "Offer",
    "Output",
    "PlacedSet",
    "Release",
    "SheetsToBuy",
    "Variant",
    "board_name",
    "bundle_of",
    "contents_of",
    "discard_trials",
    "extra_name",
    "extra_paper_of",
    "given_name",
    "held",
    "is_placed",
    "is_released",
    "list_of",
    "listing_of",
    "listing_text",
    "make_bundle",
    "name_findings",
    "pack_name",
    "pack_stem",
    "paper_of",
    "part_name",
    "place",
    "place_bundle",
    "place_packs",
    "preview_name",
    "proof_of",
    "proof_schema",
    "put_in_place",
    "record_name",
    "refuse_trial",
    "set_folder",
    "settle",
    "sheet_name",
    "shop_paper_of",
    "shop_pictures",
    "trial_name",
    "yield_name",
]
