"""The layouts kept beside each design hold, and are all that a build needs: it packs nothing."""

from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.design import variants
from publisher.material import bottom_left
from publisher.pipeline import work

DESIGNS = Path(__file__).parents[2] / "designs"
STORED = sorted(p.parent.name for p in DESIGNS.glob("*/layouts.json"))


def test_the_demos_keep_their_layouts() -> None:
    """At least the first three do."""
    assert {"lock-stair", "quay", "toll-house"} <= set(STORED)


@pytest.mark.parametrize("name", STORED)
def test_every_layout_of_every_variant_is_stored_and_holds(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each was judged again on the way; nothing was laid anew, since the engine cannot even be called."""
    monkeypatch.setattr(bottom_left, "_best", None)
    brief = read_brief(DESIGNS / name)
    for variant in ("", *variants(brief)):
        needs = work(brief, variant).needs
        assert needs is not None
        assert needs.yields
        assert [y.fresh for y in needs.yields] == [0] * len(needs.yields)
        assert [f.check for f in needs.findings if f.check.startswith("material/")] == []
