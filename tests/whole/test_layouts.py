"""The layouts kept beside each design hold, and are all that a build needs: it packs nothing."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.material import strip_search
from tests.whole.conftest import Run, changed, small_design

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


def test_only_a_careful_yield_asks_the_improver(
    publisher: Callable[..., Run], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A build, one among many too, a quick yield and a sweep start no process of it; a careful yield does, one at a time."""
    folder = small_design(tmp_path / "shelf", "bollard")
    changed(folder, "shape: disc, with: {radius: radius}", "shape: regular_polygon, with: {radius: radius, sides: 5}")
    changed(folder, "radius: 20 mm", "radius: 90 mm")
    asked: list[object] = []

    def ask(request: dict[str, object]) -> tuple[None, list[tuple[int, float, float, float]]]:
        asked.append(request["workers"])
        return None, []

    monkeypatch.setattr(strip_search, "ask", ask)
    shelf, out = folder.parent, tmp_path / "out"
    small_design(shelf, "mooring")
    for one in shelf.iterdir():
        changed(one, "papers: [a4, letter]", "papers: [a4]")
    assert publisher("build", shelf, "--out", out, "--jobs", "1").code == 0
    assert publisher("yield", folder).code == 0
    assert publisher("sizes", folder, "--vary", "radius = 90 mm to 91 mm", "--values", "2", "--jobs", "1").code == 0
    assert asked == []
    assert publisher("yield", folder, "--effort", "careful").code == 0
    assert asked and set(asked) == {1}
