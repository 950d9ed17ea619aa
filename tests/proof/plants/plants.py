"""The faults: each changes one thing of a pack as its pages were composed, or of the written file; the promises stay as they were."""

from collections.abc import Callable
from dataclasses import replace
from io import BytesIO
from itertools import pairwise
from random import Random
from typing import Any, TypeVar

import pikepdf

from publisher.basics import Box, Layer, Line, Path, Point
from publisher.pages import Drawn, LineStyle, Link, Pack, Stroke, StructureElement, Words

Plant = Callable[[Random, Pack], Pack | None]  # None: the pack has nothing of the kind
Edit = Callable[[pikepdf.Pdf], None]
Kind = TypeVar("Kind", bound=Drawn)
At = tuple[int, int]  # page from 0, place in what is drawn there
CUT = 0.45  # mm: lines to cut are wider


def _all(pack: Pack, kind: type[Kind], wanted: Callable[[Kind], bool] = lambda _: True) -> list[tuple[At, Kind]]:
    return [
        ((i, j), thing)
        for i, page in enumerate(pack.pages)
        for j, thing in enumerate(page.drawn)
        if isinstance(thing, kind) and wanted(thing)
    ]


def _put(pack: Pack, at: At, *things: Drawn) -> Pack:
    page, place = at
    drawn = pack.pages[page].drawn
    more = len(things) - 1

    def moved(element: StructureElement) -> StructureElement:
        kept = tuple(at + more * (at > place) for at in element.things if things or at != place)
        return replace(element, things=kept, kids=tuple(map(moved, element.kids)))

    structure = tuple(map(moved, pack.pages[page].structure))
    new = replace(pack.pages[page], drawn=(*drawn[:place], *things, *drawn[place + 1 :]), structure=structure)
    return replace(pack, pages=(*pack.pages[:page], new, *pack.pages[page + 1 :]))


def _one(
    kind: type[Kind], wanted: Callable[[Kind], bool], change: Callable[[Random, Kind], tuple[Drawn, ...]]
) -> Plant:
    def plant(random: Random, pack: Pack) -> Pack | None:
        found = _all(pack, kind, wanted)
        if not found:
            return None
        at, thing = random.choice(found)
        return _put(pack, at, *change(random, thing))

    return plant


def _digit(random: Random, words: Words) -> tuple[Drawn, ...]:
    place = random.choice([i for i, c in enumerate(words.text) if c.isdigit()])
    other = random.choice([d for d in "0123456789" if d != words.text[place]])
    return (replace(words, text=words.text[:place] + other + words.text[place + 1 :]),)


def _letter(random: Random, words: Words) -> tuple[Drawn, ...]:
    place = random.choice([i for i, c in enumerate(words.text) if c.isalpha()])
    other = random.choice([c for c in "aeinorst" if c != words.text[place].lower()])
    return (replace(words, text=words.text[:place] + other + words.text[place + 1 :]),)


def _away(random: Random) -> Point:
    return random.choice((-1.0, 1.0)) * random.uniform(4.0, 15.0), random.choice((-1.0, 1.0)) * random.uniform(
        4.0, 15.0
    )


def _moved_words(random: Random, words: Words) -> tuple[Drawn, ...]:
    x, y = _away(random)
    return (replace(words, x=words.x + x, y=words.y + y),)


def _path(path: Path, change: Callable[[Point], Point]) -> Path:
    """Return a path of straight lines through the changed ends of its edges."""
    points = [change(edge.start) for edge in path.edges] + [change(path.edges[-1].end)]
    lines = tuple(Line("", a, b) for a, b in pairwise(points) if a != b)
    return replace(path, edges=lines)


def _straight(stroke: Stroke) -> bool:
    return all(isinstance(edge, Line) for path in stroke.paths for edge in path.edges)


def _heavy(stroke: Stroke) -> bool:
    return stroke.style.width >= CUT and _straight(stroke) and bool(stroke.paths)


def _fine(stroke: Stroke) -> bool:
    return stroke.style.width < CUT and _straight(stroke) and bool(stroke.paths)


def _moved_stroke(random: Random, stroke: Stroke) -> tuple[Drawn, ...]:
    x, y = random.uniform(0.3, 3.0), random.uniform(0.3, 3.0)
    return (replace(stroke, paths=tuple(_path(p, lambda q: (q[0] + x, q[1] + y)) for p in stroke.paths)),)


def _scaled_stroke(random: Random, stroke: Stroke) -> tuple[Drawn, ...]:
    k = random.choice((0.97, 1.03))
    return (replace(stroke, paths=tuple(_path(p, lambda q: (q[0] * k, q[1] * k)) for p in stroke.paths)),)


