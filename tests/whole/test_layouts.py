"""The layouts kept beside each design hold, and are all that a build needs: it packs nothing."""

import json
from pathlib import Path

import pytest

DESIGNS = Path(__file__).parents[2] / "designs"
STORED = sorted(p.parent.name for p in DESIGNS.glob("*/layouts.json"))


def test_the_demos_keep_their_layouts() -> None:
    """At least the first three do."""
    assert {"lock-stair", "quay", "toll-house"} <= set(STORED)


@pytest.mark.parametrize("name", STORED)
def test_every_layout_of_every_variant_is_stored_and_holds(name: str, packs: Path) -> None:
    """Each was judged again when its pack was built, without a word, and nothing was laid anew: the record says so."""
    records = [json.loads(file.read_text()) for file in sorted((packs / name).glob(f"{name}-*.json"))]
    assert len(records) > 1
    for record in records:
        assert [board["fresh"] for board in record["boards"]] == [0] * len(record["boards"]) != []
