from typing import Any

import pytest

from publisher.proof.reading.reader import read_file


@pytest.mark.parametrize(
    ("catalogue", "words"),
    [
        (b"/OpenAction << /S /JavaScript /JS (1) >>", ("runs a script",)),
        (b"/OpenAction << /S /GoTo /D [3 0 R /Fit] >>", ()),
        (b"/OpenAction [3 0 R /Fit]", ()),
        (b"/OpenAction << /S /GoTo /Next << /S /Launch /F (a.exe) >> >>", ("starts a program a.exe",)),
        (b"/AA << /WP << /S /SubmitForm /F (x) >> >>", ("sends a form x",)),
        (b"/Names << /JavaScript << /Names [] >> >>", ("runs a script",)),
        (b"/AcroForm << /Fields [] >>", ("holds a form to fill in",)),
        (b"/OpenAction 5 0 R", ("opens an address x",)),
    ],
)
def test_what_a_file_does(kit: Any, catalogue: bytes, words: tuple[str, ...]) -> None:
    endless = ((5, b"<< /S /URI /URI (x) /Next 5 0 R >>"),)
    assert read_file(kit.raw_pdf(catalogue=catalogue, objects=endless), "test.pdf").actions == words


@pytest.mark.parametrize(
    ("note", "links", "notes", "actions"),
    [
        (b"/Subtype /Link /Border [0 0 0] /Dest /there", (), (), ()),
        (b"/Subtype /Link /BS << /W 0 >> /A << /S /GoTo >>", (), (), ()),
        (b"/Subtype /Link /Dest /there", (), ("a link with a visible frame",), ()),
        (
            b"/Subtype /Link /Border [0 0 0] /A << /S /URI /URI (https://example.org) >>",
            ("opens an address https://example.org",),
            (),
            (),
        ),
        (b"/Subtype /Widget", (), ("a note of kind Widget",), ()),
        (b"/Subtype /Link /Border [0 0 0] /A << /S /Launch >>", (), (), ("starts a program",)),
    ],
)
def test_what_lies_over_a_page(kit: Any, note: bytes, links: Any, notes: Any, actions: Any) -> None:
    page = read_file(kit.raw_pdf(page=b"/Annots [<< " + note + b" >> 7 (x)]"), "test.pdf").pages[0]
    assert (page.links, page.annotations, page.actions) == (links, notes, actions)
