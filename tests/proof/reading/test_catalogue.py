"""What stands in the catalogue beside the pages, read from objects made by hand."""

from hashlib import sha256
from typing import Any

import pytest
from pypdf.generic import (
    ArrayObject,
    DecodedStreamObject,
    DictionaryObject,
    IndirectObject,
    NameObject,
    NumberObject,
    PdfObject,
    TextStringObject,
)

from publisher.proof.reading.catalogue import attachments, bookmarks, page_labels, print_wishes
from publisher.proof.reading.objects import Spent


def pdf(value: Any) -> Any:
    """A PDF object from a plain one; words with a slash are names."""
    if isinstance(value, PdfObject):
        return value
    if isinstance(value, dict):
        return DictionaryObject({NameObject(k): pdf(v) for k, v in value.items()})
    if isinstance(value, list):
        return ArrayObject(pdf(v) for v in value)
    if isinstance(value, int):
        return NumberObject(value)
    if isinstance(value, str):
        return NameObject(value) if value.startswith("/") else TextStringObject(value)
    raise TypeError(value)


def labels(count: int, *nums: Any) -> tuple[str, ...]:
    return page_labels(pdf({"/PageLabels": {"/Nums": list(nums)}}), count)


@pytest.mark.parametrize(
    ("entry", "expected"),
    [
        ({"/S": "/D"}, ("1", "2", "3")),
        ({"/S": "/D", "/St": 8, "/P": "A-"}, ("A-8", "A-9", "A-10")),
        ({"/S": "/r", "/St": 3}, ("iii", "iv", "v")),
        ({"/S": "/R", "/St": 1988}, ("MCMLXXXVIII", "MCMLXXXIX", "MCMXC")),
        ({"/S": "/a", "/St": 26}, ("z", "aa", "bb")),
        ({"/S": "/A", "/St": 53}, ("AAA", "BBB", "CCC")),
        ({"/P": "cover"}, ("cover", "cover", "cover")),
    ],
)
def test_numerals_of_page_labels(entry: dict[str, Any], expected: tuple[str, ...]) -> None:
    """ISO 32000-2, table 161: letters run a to z, then aa to zz."""
    assert labels(3, 0, entry) == expected


def test_a_range_of_labels_counts_from_its_own_start() -> None:
    assert labels(4, 0, {"/S": "/r"}, 2, {"/S": "/D"}) == ("i", "ii", "1", "2")


def test_labels_in_a_tree_are_found_and_none_is_none() -> None:
    tree = {"/PageLabels": {"/Kids": [{"/Nums": [0, {"/S": "/r"}]}, {"/Kids": [{"/Nums": [1, {"/S": "/D"}]}]}]}}
    assert page_labels(pdf(tree), 2) == ("i", "1")
    assert page_labels(pdf({}), 2) == ()
    assert page_labels(pdf({"/PageLabels": 7}), 2) == ()


def test_bookmarks_in_the_order_of_their_tree() -> None:
    """ISO 32000-2, 12.3.3: a destination is the entry's own, or that of its action; one by a name, or none, leads to no page."""
    page = IndirectObject(7, 0, None)
    last = pdf({"/Title": "c", "/A": {"/S": "/GoTo", "/D": [page, "/Fit"]}})
    middle = pdf({"/Title": "b", "/First": {"/Title": "below", "/Dest": "name"}, "/Next": last})
    outline = pdf({"/Outlines": {"/First": {"/Title": "a", "/Dest": [page, "/Fit"], "/Next": middle}}})
    found = [(b.title, b.page, b.depth) for b in bookmarks(outline, {7: 2})]
    assert found == [("a", 2, 0), ("b", 0, 0), ("below", 0, 1), ("c", 2, 0)]
    assert bookmarks(pdf({}), {}) == ()


def test_bookmarks_in_a_ring_end() -> None:
    one = pdf({"/Title": "a"})
    one[NameObject("/Next")] = one
    assert len(bookmarks(pdf({"/Outlines": {"/First": one}}), {})) == 2000


def test_attached_files_by_name_and_sum() -> None:
    stream = DecodedStreamObject()
    stream.set_data(b"{}")
    files = ["facts.json", {"/EF": {"/F": stream, "/UF": stream}}, "lost.txt", {"/EF": {}}]
    found = attachments(pdf({"/Names": {"/EmbeddedFiles": {"/Names": files}}}), Spent())
    assert found == (("facts.json", sha256(b"{}").hexdigest()), ("lost.txt", ""))
    assert attachments(pdf({}), Spent()) == ()


@pytest.mark.parametrize(
    ("wish", "words"),
    [
        ({"/PrintArea": "/ArtBox"}, "by its ArtBox (PrintArea)"),
        ({"/ViewClip": "/TrimBox"}, "by its TrimBox (ViewClip)"),
        ({"/NumCopies": 3}, "asks for 3 copies"),
        ({"/PrintPageRange": [1, 2]}, "only some of its pages"),
    ],
)
def test_wishes_about_printing_are_said(wish: dict[str, Any], words: str) -> None:
    (said,) = print_wishes(pdf(wish))
    assert words in said


def test_wishes_that_change_nothing_are_none() -> None:
    assert print_wishes(pdf({"/PrintArea": "/CropBox", "/ViewArea": "/MediaBox", "/NumCopies": 1})) == ()
