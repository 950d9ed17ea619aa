"""A larger paper never takes more sheets than A4, and a sheet of a plan has no tiles of what fits it."""

from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from publisher import api
from publisher.basics import errors
from publisher.pages import Pack
from publisher.pages.sheet import paper_for
from publisher.pipeline import compose_packs
from publisher.press import write_pdf
from publisher.proof import prove
from tests.random_designs.make import true_design
from tests.random_designs.tool import written
from tests.searches.profile import seeds
from tests.whole.conftest import ROOT


@pytest.fixture(scope="module")
def demo_of_a_plan() -> Pack:
    worked = api.work(api.read(ROOT / "designs" / "toll-house", (), ("a1",)))
    return compose_packs(worked, ("a1",))[0][0]


LARGER = ("a3", "a2", "a1", "arch_d")
TRUE_KINDS = ("print_check", "templates", "overview", "tiles")


def sheets(pack: Pack) -> int:
    """Return how many pages must be printed."""
    return sum(page.kind in TRUE_KINDS for page in pack.pages)


def without_need(pack: Pack, largest: float) -> list[int]:
    """Return pages of tiles on a paper that is wider than the largest part, whichever way it lies."""
    return [page.number for page in pack.pages if page.kind == "tiles" and pack.paper.width - 40.0 > largest]


def test_a_plan_is_read_on_everyday_sheets(demo_of_a_plan: Pack) -> None:
    """Lines of words half a metre long are not read, and a copy shop is paid for templates alone."""
    sizes = {page.kind in TRUE_KINDS: (page.width, page.height) for page in demo_of_a_plan.pages}
    assert sizes == {True: (594.0, 841.0), False: (210.0, 297.0)}
    assert sheets(demo_of_a_plan) == 2
    assert not errors(prove(write_pdf(demo_of_a_plan), demo_of_a_plan.promises, "plan.pdf").findings)


def test_other_sheets_to_read_a_plan_on_are_found(demo_of_a_plan: Pack) -> None:
    first, *others = demo_of_a_plan.pages
    wrong = replace(demo_of_a_plan, pages=(replace(first, height=300.0), *others))
    found = prove(write_pdf(wrong), wrong.promises, "plan.pdf").findings
    assert any(f.check == "proof/paper" and "page 1" in str(f) for f in found)


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
