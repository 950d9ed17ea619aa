"""What ``new`` begins with is played with: other sizes may bring findings, never a fault of ours; the first thing that a newcomer does."""

from pathlib import Path
from random import Random

import pytest

from publisher import api
from publisher.brief import STARTS
from tests.searches.profile import seeds

BOAT = 7  # a seed that draws out the boat, whose sketch of layers had areas that touch themselves


@pytest.mark.search
@seeds(2, 300, a_longer_boat=BOAT)
def test_other_sizes_of_a_start_bring_findings_at_the_most(seed: int, tmp_path: Path) -> None:
    dice = Random(seed)
    like = "drawing" if seed == BOAT else dice.choice(sorted(STARTS))
    folder = tmp_path / f"my-{like}"
    api.new(folder, like, "Ebbwater Patterns")
    lengths = [
        size for size in api.work(api.read(folder)).design.sizes if size.kind == "length" and size.name != "board"
    ]
    changed = dice.sample(lengths, dice.randint(1, min(3, len(lengths))))
    sets = {size.name: f"{round(size.value * dice.uniform(0.6, 1.6), 1)} mm" for size in changed}
    if seed == BOAT:
        sets = {"long": "180 mm"}
    worked = api.with_pages(api.work(api.read(folder, tuple(sets.items()), ("a4", "letter"))))
    assert worked.parts or any(finding.severity == "error" for finding in worked.findings), sets
