"""``check`` finds what ``build`` finds, and in true designs nothing: random ones, their pages planned on every usual size of paper."""

from pathlib import Path

import pytest

from publisher import api
from publisher.basics import Finding
from tests.random_designs.make import true_design
from tests.random_designs.tool import UNTOLD, written
from tests.searches.profile import seeds

PAPERS = ("a5", "a4", "letter", "common", "a3", "a2")  # A2: 420 × 594 mm
BUILT = 10  # of how many designs one is built and proved too: that takes longer than all else


@pytest.mark.search
@seeds(4, 400, a_name_on_the_line_of_the_whole_size=5005, a_part_on_two_pages_that_lie_apart=5010)
def test_check_refuses_no_true_design_and_finds_what_build_finds(seed: int, tmp_path: Path) -> None:
    design = true_design(seed)
    brief = api.read(written(tmp_path, design.spec, design.files), (), PAPERS)
    checked = api.with_pages(api.work(brief))
    told = {finding.check for finding in checked.findings} - {*UNTOLD}
    assert told == set(), said(checked.findings)
    if seed % BUILT == 0:
        built = api.build(brief, previews=False)
        assert said(built.findings) == said(checked.findings)
        assert built.good and [one.pack.paper.name for one in built.packs] == [*PAPERS]


def said(findings: tuple[Finding, ...]) -> set[tuple[str, str, str]]:
    """Return findings as text, in whatever order they stand."""
    return {(finding.check, str(finding.place), finding.message) for finding in findings}
