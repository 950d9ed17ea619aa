"""Amounts: kinds by dimension, and where plain numbers come from."""

import math
from dataclasses import replace

import pytest

from publisher.design.language.amounts import Amount, Origin, is_whole, of_kind, power
from publisher.design.records.plans import Kind


@pytest.mark.parametrize(
    ("amount", "kind", "words"),
    [
        (Amount(1.0, mm=1), "length", "a length"),
        (Amount(1.0, mm=2), "area", "an area"),
        (Amount(1.0, deg=1), "angle", "an angle"),
        (Amount(1.0, grams=1), "mass", "a weight"),
        (Amount(3.0), "count", "a plain number"),
        (Amount(3.5), "number", "a plain number"),
        (Amount(3.0, origin=Origin.RATIO), "ratio", "a ratio"),
        (Amount(3.0, origin=Origin.ROUNDED), "count", "a plain number"),
        (Amount(1.0, mm=3), None, "mm³"),
        (Amount(1.0, mm=-1, deg=1), None, "mm⁻¹ · deg"),
    ],
)
def test_kind_and_words(amount: Amount, kind: Kind | None, words: str) -> None:
    assert amount.kind() == kind
    assert amount.words() == words


def test_a_named_count_is_a_count_and_a_named_ratio_stays_a_ratio() -> None:
    rounded = Amount(20.0, origin=Origin.ROUNDED)
    assert rounded.named() == Amount(20.0)
    ratio = replace(rounded, origin=Origin.RATIO)
    assert ratio.named() == ratio


@pytest.mark.parametrize("kind", ["length", "angle", "area", "mass", "ratio", "number"])
def test_of_kind_gives_back_the_kind(kind: Kind) -> None:
    assert of_kind(7.5, kind).kind() == kind
    assert of_kind(7.0, "count").kind() == "count"


def test_whole_numbers_allow_for_dust() -> None:
    assert is_whole(14.0 + 1e-10)
    assert not is_whole(14.0 + 2e-9)
    assert not is_whole(math.inf)
    assert power(-12) == "⁻¹²"
