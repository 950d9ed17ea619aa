"""The store of layouts: written, read again, never trusted."""

import json
from dataclasses import replace

import pytest

from publisher.material import lay_out, layouts_document
from publisher.material import strip_rounds as improving
from publisher.material.store import parse


@pytest.fixture(scope="module")
def made(shop):
    """A design, its parts, what was laid out, and the store of it."""
    design = shop.design(shop.board((297.0, 420.0)))
    parts = (
        shop.part("step", shop.wedge(92.0), 5),
        shop.part("bar", (shop.box(60.0, 20.0),), 3, mirrored=1),
    )
    needs = lay_out(design, parts)
    return design, parts, needs, layouts_document((needs,))


def test_a_stored_layout_is_used_as_it_is(shop, made) -> None:
    """With the store nothing is packed, and everything comes out the same."""
    design, parts, needs, document = made
    again = lay_out(shop.with_store(design, document), parts)
    assert [y.fresh for y in needs.yields] == [3]
    assert [y.fresh for y in again.yields] == [0]
    assert again.findings == ()
    assert needs.findings == ()  # a design that keeps no layouts is told nothing
    assert [replace(y, fresh=0) for y in again.yields] == [replace(y, fresh=0) for y in needs.yields]
    assert layouts_document((again,)) == document


def test_a_layout_keeps_the_versions_that_it_was_made_with(shop, made) -> None:
    """Whoever verifies it later with other versions did not make it."""
    design, parts, needs, _ = made
    first = lay_out(design, parts, versions=(("publisher", "1.0"), ("pillow", "9"), ("shapely", "2.1")))
    assert {sheet.made_with for y in first.yields for sheet in y.sheets} == {"publisher 1.0, shapely 2.1"}
    kept = layouts_document((first,))
    again = lay_out(shop.with_store(design, kept), parts, versions=(("publisher", "2.0"),))
    assert layouts_document((again,)) == kept
    assert "made_with" not in layouts_document((needs,)).decode()  # not known: nothing is claimed


@pytest.mark.keeps("material/stored-layout-wrong", "material/store-unreadable", "material/layouts-stale")
def test_the_store_is_readable_json_in_order(made) -> None:
    """Format, note, keys of 64 hex digits in order."""
    document = json.loads(made[3])
    assert document["format"] == 1
    assert list(document["layouts"]) == sorted(document["layouts"])
    assert all(len(key) == 64 for key in document["layouts"])
    assert made[3].endswith(b"}\n")


def test_earlier_entries_are_kept(shop, made) -> None:
    """Another variant's layouts stay in the store."""
    design, _, _, document = made
    other = (shop.part("bar", (shop.box(61.0, 20.0),), 3),)
    both = layouts_document((lay_out(design, other),), document)
    assert set(json.loads(document)["layouts"]) < set(json.loads(both)["layouts"])
    assert layouts_document((lay_out(shop.with_store(design, both), other),), both) == both


@pytest.mark.breaks("material/layouts-stale")
def test_a_changed_outline_makes_its_entries_stale(shop, made) -> None:
    """Without any complaint they are simply not found; the other part's own layout still is."""
    design, parts, _, document = made
    changed = (shop.part("step", shop.wedge(93.0), 5), parts[1])
    again = lay_out(shop.with_store(design, document), changed)
    assert [y.fresh for y in again.yields] == [2]
    assert [(f.check, f.value) for f in again.findings] == [("material/layouts-stale", 2)]
    assert lay_out(shop.with_store(design, document), changed, trial=True).findings == ()


def tampered(document, change):
    """Change the rows of every entry."""
    loaded = json.loads(document)
    for entry in loaded["layouts"].values():
        change(entry)
    return json.dumps(loaded).encode()


def nudge(entry):
    entry["sheets"][0][0][1] += 40.0


def drop(entry):
    entry["sheets"].append([])


def rename(entry):
    entry["sheets"][0][0][0] = "stranger"


def heap(entry):
    entry["sheets"][0].append(entry["sheets"][0][0])


@pytest.mark.breaks("material/stored-layout-wrong")
@pytest.mark.parametrize("change", [nudge, drop, rename, heap])
def test_an_edited_layout_is_found_and_made_anew(shop, made, change) -> None:
    """Moved, emptied, renamed or heaped: each entry is a finding, and the result is as good as without the store."""
    design, parts, needs, document = made
    again = lay_out(shop.with_store(design, tampered(document, change)), parts)
    assert {f.check for f in again.findings} == {"material/stored-layout-wrong"}
    assert all("does not hold" in f.message and f.hint for f in again.findings)
    assert again.yields[0].fresh == len(again.findings)
    assert [r.careful for r in again.yields[0].rows] == [r.careful for r in needs.yields[0].rows]


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"\xff\xfe",
        b"[]",
        b'{"format": 2, "layouts": {}}',
        b'{"format": 1}',
        b'{"format": 1, "layouts": []}',
        b"[" * 100_000,
    ],
)
@pytest.mark.breaks("material/store-unreadable")
def test_a_store_that_cannot_be_read(shop, made, data) -> None:
    """One finding about the file; everything is worked out anew."""
    design, parts, needs, _ = made
    again = lay_out(shop.with_store(design, data), parts)
    assert [f.check for f in again.findings] == ["material/store-unreadable"]
    assert again.yields == needs.yields


@pytest.mark.parametrize(
    "entry",
    [
        [],
        {"engine": "rows", "seed": 0},
        {"engine": 3, "seed": 0, "sheets": []},
        {"engine": "rows", "seed": 0, "sheets": [[["p", 0, 0, 0]]]},
        {"engine": "rows", "seed": 0, "sheets": [[["p", "0", 0, 0, False]]]},
        {"engine": "rows", "seed": 0, "sheets": [[["p", 0, True, 0, False]]]},
        {"engine": "rows", "seed": 0, "sheets": [[[7, 0, 0, 0, False]]]},
        {"engine": "rows", "seed": 0, "sheets": 5},
    ],
)
def test_an_entry_of_another_form(entry) -> None:
    """It is left out with a finding; the good entry beside it is kept."""
    good = {"engine": "rows", "seed": 0, "sheets": [[["p", 0, 0.5, 90, False]]]}
    store = parse(json.dumps({"format": 1, "layouts": {"bad": entry, "good": good}}).encode(), "layouts.json")
    assert [key for key, _ in store.entries] == ["good"]
    assert [f.check for f in store.findings] == ["material/stored-layout-wrong"]
    assert store.get("good") is not None
    assert store.get("bad") is None


def test_infinite_numbers_do_not_pass(shop, made) -> None:
    """JSON of other makers may hold Infinity: the judge calls it nowhere."""
    design, parts, _, document = made
    wild = tampered(document, lambda entry: entry["sheets"][0][0].__setitem__(1, float("inf")))
    again = lay_out(shop.with_store(design, wild), parts)
    assert {f.check for f in again.findings} == {"material/stored-layout-wrong"}


@pytest.mark.keeps("material/stored-layout-wrong", "material/store-unreadable")
def test_more_effort_never_lowers(shop, made, monkeypatch) -> None:
    """A store that holds more than a search finds is kept: here the search is made to find nothing better."""
    monkeypatch.setattr(improving, "one_sheet", lambda *_: ())
    design, parts, needs, document = made
    again = lay_out(shop.with_store(design, document), parts, "careful")
    for before, after in zip(needs.yields[0].rows, again.yields[0].rows, strict=True):
        assert after.careful >= before.careful
    assert len(again.yields[0].sheets) <= len(needs.yields[0].sheets)
