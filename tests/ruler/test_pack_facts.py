"""Facts read from a finished pack; any other file is refused in a sentence."""

import json
from io import BytesIO

import pikepdf
import pytest

from publisher.basics import Refusal
from publisher.ruler import read_pack_facts


def pdf_with(document: object) -> bytes:
    out = BytesIO()
    with pikepdf.new() as pdf:
        pdf.add_blank_page()
        pdf.attachments["facts.json"] = pikepdf.AttachedFileSpec(pdf, json.dumps(document).encode())
        pdf.save(out)
    return out.getvalue()


@pytest.mark.keeps("ruler/pack-without-facts")
def test_meetings_are_read() -> None:
    meeting = {"what": "slot", "printed": 5.3, "unprinted_least": 5.2, "loosest": None}
    facts = read_pack_facts(
        pdf_with({"design": {"title": "Toll house", "version": "1.0.0"}, "meetings": [meeting]}), "pack.pdf"
    )
    assert facts.title == "Toll house"
    assert facts.meetings[0].least == 5.2
    assert facts.meetings[0].most is None


@pytest.mark.breaks("ruler/pack-without-facts")
@pytest.mark.parametrize("data", [b"", b"hello", pdf_with({"title": 3}), b"%PDF-1.7\n%%EOF"])
def test_any_other_file_is_refused(data: bytes) -> None:
    with pytest.raises(Refusal, match="carries no facts"):
        read_pack_facts(data, "other.pdf")


IN_SHORT = {"design": {"title": "Toll house", "version": "1.0.0"}, "meetings": []}


@pytest.mark.keeps("ruler/newer-record")
@pytest.mark.parametrize("form", [1, 2])
def test_older_and_present_formats_are_read(form: int) -> None:
    assert read_pack_facts(pdf_with(IN_SHORT | {"format": form}), "pack.pdf").title == "Toll house"


@pytest.mark.breaks("ruler/newer-record")
def test_a_later_format_is_refused() -> None:
    with pytest.raises(Refusal, match="of format 3; this version reads formats 1 and 2"):
        read_pack_facts(pdf_with(IN_SHORT | {"format": 3}), "pack.pdf")


SLOT = {"name": "a.slot", "what": "slot of part A", "printed": 5.3, "unprinted_least": 5.2, "loosest": 5.3}


@pytest.mark.keeps("ruler/facts-askew")
def test_the_range_that_a_pack_allows_is_read_with_what_sets_it() -> None:
    said = {"least": 0.995, "most": 1.0, "least_by": "", "most_by": "a.slot"}
    document = {"design": {"title": "Toll house", "version": "1"}, "meetings": [SLOT], "budget": said}
    budget = read_pack_facts(pdf_with(document), "pack.pdf").budget
    assert budget is not None
    assert (budget.least, budget.most) == (0.995, 1.0)
    assert (budget.least_by, budget.most_by) == ("the general limit", "slot of part A")


def test_an_older_pack_says_no_range() -> None:
    document = {"design": {"title": "Toll house", "version": "1"}, "meetings": [SLOT]}
    assert read_pack_facts(pdf_with(document), "pack.pdf").budget is None


@pytest.mark.parametrize(
    ("least", "most", "why"),
    [
        (0.5, 1.0, "from 0.5 to 1"),
        (0.995, 1.5, "to 1.5"),
        (1.01, 1.0, "from 1.01"),
        (float("nan"), 1.0, "nan"),
        (0.95, 1.0, "from the sizes that they name follows 0.9950"),
        (0.995, 1.005, "to 1.0000"),  # the slot is already as wide as it may be
    ],
)
@pytest.mark.breaks("ruler/facts-askew")
def test_a_range_that_does_not_follow_from_the_sizes_is_refused(least: float, most: float, why: str) -> None:
    said = {"least": least, "most": most, "least_by": "", "most_by": "a.slot"}
    document = {"design": {"title": "Toll house", "version": "1"}, "meetings": [SLOT], "budget": said}
    with pytest.raises(Refusal, match="cannot be right") as refused:
        read_pack_facts(pdf_with(document), "pack.pdf")
    assert why in str(refused.value)


def test_sizes_below_nothing_are_refused() -> None:
    document = {"design": {"title": "Toll house", "version": "1"}, "meetings": [SLOT | {"printed": -5.3}]}
    with pytest.raises(Refusal, match="below nothing"):
        read_pack_facts(pdf_with(document), "pack.pdf")


def lines(across: float, down: float) -> dict[str, object]:
    """Return the part of a record that says which lines a page has."""
    rulers = [
        {"kind": "ruler", "start": [20, 27], "end": [20 + across, 27], "length": across},
        {"kind": "ruler", "start": [11, 27], "end": [11, 27 + down], "length": down},
        {"kind": "calibration", "start": [20, 30], "end": [420, 30], "length": 400},
    ]
    return {"pages": [{"rulers": []}, {"rulers": rulers}]}


def test_the_long_rulers_are_those_of_the_pack() -> None:
    assert read_pack_facts(pdf_with(IN_SHORT | lines(120, 150)), "pack.pdf").rulers == (120.0, 150.0)
    assert read_pack_facts(pdf_with(IN_SHORT), "pack.pdf").rulers == (180.0, 240.0)


@pytest.mark.breaks("ruler/facts-askew")
def test_rulers_that_cannot_be_are_refused() -> None:
    with pytest.raises(Refusal, match="long rulers are 9000"):
        read_pack_facts(pdf_with(IN_SHORT | lines(9000, 150)), "pack.pdf")


def test_the_square_round_the_other_is_read_from_the_print_check_alone() -> None:
    lines = [{"kind": "dimension", "label": "4 in", "length": 101.6, "start": [0, 0], "end": [101.6, 0]}]
    for kind, side in (("print_check", 101.6), ("template", 0.0)):
        document = IN_SHORT | {"pages": [{"kind": kind, "rulers": lines}]}
        assert read_pack_facts(pdf_with(document), "pack.pdf").outer_square == side


def of_kind(kind: str, paper: str = "a4", title: str = "Toll house") -> bytes:
    design = {"title": title, "version": "1.0.0"}
    return pdf_with(IN_SHORT | {"design": design, "pack": {"kind": kind, "paper": {"name": paper}}})


@pytest.mark.breaks("ruler/never-printed")
def test_a_phone_copy_is_refused_and_the_pack_that_goes_with_it_named() -> None:
    others = {
        "damaged.pdf": b"%PDF-1.7",
        "bridge-a4.pdf": of_kind("standard", title="Canal bridge"),
        "pack-a4.pdf": of_kind("standard"),
        "pack-letter.pdf": of_kind("standard", "letter"),
        "pack-test-page-a4.pdf": of_kind("test_page"),
    }
    for beside, said in ((others, "--pack pack-a4.pdf"), ({}, "--pack PACK.pdf")):
        with pytest.raises(Refusal, match="never printed") as refused:
            read_pack_facts(of_kind("phone"), "pack-phone-a4.pdf", beside.items())
        assert refused.value.findings[0].hint.endswith(said)


@pytest.mark.keeps("ruler/never-printed")
@pytest.mark.parametrize("kind", ["standard", "trial", "test_page"])
def test_what_is_printed_is_read(kind: str) -> None:
    assert read_pack_facts(of_kind(kind), "pack.pdf").whole == (kind != "test_page")
