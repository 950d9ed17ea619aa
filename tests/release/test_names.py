"""Names of files: what they are, and which pack a name belongs to."""

from types import SimpleNamespace
from typing import Any

import pytest

from publisher.basics import Refusal
from publisher.design import SheetSize
from publisher.release.names import (
    EXTRAS,
    Claim,
    board_name,
    check_names,
    clashes,
    cut_folder,
    extra_name,
    extra_paper_of,
    pack_name,
    pack_stem,
    paper_of,
    part_name,
    preview_name,
    record_name,
    sheet_name,
    shop_paper_of,
    yield_name,
)


def drawn_for(*boards: tuple[str, float, str], variant: str = "") -> Any:
    """A quay cut from such boards: id, thickness, name on sale."""
    return SimpleNamespace(
        slug="quay",
        version="1.0.0",
        variant=variant,
        sizes=(),
        parts=tuple(SimpleNamespace(board=name) for name, _, _ in boards),
        boards=(*(SimpleNamespace(id=n, thickness=t, sold_as=s, shop=None) for n, t, s in boards), UNUSED),
    )


UNUSED = SimpleNamespace(id="spare", thickness=1.0, sold_as="", shop=None)


@pytest.mark.parametrize(
    ("boards", "said"),
    [
        ((("foam", 5.0, "5 mm"),), "foam-5mm"),
        ((("foam", 4.7625, "3/16 in"),), "foam-3-16in-4.76mm"),
        ((("foam", 4.6, "White Board, 3/16 in"),), "foam-whiteboard-3-16in-4.6mm"),
        ((("foam", 5.0, ""), ("thin_card", 1.0, "")), "foam-5mm-thin-card-1mm"),
        ((), ""),
    ],
)
def test_the_boards_of_a_name_are_said_with_their_measure(
    boards: tuple[tuple[str, float, str], ...], said: str
) -> None:
    assert board_name(drawn_for(*boards)) == said


def test_many_boards_are_cut_short_and_told_apart() -> None:
    several = [tuple((f"board_number_{n}", 1.0 + n, "") for n in range(first, first + 5)) for first in (0, 1)]
    one, other = (board_name(drawn_for(*boards)) for boards in several)
    assert len(one) <= 40
    assert one != other
    longer = board_name(
        drawn_for(*(("board_number_0", 1.0, ""), ("board_number_1", 2.0, ""), ("b", 3.0, ""), ("b2", 9.0, "")))
    )
    assert longer[:20] == one[:20]
    assert longer != one


def test_names_of_the_sizes_as_written_and_of_a_variant() -> None:
    stems = [pack_stem(drawn_for(("foam", 5.0, "5 mm"), variant=variant)) for variant in ("", "long")]
    assert [pack_name(stem, "a4") for stem in stems] == [
        "quay-1.0.0-foam-5mm-a4.pdf",
        "quay-1.0.0-long-foam-5mm-a4.pdf",
    ]
    assert record_name("quay-1.0.0", "a4") == "quay-1.0.0-a4.json"
    assert cut_folder("") == "cut-files/standard"
    assert part_name("long", "B", "side") == "cut-files/long/part-b-side.svg"
    assert (
        sheet_name("", "foam", SheetSize("20 x 30 in", 508.0, 762.0), 2)
        == "cut-files/standard/sheet-foam-508x762mm-2.svg"
    )
    assert yield_name("") == "cut-files/standard/cut-yield.csv"
    assert preview_name("", "a4", 7) == "previews/standard-a4/page-07.png"


@pytest.mark.parametrize(
    ("name", "paper"),
    [
        ("quay-1.0.0-a4.pdf", "a4"),
        ("quay-1.0.0-long-a4.pdf", None),  # a variant's
        ("quay-1.0.0-.pdf", None),
        ("quay-1.0.0.pdf", None),
        ("quay-1.0.1-a4.pdf", None),
        ("quay-1.0.0-a4", None),
        ("a4.pdf", None),
    ],
)
def test_the_paper_of_a_name(name: str, paper: str | None) -> None:
    assert paper_of(name, "quay-1.0.0") == paper


def test_a_paper_of_the_designs_own_may_have_hyphens() -> None:
    assert paper_of("quay-1.0.0-big-a4.pdf", "quay-1.0.0", ("big-a4",)) == "big-a4"
    assert paper_of("quay-1.0.0-big-a4.pdf", "quay-1.0.0-big", ("big-a4",)) == "a4"


@pytest.mark.breaks("release/name-taken")
@pytest.mark.parametrize(
    ("names", "said"),
    [
        (
            ("big/a", "Big/a"),
            "“big/a” and “Big/a” would be called “big/a” and “Big/a”, which is one name on many disks",
        ),
        (("STRASSE.svg", "straße.svg"), "one name on many disks"),
        (("a", "A/b"), "one name on many disks"),
        (("cut/con/x.svg",), "would have the name “con”, which Windows keeps for a device"),
        (("COM1.svg",), "“COM1.svg”, which Windows keeps"),
        (("lpt³",), "“lpt³”, which Windows keeps"),
        (("nul .txt",), "“nul .txt”, which Windows keeps"),
        (("x./a",), "“x.”, which Windows cuts short"),
    ],
)
def test_names_that_are_one_or_none_on_some_system_are_refused(names: tuple[str, ...], said: str) -> None:
    with pytest.raises(Refusal) as caught:
        check_names(names)
    assert said in str(caught.value)


@pytest.mark.keeps("release/name-taken")
def test_names_that_only_look_alike_are_taken() -> None:
    check_names(("a/b", "a/c", "b", "con-a.svg", "console", "com10", "com", "a.b.c", "part-a-nul.svg"))


def test_one_owner_may_claim_a_name_twice_and_two_are_told_once() -> None:
    twice = [Claim("a/", "the cut files"), Claim("a/", "the cut files")]
    assert clashes(twice) == ()
    both = [Claim(f"{n}.{kind}", who) for who, n in (("one", "big"), ("other", "Big")) for kind in ("pdf", "json")]
    assert [f.message.partition(" would")[0] for f in clashes(both)] == ["one and other"]


def test_what_is_given_beside_a_pack_is_known_by_its_name() -> None:
    assert extra_name("bollard-1.0.0-foam-5mm", "phone", "a4") == "bollard-1.0.0-foam-5mm-phone-a4.pdf"
    for purpose, name in EXTRAS.items():
        path = extra_name("b-1.0.0", purpose, "roll-a")
        assert path == f"b-1.0.0-{name}-roll-a.pdf"
        assert extra_paper_of(path, "b-1.0.0", purpose, ("roll-a",)) == "roll-a"
        assert extra_paper_of(path, "b-1.0.0", purpose) is None
        assert paper_of(path, "b-1.0.0", ("roll-a",)) is None  # no pack


@pytest.mark.parametrize(
    ("name", "variant", "paper"),
    [
        ("shop/standard-a4/pictures.pdf", "", "a4"),
        ("shop/wide-a4/pictures.pdf", "wide", "a4"),
        ("shop/wide-a4/pictures.pdf", "", None),
        ("shop/standard-a4/cover.png", "", None),
        ("shop/standard-/pictures.pdf", "", None),
    ],
)
def test_pages_for_a_shop_are_known_by_their_folder(name: str, variant: str, paper: str | None) -> None:
    assert shop_paper_of(name, variant) == paper
