"""Names of files: what they are, and which pack a name belongs to."""

import pytest

from publisher.basics import Refusal
from publisher.design import SheetSize
from publisher.release.names import (
    Claim,
    check_names,
    clashes,
    cut_folder,
    pack_name,
    pack_stem,
    paper_of,
    part_name,
    preview_name,
    record_name,
    sheet_name,
    yield_name,
)


def test_names_of_the_sizes_as_written_and_of_a_variant() -> None:
    stems = [pack_stem("quay", "1.0.0", variant) for variant in ("", "long")]
    assert [pack_name(stem, "a4") for stem in stems] == ["quay-1.0.0-a4.pdf", "quay-1.0.0-long-a4.pdf"]
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
