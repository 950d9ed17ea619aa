"""Golden dumps: what stands on a few pages, in mm with three decimals. A change that nobody meant shows as a readable difference."""

from dataclasses import replace
from pathlib import Path

import pytest

from publisher.dumps import page_lines
from publisher.pages import Words
from tests.whole.conftest import demo_pack

HERE = Path(__file__).parent
PAGES = (("lock-stair", "print_check"), ("lock-stair", "templates"), ("quay", "tiles"), ("toll-house", "steps"))


@pytest.mark.parametrize(("slug", "kind"), PAGES)
def test_a_page_is_as_it_was_accepted(slug: str, kind: str, request: pytest.FixtureRequest) -> None:
    pack = demo_pack(slug, "a4")
    page = next(p for p in pack.pages if p.kind == kind)
    golden = HERE / "golden" / f"{slug}-a4-{kind}.txt"
    now = "\n".join(page_lines(page, pack)) + "\n"
    if request.config.getoption("--update-golden"):
        golden.write_text(now, encoding="utf-8", newline="\n")
        pytest.fail(f"{golden.name} was written anew: read the difference, then run without --update-golden")
    assert now.splitlines() == golden.read_text(encoding="utf-8").splitlines()


@pytest.mark.parametrize(
    ("text", "dumped"),
    [
        ("page 7 of 9", "page # of #"),
        ("see pages 3 and 12", "see pages # and #"),
        ("50 mm on page 4", "50 mm on page #"),
        ("step 4", "step 4"),
    ],
)
def test_a_page_added_elsewhere_changes_no_dump(text: str, dumped: str) -> None:
    page = next(p for p in demo_pack("toll-house", "a4").pages if p.kind == "steps")
    words = next(thing for thing in page.drawn if isinstance(thing, Words))
    spoken = replace(page, drawn=(replace(words, text=text),))
    assert page_lines(spoken, demo_pack("toll-house", "a4"))[1].endswith(f"{words.font} {dumped}")
