"""What the digests of inputs tell apart, and what they pass over."""

from dataclasses import replace

import pytest

from publisher.brief import InputFile, Inputs

SOME = Inputs(
    "quay",
    (InputFile.of("spec.yaml", b"format: 2"), InputFile.of("a.svg", b"<svg/>")),
    (("board", "5 mm"), ("reach", "90 mm")),
    ("a4", "letter"),
    (("publisher", "0.1.0"), ("shapely", "2.2.0")),
    folder="designs/quay",
)


@pytest.mark.parametrize(
    "other",
    [
        replace(SOME, slug="quai"),
        replace(SOME, files=SOME.files[:1]),
        replace(SOME, files=(SOME.files[0], InputFile.of("a.svg", b"<svg />"))),
        replace(SOME, files=(SOME.files[0], InputFile.of("b.svg", b"<svg/>"))),
        replace(SOME, sets=(("board", "5 mm"), ("reach", "91 mm"))),
        replace(SOME, sets=()),
        replace(SOME, papers=("a4",)),
        replace(SOME, versions=(("publisher", "0.1.0"), ("shapely", "2.2.1"))),
    ],
)
def test_whatever_changes_the_files_changes_the_digest(other: Inputs) -> None:
    assert other.digest != SOME.digest


def test_where_the_folder_stands_and_in_what_order_things_were_said_does_not() -> None:
    turned = replace(SOME, files=SOME.files[::-1], sets=SOME.sets[::-1], papers=SOME.papers[::-1], folder="/else/quay")
    assert turned.digest == SOME.digest


def test_a_pack_is_named_by_its_own_paper_only() -> None:
    alone = replace(SOME, papers=("a4",))
    assert SOME.pack_digest("", "a4") == alone.pack_digest("", "a4")
    names = {SOME.pack_digest(variant, paper) for variant in ("", "wide") for paper in ("a4", "letter")}
    assert len(names) == 4
    assert replace(SOME, sets=()).pack_digest("", "a4") not in names


def test_the_digest_is_the_same_in_every_process() -> None:
    """Worked out once by another program from the sentence in the docstring (SHA-256 of the JSON text, keys sorted)."""
    assert Inputs("quay").digest == "d59c4724d8909332140862119034fc4ad75906b031176cce60b6bc270f483ca7"
