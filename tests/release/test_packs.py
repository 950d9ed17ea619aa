"""Packs of a variant are put in place, and what an earlier build left goes only where it would be taken for theirs."""

import json
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.basics import Refusal
from publisher.release import Offer, Output, place_packs


def offer(record: bytes, *papers: str, variant: str = "") -> Offer:
    """A stand-in for the offer of ``quay`` 1.0.0: each pack's file holds the record's bytes, so that one tells whose it is."""
    stem = f"quay-1.0.0-{variant}" if variant else "quay-1.0.0"
    folder = variant or "standard"
    outputs = [Output(f"{stem}-{paper}.pdf", record) for paper in papers]
    outputs += [Output(f"previews/{folder}-{paper}/page-01.png", record) for paper in papers]
    outputs += [Output(f"cut-files/{folder}/part-a-side.svg", record)]
    outputs += [Output(f"{stem}-{paper}.json", record) for paper in papers]
    listed = json.dumps({"packs": [{"record": f"{stem}-{paper}.json"} for paper in papers]}).encode()
    outputs += [Output(f"packs-{variant}.json" if variant else "packs.json", listed)]
    design: Any = SimpleNamespace(slug="quay", version="1.0.0", variant=variant)
    packs: Any = tuple((SimpleNamespace(paper=SimpleNamespace(name=paper)), None) for paper in papers)
    needs: Any = None
    return Offer(design, needs, packs, tuple(outputs))


def record(board: float) -> bytes:
    return b'{"design": {"version": "1.0.0"}, "sizes": [%g]}' % board


def names(folder: Path) -> set[str]:
    return {p.relative_to(folder).as_posix() for p in folder.rglob("*") if p.is_file()}


def test_another_paper_of_the_same_sizes_stays(tmp_path: Path) -> None:
    place_packs(offer(record(5), "a4", "letter"), tmp_path)
    place_packs(offer(record(5), "a4"), tmp_path)
    assert {"quay-1.0.0-a4.pdf", "quay-1.0.0-letter.pdf"} <= names(tmp_path / "quay")


def test_another_paper_of_other_sizes_goes_with_its_pictures(tmp_path: Path) -> None:
    place_packs(offer(record(5), "a4", "letter"), tmp_path)
    place_packs(offer(record(5), "a4", "letter", variant="long"), tmp_path)
    placed = place_packs(offer(record(6), "a4"), tmp_path)
    assert {p.read_bytes() for p in placed if p.name != "packs.json"} == {record(6)}
    left = names(tmp_path / "quay")
    assert not [name for name in left if "1.0.0-letter" in name or "standard-letter" in name]
    assert {"quay-1.0.0-long-letter.pdf", "previews/long-letter/page-01.png", "packs-long.json"} <= left


def test_cut_files_that_are_made_no_more_go(tmp_path: Path) -> None:
    first = offer(record(5), "a4")
    more = Output("cut-files/standard/part-b-deck.svg", b"")
    place_packs(replace(first, outputs=(*first.outputs[:-1], more, first.outputs[-1])), tmp_path)
    assert more.path in names(tmp_path / "quay")
    place_packs(first, tmp_path)
    assert more.path not in names(tmp_path / "quay")


@pytest.mark.parametrize("before", [b"", b"not json", b"[]", b'{"design": {}}'])
def test_a_record_that_cannot_be_read_removes_nothing(before: bytes, tmp_path: Path) -> None:
    place_packs(offer(before, "letter"), tmp_path)
    place_packs(offer(record(6), "a4"), tmp_path)
    assert {"quay-1.0.0-a4.pdf", "quay-1.0.0-letter.pdf"} <= names(tmp_path / "quay")


def test_a_folder_that_cannot_be_written_is_refused(tmp_path: Path) -> None:
    (tmp_path / "packs").write_text("mine")
    with pytest.raises(Refusal, match="cannot write"):
        place_packs(offer(record(5), "a4"), tmp_path / "packs")
