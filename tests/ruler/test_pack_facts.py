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


def test_meetings_are_read() -> None:
    meeting = {"what": "slot", "printed": 5.3, "unprinted_least": 5.2, "loosest": None}
    facts = read_pack_facts(
        pdf_with({"design": {"title": "Toll house", "version": "1.0.0"}, "meetings": [meeting]}), "pack.pdf"
    )
    assert facts.title == "Toll house"
    assert facts.meetings[0].least == 5.2
    assert facts.meetings[0].most is None


@pytest.mark.parametrize("data", [b"", b"hello", pdf_with({"title": 3}), b"%PDF-1.7\n%%EOF"])
def test_any_other_file_is_refused(data: bytes) -> None:
    with pytest.raises(Refusal, match="carries no facts"):
        read_pack_facts(data, "other.pdf")
