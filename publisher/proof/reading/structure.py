"""The tagged structure of a file (ISO 32000-1, 14.7 and 14.8): what each thing on a page is, in the order of reading."""

from collections.abc import Iterator
from typing import Any

from publisher.proof.reading.model import PageRead, TagRead
from publisher.proof.reading.objects import TooMuch, dictionary, number, plain, raw

MOST_TAGS = 60_000  # elements of a tree
DEEPEST_TAG = 32


def tags(catalogue: Any, pages: dict[int, int], read: tuple[PageRead, ...]) -> tuple[TagRead, ...]:
    """Return the elements of the tree, each before those under it. ``pages``: number of a page by that of its object.

    Raises TooMuch for a tree of more elements than an honest pack has.
    """
    said: dict[tuple[int, int], list[str]] = {}
    for page in read:
        for run in page.texts:
            if run.mark is not None:
                said.setdefault((page.number, run.mark), []).append(run.text)
    found: list[TagRead] = []
    waiting = [(kid, 0) for kid in reversed(_kids(dictionary(catalogue.get("/StructTreeRoot"))))]
    while waiting:
        thing, depth = waiting.pop()
        element = plain(thing)
        if not isinstance(element, dict) or "/S" not in element:
            continue
        if len(found) >= MOST_TAGS:
            raise TooMuch("its tagged structure has tens of thousands of elements")
        kids = _kids(element)
        on = pages.get(getattr(raw(element, "/Pg"), "idnum", 0), 0)
        text = [part for mark in _marks(kids, on, pages) for part in said.get(mark, ())]
        role, alt = str(plain(element.get("/S"))).lstrip("/"), plain(element.get("/Alt"))
        found.append(TagRead(on, depth, role, "" if alt is None else str(alt), " ".join(text)))
        if depth < DEEPEST_TAG:
            waiting += [(kid, depth + 1) for kid in reversed(kids)]
    return tuple(found)


def _kids(holder: Any) -> list[Any]:
    """Return what stands under /K: one thing or an array of them."""
    kids = plain(holder.get("/K"))
    return list(kids) if isinstance(kids, list) else [] if kids is None else [holder.raw_get("/K")]


def _marks(kids: list[Any], page: int, pages: dict[int, int]) -> Iterator[tuple[int, int]]:
    """Yield (page, number) of the marked contents among what stands under an element: bare numbers, or references (14.7.4.2)."""
    for kid in kids:
        thing = plain(kid)
        if isinstance(thing, int):
            yield page, int(thing)
        elif isinstance(thing, dict) and "/MCID" in thing:
            yield pages.get(getattr(raw(thing, "/Pg"), "idnum", 0), page), int(number(thing.get("/MCID"), -1))