def _narrower(random: Random, stroke: Stroke) -> tuple[Drawn, ...]:
    """One straight edge of a cut line, moved 0.045 mm: a slot 0.09 mm narrower is moved so on both sides."""
    place = random.randrange(len(stroke.paths))
    path = stroke.paths[place]
    edge = random.choice(path.edges)
    (ax, ay), (bx, by) = edge.start, edge.end
    long = max(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5, 1e-9)
    off = (-(by - ay) / long * 0.045, (bx - ax) / long * 0.045)
    ends = (edge.start, edge.end)
    new = _path(path, lambda q: (q[0] + off[0], q[1] + off[1]) if q in ends else q)
    return (replace(stroke, paths=(*stroke.paths[:place], new, *stroke.paths[place + 1 :])),)


def _gap(random: Random, stroke: Stroke) -> tuple[Drawn, ...]:
    """A gap of 0.3 mm in a cut line."""
    place = random.randrange(len(stroke.paths))
    path = stroke.paths[place]
    which = max(range(len(path.edges)), key=lambda i: _length(path.edges[i]))
    edge, k = path.edges[which], 0.15 / _length(path.edges[which])
    at = random.uniform(0.2, 0.8)
    (ax, ay), (bx, by) = edge.start, edge.end
    near, far = ((ax + (bx - ax) * t, ay + (by - ay) * t) for t in (at - k, at + k))
    edges = (Line("", far, edge.end), *path.edges[which + 1 :], *path.edges[:which], Line("", edge.start, near))
    if not path.closed:
        parts = ((*path.edges[:which], Line("", edge.start, near)), (Line("", far, edge.end), *path.edges[which + 1 :]))
        cut = tuple(replace(path, edges=part) for part in parts)
    else:
        cut = (replace(path, edges=edges, closed=False),)
    return (replace(stroke, paths=(*stroke.paths[:place], *cut, *stroke.paths[place + 1 :])),)


def _length(edge: Any) -> float:
    (ax, ay), (bx, by) = edge.start, edge.end
    return float(max(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5, 1e-9))


def _inside(width: float, dash: tuple[float, ...] = ()) -> Plant:
    """A line of up to 60 mm across a part."""

    def plant(random: Random, pack: Pack) -> Pack | None:
        outline = random.choice(pack.promises.outlines)
        box = Box.round(outline.pose.apply_all(outline.rings[0]))
        box = box if outline.window is None else box.common(outline.window)
        x, y = (box.left + box.right) / 2, (box.bottom + box.top) / 2
        long = min(60.0, 0.5 * max(box.width, box.height))
        ends = (
            ((x - long / 2, y), (x + long / 2, y))
            if box.width >= box.height
            else ((x, y - long / 2), (x, y + long / 2))
        )
        page = pack.pages[outline.page - 1]
        line = Stroke(LineStyle("planted", width, dash), (Path((Line("", *ends),), False),), Layer.OUTLINES)
        return _put(pack, (outline.page - 1, len(page.drawn)), line)

    return plant


def _exchanged(wanted: Callable[[Words], bool]) -> Plant:
    """The words of two places of one page exchanged."""

    def plant(random: Random, pack: Pack) -> Pack | None:
        pages = list(range(len(pack.pages)))
        random.shuffle(pages)
        for page in pages:
            found = [(at, w) for at, w in _all(pack, Words, wanted) if at[0] == page]
            pairs = [(a, b) for a in found for b in found if a[1].text < b[1].text]
            if pairs:
                (one, first), (two, second) = random.choice(pairs)
                return _put(_put(pack, one, replace(first, text=second.text)), two, replace(second, text=first.text))
        return None

    return plant


def _pages_exchanged(random: Random, pack: Pack) -> Pack | None:
    """All words of two pages exchanged, furniture included."""
    if len(pack.pages) < 2:
        return None
    a, b = random.sample(range(len(pack.pages)), 2)

    def with_words_of(page: Any, other: Any) -> Any:
        own = [thing for thing in page.drawn if not isinstance(thing, Words)]
        return replace(page, drawn=(*own, *(thing for thing in other.drawn if isinstance(thing, Words))), structure=())

    pages = list(pack.pages)
    pages[a], pages[b] = with_words_of(pages[a], pages[b]), with_words_of(pages[b], pages[a])
    return replace(pack, pages=tuple(pages))


def _bookmark(random: Random, pack: Pack) -> Pack | None:
    if len(pack.bookmarks) < 2:
        return None
    place = random.randrange(len(pack.bookmarks))
    mark = pack.bookmarks[place]
    other = replace(mark, page=mark.page % len(pack.pages) + 1)
    return replace(pack, bookmarks=(*pack.bookmarks[:place], other, *pack.bookmarks[place + 1 :]))


def _link(random: Random, pack: Pack) -> Pack | None:
    found = _all(pack, Link)
    if not found:
        return None
    at, link = random.choice(found)
    return _put(pack, at, replace(link, page=link.page % len(pack.pages) + 1))


def _restructured(change: Callable[[Random, tuple[StructureElement, ...]], tuple[StructureElement, ...]]) -> Plant:
    """The structure of one page changed, of those that have two elements or more."""

    def plant(random: Random, pack: Pack) -> Pack | None:
        pages = [i for i, page in enumerate(pack.pages) if len(page.structure) > 1]
        if not pages:
            return None
        page = random.choice(pages)
        new = replace(pack.pages[page], structure=change(random, pack.pages[page].structure))
        return replace(pack, pages=(*pack.pages[:page], new, *pack.pages[page + 1 :]))

    return plant


