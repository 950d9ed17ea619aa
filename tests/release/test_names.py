"""Names of files: what they are, and which pack a name belongs to."""

import pytest

from publisher.design import SheetSize
from publisher.release.names import (
    cut_folder,
    list_name,
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
    assert [list_name(variant) for variant in ("", "long")] == ["packs.json", "packs-long.json"]
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
