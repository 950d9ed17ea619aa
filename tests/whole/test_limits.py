"""Limits of the rooms agree: what an earlier one lets through, no later one refuses for its number alone; the docs list them."""

import re
from pathlib import Path

from docs.limits_page import LIMITS, value
from publisher.brief import limits, read_brief
from publisher.geometry.drawings.fewer import MANY_EDGES, MOST_DRAWN_EDGES
from publisher.geometry.drawings.tree import MOST_SVG_BYTES
from publisher.geometry.surfaces.draw import MOST_PATTERN_POINTS
from publisher.pages.sheet.page_limit import MOST_COMPOSED
from publisher.pages.sheet.pictures import LEAST_PHOTO_DOTS
from publisher.pages.sheet.thinning import MOST_ON_A4, operators
from publisher.pages.tiles.tile_pages import MOST_TILES_OF_PART
from publisher.pipeline import compose_packs, work
from publisher.proof.checks.printers import LEAST_DOTS, MOST_PAGE_OPERATORS
from publisher.proof.reading.reader import MOST_PAGES
from tests.benchmarks.drawings import wavy
from tests.whole.conftest import changed, small_design

ROOT = Path(__file__).parents[2]
ROUND_A_PART = 500  # operators of all else on the page of one part: frame, rulers, code, words


def test_an_earlier_room_refuses_no_later_than_the_next() -> None:
    assert MOST_COMPOSED <= MOST_PAGES
    assert MOST_TILES_OF_PART <= MOST_COMPOSED
    assert MOST_ON_A4 <= MOST_PAGE_OPERATORS
    assert max(MOST_DRAWN_EDGES, MOST_PATTERN_POINTS) + ROUND_A_PART <= MOST_PAGE_OPERATORS
    assert MANY_EDGES <= MOST_DRAWN_EDGES
    assert limits.DRAWING_BYTES <= MOST_SVG_BYTES
    assert LEAST_PHOTO_DOTS >= LEAST_DOTS


def test_every_limit_of_the_docs_is_a_number_of_the_tool_and_stands_once() -> None:
    assert all(value(limit) > 0 for limit in LIMITS)
    assert len({limit.constant for limit in LIMITS}) == len({limit.what for limit in LIMITS}) == len(LIMITS)


def test_every_limit_on_a_folder_stands_in_the_docs() -> None:
    stated = {
        limit.constant.partition(":")[2]
        for limit in LIMITS
        if ":" in limit.constant and "brief.limits" in limit.constant
    }
    assert set(re.findall(r"^([A-Z_]+) =", (ROOT / "publisher/brief/limits.py").read_text(), flags=re.M)) - stated == {
        "ALIASES", "FINDINGS", "KEY_LETTERS", "LAYOUTS_BYTES", "SLUG_LETTERS",
    }  # fmt: skip


def test_copies_of_a_fine_part_are_shared_out_over_pages_that_printers_digest(tmp_path: Path) -> None:
    """Four copies of an outline of 900 pieces: on the templates, and on the picture of the sheet on which they lie."""
    folder = small_design(tmp_path, "fine")
    changed(folder, "use: trace", "use: paste")
    changed(folder, "count: 3, shape: disc, with: {radius: radius}", "count: 4, drawing: {file: fine.svg, id: outline}")
    (folder / "fine.svg").write_bytes(wavy(900, False))
    packs, found = compose_packs(work(read_brief(folder)), ("a4",))
    assert found == ()
    assert max(sum(map(operators, page.drawn)) for page in packs[0].pages) < MOST_PAGE_OPERATORS
    assert sum(page.kind == "templates" for page in packs[0].pages) == 2  # three to a page, though four find room