def _exchanged_elements(random: Random, found: tuple[StructureElement, ...]) -> tuple[StructureElement, ...]:
    place = random.randrange(len(found) - 1)
    return (*found[:place], found[place + 1], found[place], *found[place + 2 :])


def _element_left_out(random: Random, found: tuple[StructureElement, ...]) -> tuple[StructureElement, ...]:
    place = random.randrange(len(found))
    return (*found[:place], *found[place + 1 :])


def _other_role(random: Random, found: tuple[StructureElement, ...]) -> tuple[StructureElement, ...]:
    place = random.randrange(len(found))
    role = "H2" if found[place].role != "H2" else "P"
    return (*found[:place], replace(found[place], role=role), *found[place + 1 :])


def _other_alt(random: Random, found: tuple[StructureElement, ...]) -> tuple[StructureElement, ...]:
    figures = [i for i, element in enumerate(found) if element.alt]
    if not figures:
        return _other_role(random, found)
    place = random.choice(figures)
    return (*found[:place], replace(found[place], alt="A picture"), *found[place + 1 :])


def _is_letter(words: Words) -> bool:
    return 0 < len(words.text) <= 2 and words.text[:1].isupper()


PLANTS: dict[str, Plant] = {
    "number retyped": _one(Words, lambda w: any(c.isdigit() for c in w.text), _digit),
    "letter retyped": _one(Words, lambda w: any(c.isalpha() for c in w.text), _letter),
    "words deleted": _one(Words, lambda w: bool(w.text.strip()), lambda *_: ()),
    "words moved": _one(Words, lambda w: bool(w.text.strip()), _moved_words),
    "words twice": _one(Words, lambda w: bool(w.text.strip()), lambda r, w: (w, *_moved_words(r, w))),
    "letters exchanged": _exchanged(_is_letter),
    "words exchanged": _exchanged(lambda w: bool(w.text.strip())),
    "pages exchanged": _pages_exchanged,
    "cut line deleted": _one(Stroke, _heavy, lambda *_: ()),
    "cut line moved": _one(Stroke, _heavy, _moved_stroke),
    "cut line scaled": _one(Stroke, _heavy, _scaled_stroke),
    "slot narrower by 0.09 mm": _one(Stroke, _heavy, _narrower),
    "gap of 0.3 mm": _one(Stroke, _heavy, _gap),
    "fine line deleted": _one(Stroke, _fine, lambda *_: ()),
    "fine line moved": _one(Stroke, _fine, _moved_stroke),
    "fine line scaled": _one(Stroke, _fine, _scaled_stroke),
    "stray line of 0.3 mm": _inside(0.3),
    "stray line of 0.18 mm": _inside(0.18),
    "false score line": _inside(0.35, (2.8, 1.05)),
    "bookmark": _bookmark,
    "link": _link,
    "structure in another order": _restructured(_exchanged_elements),
    "structure without an element": _restructured(_element_left_out),
    "another type of element": _restructured(_other_role),
    "other words for a figure": _restructured(_other_alt),
}


def _transfer(pdf: pikepdf.Pdf) -> None:
    white = pikepdf.Dictionary(FunctionType=2, Domain=[0, 1], C0=[1], C1=[1], N=1)
    for page in pdf.pages:
        page.Resources.ExtGState = pikepdf.Dictionary(Pale=pikepdf.Dictionary(TR=white))
        page.contents_add(b"/Pale gs", prepend=True)


def _inverting_grey(pdf: pikepdf.Pdf) -> None:
    function = pikepdf.Dictionary(FunctionType=2, Domain=[0, 1], C0=[1], C1=[0], N=1)
    space = pikepdf.Array([pikepdf.Name.Separation, pikepdf.Name.Grey, pikepdf.Name.DeviceGray, function])
    for page in pdf.pages:
        page.Resources.ColorSpace = pikepdf.Dictionary(DefaultGray=space)


def _expression(pdf: pikepdf.Pdf) -> None:
    group = pdf.Root.OCProperties.OCGs[0]
    never = pikepdf.Dictionary(Type=pikepdf.Name.OCMD, VE=pikepdf.Array([pikepdf.Name.Not, group]))
    for page in pdf.pages:
        if "/Properties" not in page.Resources:
            page.Resources.Properties = pikepdf.Dictionary()
        page.Resources.Properties.Never = never
        page.contents_add(b"/OC /Never BDC", prepend=True)
        page.contents_add(b"EMC")


EDITS: dict[str, Edit] = {
    "blanked by a transfer function": _transfer,
    "blanked by another grey": _inverting_grey,
    "blanked by an expression": _expression,
}


def edited(pdf: bytes, edit: Edit) -> bytes:
    """Return a written file with something changed by pikepdf."""
    out = BytesIO()
    with pikepdf.open(BytesIO(pdf)) as opened:
        edit(opened)
        opened.save(out)
    return out.getvalue()
