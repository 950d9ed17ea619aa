"""A buyer feeds few pages: those that must print true, and whole packs, stay within what each demo is known to need."""

import json
from pathlib import Path

import pytest

MUST_PRINT_TRUE = ("print_check", "templates", "tiles")
MOST_TRUE = {"bridge": 5, "island": 5, "lock-stair": 2, "quay": 5, "toll-house": 3}
"""Pages of A4 that must print true, of a demo as it is written; its wide bases take the stair one more. On Letter it may be one more."""

WIDE_BASES = 3

MOST_PAGES = {
    ("bridge", ""): (15, 16),
    ("island", ""): (14, 14),
    ("island", "hollow"): (15, 16),
    ("lock-stair", ""): (11, 11),
    ("lock-stair", "wide_bases"): (11, 12),
    ("quay", ""): (13, 13),
    ("toll-house", ""): (12, 12),
    ("toll-house", "de"): (12, 16),
}
"""Pages of whole packs, A4 and Letter: with more, something takes room that it did not need before."""


def kinds_of(pack: Path) -> list[str]:
    """Return the kind of each page that a pack's record lists."""
    record = json.loads(pack.with_suffix(".json").read_text(encoding="utf-8"))
    return [page["kind"] for page in record["pages"]]


@pytest.mark.parametrize("slug", sorted(MOST_TRUE))
def test_no_pack_has_more_pages_than_it_needs(slug: str, packs: Path) -> None:
    listed = json.loads((packs / slug / "packs.json").read_text(encoding="utf-8"))["packs"]
    assert {(slug, one["variant"]) for one in listed} == {key for key in MOST_PAGES if key[0] == slug}
    for one in listed:
        kinds, letter = kinds_of(packs / slug / one["file"]), one["paper"] == "letter"
        most = WIDE_BASES if one["variant"] == "wide_bases" else MOST_TRUE[slug]
        assert sum(kind in MUST_PRINT_TRUE for kind in kinds) <= most + letter, one["file"]
        assert kinds.count("print_check") == 1 or one["variant"] == "de", one["file"]
        assert len(kinds) <= MOST_PAGES[slug, one["variant"]][letter], one["file"]
