"""Faults planted into a finished pack, one at a time: truth alone must find each (``python -m tests.proof.plants`` lists survivors)."""

from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.pages import Pack
from publisher.pipeline import compose_packs, work
from tests.proof.plants.bench import plant_all
from tests.proof.plants.plants import EDITS, PLANTS
from tests.searches.profile import PROFILE, rounds
from tests.whole.conftest import small_design

EVERY_DAY = (
    "number retyped",
    "words moved",
    "pages exchanged",
    "gap of 0.3 mm",
    "stray line of 0.18 mm",
    "bookmark",
    "link",
)
PACK: list[Pack] = []


@pytest.fixture
def pack(tmp_path: Path) -> Pack:
    """The pack of the smallest design, composed once."""
    if not PACK:
        PACK.extend(compose_packs(work(read_brief(small_design(tmp_path, "bollard"))), ("a4",))[0])
    return PACK[0]


@pytest.mark.search
@pytest.mark.parametrize("kind", [*EDITS, *(PLANTS if PROFILE.large else EVERY_DAY)])
def test_a_planted_fault_is_found(kind: str, pack: Pack) -> None:
    done = list(plant_all(pack, (kind,), range(PROFILE.seed, PROFILE.seed + rounds(1, 20))))
    assert done
    assert [one.seed for one in done if not one.equal and not one.checks] == []
