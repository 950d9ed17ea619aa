"""A pack of hundreds of pages is refused, and before they are planned."""

from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.pipeline import compose_packs, work
from tests.whole.conftest import changed, small_design


@pytest.fixture
def slabs(tmp_path: Path) -> Path:
    """A design of so many slabs to paste that each fills a page."""
    folder = small_design(tmp_path, "slabs")
    changed(folder, "use: trace", "use: paste")
    changed(folder, "shape: disc, with: {radius: radius}", "shape: rectangle, with: {width: 150 mm, height: 200 mm}")
    return folder


@pytest.mark.breaks("pages/too-many-pages")
def test_hundreds_of_pages_are_refused_before_they_are_planned(slabs: Path) -> None:
    changed(slabs, "count: 3", "count: 505")
    worked = work(read_brief(slabs))
    packs, found = compose_packs(worked, ("a4",))
    assert [f.check for f in found] == ["pages/too-many-pages"]
    assert found[0].place is not None and found[0].place.line == 10
    assert len(packs[0].pages) < 20


@pytest.mark.keeps("pages/too-many-pages")
def test_a_few_pages_are_made(slabs: Path) -> None:
    packs, found = compose_packs(work(read_brief(slabs)), ("a4",))
    assert found == ()
    assert sum(page.kind == "templates" for page in packs[0].pages) == 3
