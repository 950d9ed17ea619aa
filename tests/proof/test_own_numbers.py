"""Sayings of tiles and copies whose numbers are held elsewhere are known; sizes beside them are not."""

import re

import pytest

from publisher.proof.checks.own_numbers import FIXED, SAYINGS, TILES


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("A 7 of 11 THIS SIDE UP", []),
        ("A · 12 of 40 · THIS SIDE UP", []),
        ("B 9 of | THIS SIDE UP | 12 of | 40", []),
        ("B 9 of THIS", ["9"]),
        ("Tiles A 1, 2 and 3 of 3; B.14 1 of 3; B.15 1 and 2 of 3", []),
        ("On other pages: D 2 (page), A.4 2 (page) and C 13 (page).", []),
        ("Taped A.13 and A.14 measure 600.5 × 10.5 mm", ["600.5", "10.5"]),
        ("the lower 7.5 of 11.5 mm", ["7.5", "11.5"]),
        ("stones 14.0 mm deep", ["14.0"]),
    ],
)
def test_only_numbers_of_tiles_and_copies_are_taken_out(said: str, left: list[str]) -> None:
    assert re.findall(r"\d+(?:\.\d+)?", TILES.sub("", said)) == left


@pytest.mark.parametrize(
    ("saying", "kinds"),
    [
        ("a bank card, 85.60 × 53.98 mm", {"print_check"}),
        ("about 500 g", {"cover"}),
        ("thin card, 0.3 to 0.5 mm", {"about", "cut_list", "one_part", "before", "acts", "steps"}),
        ("cut it into 10 pieces", {"acts", "steps"}),
        ("98 mm or so", {"print_check"}),
        ("0.05 mm of glue", {"cautions"}),
        ("12 templates", set()),
    ],
)
def test_a_saying_with_a_number_is_known_only_where_it_is_said(saying: str, kinds: set[str]) -> None:
    assert {kind for kind in FIXED if SAYINGS[kind].search(saying)} == kinds
