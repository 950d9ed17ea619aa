"""Golden dumps: what stands on a few pages, in mm with three decimals. A change that nobody meant shows as a readable difference."""

import re
from dataclasses import replace
from functools import cache
from math import dist
from pathlib import Path

import pytest

from publisher.basics import Box
from publisher.basics import Path as OutlinePath
from publisher.brief import read_brief
from publisher.pages import Fill, Link, Pack, Page, Picture, Stroke, Words
from publisher.pipeline import compose_packs, work

HERE = Path(__file__).parent
DESIGNS = HERE.parents[1] / "designs"
PAGES = (("lock-stair", "print_check"), ("lock-stair", "templates"), ("quay", "tiles"), ("toll-house", "steps"))

PAGE_NUMBER, NUMBER = re.compile(r"\bpages? \d+(?:(?: of | to | and |–|, )\d+)*"), re.compile(r"\d+")


@cache
def pack_of(slug: str) -> Pack:
    return compose_packs(work(read_brief(DESIGNS / slug)), ("a4",))[0][0]


def box(paths: tuple[OutlinePath, ...]) -> str:
    xs = [x for path in paths for x, _ in path.points]
    ys = [y for path in paths for _, y in path.points]
    return f"{min(xs):.3f} {min(ys):.3f} {max(xs):.3f} {max(ys):.3f}"


def within(paths: tuple[OutlinePath, ...], room: Box) -> bool:
    return all(
        room.left - 0.01 <= x <= room.right + 0.01 and room.bottom - 0.01 <= y <= room.top + 0.01
        for path in paths
        for x, y in path.points
    )


def length(paths: tuple[OutlinePath, ...]) -> float:
    return sum(
        dist(a, b)
        for path in paths
        for a, b in zip(path.points, path.points[1:] + (path.points[:1] if path.closed else ()), strict=False)
    )


def dump(page: Page, pack: Pack) -> str:
    """Return a page as lines, without what another page or another word of the spec decides: the pack's id and page numbers.

    A line that holds one has no ``x`` either, as it moves with the width of the number."""
    lines = [f"page {page.kind} {page.title} {page.width:.3f} {page.height:.3f}"]
    for thing in page.drawn:
        if isinstance(thing, Words):
            text, x = thing.text, f"{thing.x:.3f}"
            if f"· {pack.id[:4]} ·" in text:
                text, x = text.replace(f"· {pack.id[:4]} ·", "· #### ·"), "#"
            if PAGE_NUMBER.search(text):
                text, x = PAGE_NUMBER.sub(lambda found: NUMBER.sub("#", found[0]), text), "#"
            lines.append(
                f"words {thing.layer.value} {x} {thing.y:.3f} {thing.size:.3f} {thing.turn:g} {thing.font} {text}"
            )
        elif isinstance(thing, Stroke):
            style = thing.style
            drawn = f"{len(thing.paths)} {box(thing.paths)} {length(thing.paths):.2f}"
            lines.append(f"stroke {thing.layer.value} {style.name} {style.width:g} {drawn}")
        elif isinstance(thing, Fill):
            codes = [promise.box for promise in pack.promises.codes if promise.page == page.number]
            count = "code" if any(within(thing.paths, code) for code in codes) else len(thing.paths)
            lines.append(f"fill {thing.layer.value} {thing.grey:g} {count} {box(thing.paths)}")
        elif isinstance(thing, Link):
            lines.append(f"link {thing.box.left:.3f} {thing.box.bottom:.3f}")
        elif isinstance(thing, Picture):
            lines.append(f"picture {thing.image} {thing.box.left:.3f} {thing.box.bottom:.3f}")
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize(("slug", "kind"), PAGES)
def test_a_page_is_as_it_was_accepted(slug: str, kind: str, request: pytest.FixtureRequest) -> None:
    pack = pack_of(slug)
    page = next(p for p in pack.pages if p.kind == kind)
    golden = HERE / "golden" / f"{slug}-a4-{kind}.txt"
    now = dump(page, pack)
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
    page = next(p for p in pack_of("toll-house").pages if p.kind == "steps")
    words = next(thing for thing in page.drawn if isinstance(thing, Words))
    spoken = replace(page, drawn=(replace(words, text=text),))
    assert dump(spoken, pack_of("toll-house")).splitlines()[1].endswith(f"{words.font} {dumped}")
