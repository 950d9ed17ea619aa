"""A fault planted anywhere into a finished file is found by truth alone, unless it changes no page.

What survives is of two kinds. It changes nothing that anybody can see or read (a key that no reader asks for, two things exchanged
that are the same), or only what stands beside the pages, such as tags, which identity compares.
"""

from functools import cache
from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.pages import Pack
from publisher.pipeline import compose_packs, work
from tests.proof.plants.finished import plant_finished
from tests.searches.profile import seeds

DESIGN = Path(__file__).parents[2] / "designs" / "quay"


@cache
def pack() -> Pack:
    return compose_packs(work(read_brief(DESIGN)), ("a4",))[0][0]


@pytest.mark.search
@seeds(4, 1000)
def test_what_changes_a_page_is_found(seed: int) -> None:
    for planted in plant_finished(pack(), range(seed, seed + 1)):
        assert planted.check or planted.differs != "page", planted
