"""What covers bent pieces: as much as covers them, with a margin all round; told to whoever buys, cuts and bends."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.pages.front.coverings import Covering, covering_words, coverings_of
from publisher.pages.front.to_buy import cover_words
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.label_words import says


def cover(what: str, pieces: int, width: float, height: float) -> Covering:
    return Covering("wall", "A", what, "outside", pieces, width, height)


@pytest.mark.parametrize(
    ("pieces", "size", "sheets"),
    [
        (1, (191.9, 75.0), 1),
        (3, (191.9, 75.0), 1),  # three of 85 mm are 255, and fit on 297
        (4, (191.9, 75.0), 2),
        (1, (200.0, 287.0), 1),  # with its margin just an A4 sheet
        (1, (201.0, 287.0), 2),
        (2, (500.0, 75.0), 4),  # two sheets lie edge to edge under each: 510 of 594 mm
    ],
)
def test_sheets_of_paper_cover_all_pieces_and_a_margin(pieces: int, size: tuple[float, float], sheets: int) -> None:
    assert cover("paper", pieces, *size).sheets(210.0, 297.0) == sheets


def test_tape_is_counted_for_all_pieces() -> None:
    assert cover("tape", 2, 290.0, 40.1).tape == pytest.approx(2 * 2 * 300.0)


def test_amounts_are_rounded_up_and_stand_in_both_units() -> None:
    one = (cover("tape", 2, 291.0, 30.0),)
    assert covering_words(one) == (
        "strong tape, 50 mm (2 in) wide, to cover 2 pieces of A, 291.0 × 30.0 mm (11.46 × 1.18 in) each: 0.7 m (2 ft)",
    )
    assert covering_words(one, "in")[0].startswith("strong tape, 2 in (50 mm) wide") and covering_words(())[0:] == ()


def test_the_buyer_of_a_bent_soffit_is_told_of_its_paper_everywhere(demo: Callable[..., Context]) -> None:
    context = demo("bridge")
    (found,) = coverings_of(context.parts, context.needs.cut_list)
    assert (found.letter, found.what, found.face, found.pieces) == ("D", "paper", "outside", 1)
    assert cover_words(context) == (
        "Plain paper to cover 1 piece of D, 191.9 × 75.0 mm (7.56 × 2.95 in): 1 sheet of A4 size.",
    )
    part = next(part for part in context.parts if part.letter == "D")
    assert "Glue paper over the whole outside face before you bend it." in says(context, part).notes
    bare = replace(part, bending=replace(part.bending, covered="none") if part.bending else None)
    assert coverings_of((bare,), context.needs.cut_list) == ()
