from typing import Any

import pytest

from publisher.proof.reading.reader import read_file

MM = 25.4 / 72


def piece(kit: Any, content: bytes, resources: bytes = b"") -> Any:
    return read_file(kit.raw_pdf(content + b" 0 0 m 9 0 l 9 9 l B", resources=resources), "test.pdf").pages[0].pieces[0]


@pytest.mark.parametrize(
    ("content", "dash"),
    [
        (b"[3 1] 0 d", (3, 1)),
        (b"[] 0 d", ()),
        (b"[0 0] 0 d", ()),
        (b"[3 1] 0 d [] 0 d", ()),
        (b"2 0 0 2 0 0 cm [3 1] 0 d", (6, 2)),
    ],
)
def test_dashes_in_mm(kit: Any, content: bytes, dash: tuple[float, ...]) -> None:
    assert piece(kit, content).dash == pytest.approx([d * MM for d in dash])


@pytest.mark.parametrize(
    ("content", "stroke", "fill"),
    [
        (b"0.4 G 0.6 g", 0.4, 0.6),
        (b"0 0 0 RG 1 1 1 rg", 0.0, 1.0),
        (b"0 0 0 1 K 0 0 0 0 k", 0.0, 1.0),
        (b"/DeviceGray CS 0.3 SC /DeviceGray cs 0.7 sc", 0.3, 0.7),
        (b"/Spot CS 1 SCN /Spot cs 0.25 scn", 0.0, 0.75),
        (b"q 0.9 G 0.9 g Q", 0.0, 0.0),
    ],
)
def test_colours(kit: Any, content: bytes, stroke: float, fill: float) -> None:
    spaces = b"/ColorSpace << /Spot [/Separation /Ink /DeviceGray << >>] >>"
    found = piece(kit, content, spaces)
    assert (found.grey, found.fill_grey) == (pytest.approx(stroke), pytest.approx(fill))


def test_named_settings(kit: Any) -> None:
    found = piece(kit, b"/S gs", b"/ExtGState << /S << /LW 5 /D [[4 2] 0] /CA 0.5 /ca 0 >> >>")
    assert found.width / MM == pytest.approx(5)
    assert [d / MM for d in found.dash] == pytest.approx([4, 2])
    assert (found.grey, found.fill_grey) == (0.5, 1.0)
    assert found.solid_fill is False


@pytest.mark.parametrize(
    ("content", "resources", "words"),
    [
        (b"/Pattern cs /P scn", b"", "pattern"),
        (b"/Pattern CS /P SCN", b"", "pattern"),
        (b"/S gs", b"/ExtGState << /S << /SMask << /S /Alpha >> >> >>", "soft mask"),
        (b"/S gs", b"/ExtGState << /S << /BM /Screen >> >>", "blend mode"),
    ],
)
def test_what_is_not_measured_is_named(kit: Any, content: bytes, resources: bytes, words: str) -> None:
    page = read_file(kit.raw_pdf(content + b" 0 0 m 9 9 l B", resources=resources), "test.pdf").pages[0]
    assert any(words in what for what in page.unread)


# ISO 32000-1, table 58: entries that change how dark things print, or whether; each is to be followed or named
CHANGING = {
    "CA": "0.5", "ca": "0.5", "SMask": "<< /S /Alpha >>", "BM": "/Screen", "FL": "20", "OP": "true", "op": "true",
    "BG": "<< >>", "BG2": "<< >>", "UCR": "<< >>", "UCR2": "<< >>", "TR": "<< >>", "TR2": "<< >>", "HT": "<< >>", "UseBlackPtComp": "/ON",
}  # fmt: skip
UNCHANGING = {
    "Type": "/ExtGState", "LC": "1", "LJ": "1", "ML": "4", "RI": "/Perceptual", "SA": "true", "AIS": "true", "TK": "false", "OPM": "1",
    "SM": "0.1", "OP": "false", "op": "false", "SMask": "/None", "BM": "/Normal", "CA": "1", "ca": "1", "FL": "0.5", "BG2": "/Default",
    "UCR2": "/Default", "TR": "/Identity", "TR2": "/Default", "HT": "/Default", "LW": "2", "D": "[[3 1] 0]",
}  # fmt: skip


@pytest.mark.parametrize(("key", "value", "named"), [
    *((key, value, True) for key, value in CHANGING.items()), *((key, value, False) for key, value in UNCHANGING.items()),
])  # fmt: skip
def test_every_entry_of_a_named_state_is_followed_or_named(kit: Any, key: str, value: str, named: bool) -> None:
    resources = f"/ExtGState << /S << /{key} {value} >> >>".encode()
    page = read_file(kit.raw_pdf(b"/S gs 0 0 m 9 9 l 9 0 l B", resources=resources), "test.pdf").pages[0]
    assert bool(page.unread) is named
