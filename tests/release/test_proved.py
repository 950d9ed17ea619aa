"""``proof.json`` keeps what it said of files that stay, and nothing of others; what its lists do not name is not placed."""

import json
from pathlib import Path

import pytest

from publisher.basics import Refusal
from publisher.release import PROOF, place_packs
from publisher.release.bundle import Bundle, place_bundle
from tests.release.dying import everything, offer


def entries(folder: Path) -> list[str]:
    return [one["file"] for one in json.loads((folder / PROOF).read_text())["packs"]]


def test_what_was_looked_at_in_files_that_stay_stays_too(tmp_path: Path) -> None:
    place_packs((offer(b"x", "a4", "letter"), offer(b"x", "a4", variant="long")), tmp_path)
    before = everything(tmp_path)
    home = tmp_path / "quay"
    place_packs((offer(b"x", "a4"),), tmp_path)
    assert everything(tmp_path) == before
    assert entries(home) == ["quay-1.0.0-a4.pdf", "quay-1.0.0-letter.pdf", "quay-1.0.0-long-a4.pdf"]
    place_packs((offer(b"new", "a4"),), tmp_path)
    assert entries(home) == ["quay-1.0.0-a4.pdf"]


@pytest.mark.parametrize("text", [b"", b"[]", b'{"format": 2, "packs": [{}]}', b'{"format": 1, "packs": []}'])
def test_an_earlier_record_that_cannot_be_read_is_left_out(text: bytes, tmp_path: Path) -> None:
    place_packs((offer(b"x", "a4", "letter"),), tmp_path)
    (tmp_path / "quay" / PROOF).write_bytes(text)
    place_packs((offer(b"x", "a4"),), tmp_path)
    assert entries(tmp_path / "quay") == ["quay-1.0.0-a4.pdf"]


def test_files_that_their_own_list_does_not_name_are_not_placed(tmp_path: Path) -> None:
    listed = b'{"files": [{"path": "stair.pdf", "size": 3, "sha256": "00"}]}'
    bundle = Bundle("stair", "1.0.0", (("stair.pdf", b"pdf"), ("manifest.json", listed)))
    with pytest.raises(Refusal, match="other bytes than when it was made"):
        place_bundle(bundle, tmp_path)
    assert everything(tmp_path) == {}
