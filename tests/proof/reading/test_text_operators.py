"""Text operators move as ISO 32000-1, 9.4 says."""

from typing import Any

import pytest

from publisher.proof.reading.reader import read_file

MM = 25.4 / 72
FONT = b"/Font << /F << /Type /Font /Subtype /Type1 /BaseFont /Any /FirstChar 65 /Widths [1000 500] >> >>"


def runs(kit: Any, content: bytes) -> Any:
    return read_file(kit.raw_pdf(b"BT /F 10 Tf " + content + b" ET", resources=FONT), "test.pdf").pages[0].texts


@pytest.mark.parametrize(
    ("content", "places"),
    [
        (b"10 20 Td (A) Tj 5 5 Td (A) Tj", [(10, 20), (15, 25)]),
        (b"10 20 TD (A) Tj T* (A) Tj", [(10, 20), (10, 40)]),
        (b"12 TL 10 20 Td (A) Tj (A) '", [(10, 20), (10, 8)]),
        (b'12 TL 10 20 Td 1 2 (A) "', [(10, 8)]),
        (b"1 0 0 1 30 40 Tm (A) Tj (B) Tj", [(30, 40), (40, 40)]),
        (b"0 1 -1 0 30 40 Tm (A) Tj (B) Tj", [(30, 40), (30, 50)]),
    ],
)
def test_places_in_points(kit: Any, content: bytes, places: list[tuple[float, float]]) -> None:
    found = [(r.x / MM, r.y / MM) for r in runs(kit, content)]
    assert found == [pytest.approx(p) for p in places]


def test_word_space_counts_for_blanks_only(kit: Any) -> None:
    (run,) = runs(kit, b"7 Tw (A A) Tj")
    assert (run.end_x - run.x) / MM == pytest.approx(10 + 5 + 7 + 10)


def test_size_follows_the_matrix(kit: Any) -> None:
    (run,) = runs(kit, b"2 0 0 3 0 0 Tm (A) Tj")
    assert run.size / MM == pytest.approx(30)


@pytest.mark.parametrize(
    ("mode", "invisible", "grey"), [(0, False, 0.2), (1, False, 0.6), (2, False, 0.2), (3, True, 0.2), (7, True, 0.2)]
)
def test_how_letters_are_painted(kit: Any, mode: int, invisible: bool, grey: float) -> None:
    (run,) = runs(kit, b"0.2 g 0.6 G %d Tr (A) Tj" % mode)
    assert run.invisible is invisible
    assert run.grey == pytest.approx(grey)


def test_words_without_a_font_are_named(kit: Any) -> None:
    page = read_file(kit.raw_pdf(b"BT /None 9 Tf (A) Tj ET"), "test.pdf").pages[0]
    assert page.texts == ()
    assert any("font" in what for what in page.unread)
