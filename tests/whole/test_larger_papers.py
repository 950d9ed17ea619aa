"""A larger paper never takes more sheets than A4, and a sheet of a plan has no tiles of what fits it."""

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from publisher import api
from publisher.basics import errors
from publisher.pages import Pack
from publisher.pages.sheet import paper_for
from publisher.pipeline import compose_packs
from tests.random_designs.make import true_design
from tests.random_designs.tool import written
from tests.searches.profile import seeds

LARGER = ("a3", "a2", "a1", "arch_d")
TRUE_KINDS = ("print_check", "templates", "overview", "tiles")


def sheets(pack: Pack) -> int:
    """Return how many pages must be printed."""
    return sum(page.kind in TRUE_KINDS for page in pack.pages)


def without_need(pack: Pack, largest: float) -> list[int]:
    """Return pages of tiles on a paper that is wider than the largest part, whichever way it lies."""
    return [page.number for page in pack.pages if page.kind == "tiles" and pack.paper.width - 40.0 > largest]


@pytest.mark.search
@seeds(2, 60)
def test_a_larger_paper_never_takes_more_sheets(seed: int) -> None:
    design = true_design(seed)
    with TemporaryDirectory() as top:
        worked = api.work(api.read(written(Path(top), design.spec, design.files), (), ("a4",)))
    assert not errors(worked.findings)
    assert worked.design is not None
    (first, *others), _ = compose_packs(worked, ("a4", *LARGER))
    largest = max(max(part.template.outer.box.width, part.template.outer.box.height) for part in worked.pieces)
    for pack in others:
        assert pack.paper == paper_for(worked.design, pack.paper.name)
        assert sheets(pack) <= sheets(first), (pack.paper.name, sheets(pack), sheets(first))
        assert without_need(pack, largest) == [], pack.paper.name
