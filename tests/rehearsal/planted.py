"""Packs spoiled in one place, which a rehearsal must not build as meant: each function changes one thing on the composed pages.

They change what is printed and nothing else. None where a pack has nothing of the kind.
"""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import product

from publisher.basics import Path, Pose
from publisher.pages import Drawn, Fill, Pack, Page, Picture, Stroke, Words
from publisher.pages.type import HEADING
from tests.rehearsal.compare import TRUE
from tests.rehearsal.compare_built import Rehearsed

Plant = Callable[[Pack], Pack | None]
TURN = re.compile(r"^(\d+(?:\.\d+)?)°$")
BEVEL = re.compile(r"^(?:bevel )?\d+(?:\.\d+)?°")
TAG = 6.0  # mm of the em: words as large are titles and the letters of tags
TITLES = 10.0  # no title of a page with parts is set as large
SMALL = 3.0  # mm of the em: labels of what is put together are smaller
LABEL = re.compile(r"^\d+ × [A-Z]")
FOOT = 20.0  # mm: below it stands a page's foot
GLUE_AREA = 9.0  # mm from a tile's edge
WITH_PARTS = ("templates", "tiles", "true")  # kinds of pages
AWAY = 1.0  # mm by which a mark is moved


def _changed(pack: Pack, change: Callable[[Drawn], Drawn | None]) -> Pack | None:
    """Return the pack with a change of single things of its pages; None where nothing changed."""
    pages = []
    for page in pack.pages:
        drawn = tuple(other for thing in page.drawn if (other := change(thing)) is not None)
        pages.append(page if drawn == page.drawn else replace(page, drawn=drawn, structure=()))
    return None if tuple(pages) == pack.pages else replace(pack, pages=tuple(pages))


def _first(
    pack: Pack,
    wanted: Callable[[Drawn], bool],
    change: Callable[[Drawn], Drawn | None],
    kinds: Sequence[str] = WITH_PARTS,
) -> Pack | None:
    """Return the pack with a change of the first thing that is wanted, of a page with parts or of other ``kinds``."""
    for n, page in enumerate(pack.pages):
        if page.kind not in kinds:
            continue
        for i, thing in enumerate(page.drawn):
            if wanted(thing):
                other = change(thing)
                more = () if other is None else (other,)
                drawn = (*page.drawn[:i], *more, *page.drawn[i + 1 :])
                new = replace(page, drawn=drawn, structure=())
                return replace(pack, pages=(*pack.pages[:n], new, *pack.pages[n + 1 :]))
    return None


def _letters(pack: Pack) -> list[str]:
    tags = (t for p in pack.pages for t in p.drawn if isinstance(t, Words) and _is_tag(t))
    return sorted({tag.text for tag in tags})


def _is_tag(thing: Drawn) -> bool:
    return isinstance(thing, Words) and thing.size > TAG and len(thing.text) <= 2 and thing.text[:1].isupper()


def letters_exchanged(pack: Pack) -> Pack | None:
    """Two parts bear each other's letter."""
    letters = _letters(pack)
    if len(letters) < 2:
        return None
    other = {letters[0]: letters[1], letters[1]: letters[0]}
    return _changed(pack, lambda t: replace(t, text=other.get(t.text, t.text)) if _is_tag(t) else t)


def letter_missing(pack: Pack) -> Pack | None:
    """A part has no letter."""
    letters = _letters(pack)
    if not letters:
        return None
    return _changed(pack, lambda t: None if _is_tag(t) and t.text == letters[0] else t)


def _outline(thing: Drawn) -> bool:
    return isinstance(thing, Stroke) and thing.style.name == "cut"


def _recut(change: Callable[[tuple[Path, ...]], tuple[Path, ...]], wanted: Callable[[Stroke], bool]) -> Plant:
    def plant(pack: Pack) -> Pack | None:
        return _first(pack, lambda t: _outline(t) and wanted(t), lambda t: replace(t, paths=change(t.paths)))

    return plant


def _flipped(paths: tuple[Path, ...]) -> tuple[Path, ...]:
    box = paths[0].box
    return tuple(path.placed(Pose(box.left + box.right, 0.0, 0.0, True)) for path in paths)


def _larger(paths: tuple[Path, ...]) -> tuple[Path, ...]:
    (x, y), scale = paths[0].points[0], 1.01
    return tuple(
        path.carried(lambda p: (x + scale * (p[0] - x), y + scale * (p[1] - y)), False, scale) for path in paths
    )


def _askew(stroke: Stroke) -> bool:
    """Say whether an outline is another when it is turned over: its points lie unlike on both sides of its middle."""
    box = stroke.paths[0].box
    points = {(round(x - box.left, 2), round(y - box.bottom, 2)) for x, y in stroke.paths[0].points}
    width, height = round(box.width, 2), round(box.height, 2)
    flips = ({(round(width - x, 2), y) for x, y in points}, {(x, round(height - y, 2)) for x, y in points})
    return points not in flips and stroke.clip is None


def thin_cut_line(pack: Pack) -> Pack | None:
    """A part's cut line is as thin as a drawn one."""
    return _first(pack, _outline, lambda t: replace(t, style=replace(t.style, width=0.25)))


def _is_mark(thing: Drawn) -> bool:
    return (
        isinstance(thing, Stroke)
        and thing.style.name == "gauge"
        and len(thing.paths) == 3
        and len(thing.paths[1].points) == 2
    )


def mark_moved(pack: Pack) -> Pack | None:
    """A match mark of a tile stands a millimetre off."""
    pose = Pose(0.0, AWAY)
    return _first(pack, _is_mark, lambda t: replace(t, paths=tuple(path.placed(pose) for path in t.paths)))


def mark_misnamed(pack: Pack) -> Pack | None:
    """On one tile, a match mark bears the name of the next."""
    return _first(pack, lambda t: _named(t, "·a"), lambda t: replace(t, text=t.text[:-1] + "b"))


def _named(thing: Drawn, end: str) -> bool:
    return isinstance(thing, Words) and thing.text.endswith(end) and "-" in thing.text


def _retold(old: str, new: str) -> Plant:
    def other(thing: Drawn) -> Drawn:
        plain = isinstance(thing, Words) and thing.text.replace("\u00a0", " ")
        return replace(thing, text=plain.replace(old, new)) if plain and old in plain else thing

    return lambda pack: _changed(pack, other)


def _match_letter(thing: Drawn) -> bool:
    return isinstance(thing, Words) and len(thing.text) == 1 and thing.text.islower() and thing.size < 3.3


def match_letter_changed(pack: Pack) -> Pack | None:
    """An edge bears a match letter that no other edge has."""
    return _first(pack, _match_letter, lambda t: replace(t, text="z"))


def match_letters_exchanged(pack: Pack) -> Pack | None:
    """On one page, the edges of one letter bear another one, and the other way round."""
    for n, page in enumerate(pack.pages):
        letters = sorted({t.text for t in page.drawn if isinstance(t, Words) and _match_letter(t)})
        if page.kind in WITH_PARTS and len(letters) > 1:
            other = {letters[0]: letters[1], letters[1]: letters[0]}
            drawn = tuple(
                replace(t, text=other.get(t.text, t.text)) if isinstance(t, Words) and _match_letter(t) else t
                for t in page.drawn
            )
            new = replace(page, drawn=drawn, structure=())
            return replace(pack, pages=(*pack.pages[:n], new, *pack.pages[n + 1 :]))
    return None


def pictured_letter_changed(pack: Pack) -> Pack | None:
    """In a picture of what is put together, one edge bears a letter that its neighbour has not."""
    return _first(pack, _match_letter, lambda t: replace(t, text="z"), ("steps",))


def tops_left_out(pack: Pack) -> Pack | None:
    """Nothing says which end of a part is up."""
    return _changed(pack, lambda t: None if isinstance(t, Words) and t.text == "top" else t)


def counts_changed(pack: Pack) -> Pack | None:
    """Every template of two copies asks for three."""
    return _retold("cut 2", "cut 3")(pack) or _retold("cut 1", "cut 3")(pack)


def acts_exchanged(pack: Pack) -> Pack | None:
    """Where a step shows two acts or more, the first and the second bear each other's number."""
    other = {"1": "2", "2": "1"}

    def swapped(thing: Drawn) -> Drawn:
        number = isinstance(thing, Words) and thing.text in other and abs(thing.size - HEADING.size) < 0.01
        return replace(thing, text=other[thing.text]) if number else thing

    return _changed(pack, swapped)


def _is_number(thing: Drawn, text: str) -> bool:
    return isinstance(thing, Words) and thing.text == text and abs(thing.size - HEADING.size) < 0.01


def pictures_exchanged(pack: Pack) -> Pack | None:
    """Where a step shows what is put together in two pictures beside each other, each stands beside the other's number."""
    for n, page in enumerate(pack.pages):
        ones, twos = ([t for t in page.drawn if isinstance(t, Words) and _is_number(t, text)] for text in "12")
        for one, two in product(ones, twos):
            if page.kind != "steps" or abs(one.y - two.y) > 1.0 or two.x < one.x:
                continue
            heads = [t.y for t in page.drawn if isinstance(t, Words) and abs(t.size - HEADING.size) < 0.01]
            low = max((y for y in heads if y < one.y - 1.0), default=FOOT) + HEADING.size
            cells = [(left, low, left + two.x - one.x - 1.0, one.y + HEADING.size) for left in (one.x, two.x)]
            if all(any(_shows_label(t) and _lies_in(t, cell) for t in page.drawn) for cell in cells):
                drawn = tuple(_moved(t, cells, two.x - one.x) if t not in (one, two) else t for t in page.drawn)
                new = replace(page, drawn=drawn, structure=())
                return replace(pack, pages=(*pack.pages[:n], new, *pack.pages[n + 1 :]))
    return None


def _shows_label(thing: Drawn) -> bool:
    return isinstance(thing, Words) and bool(LABEL.match(thing.text.replace("\u00a0", " "))) and thing.size < SMALL


def _lies_in(thing: Drawn, cell: tuple[float, float, float, float]) -> bool:
    if isinstance(thing, Picture):
        return False
    left, low, right, high = cell
    points = [(thing.x, thing.y)] if isinstance(thing, Words) else [p for path in thing.paths for p in path.points]
    return all(left < x < right and low < y < high for x, y in points)


def _moved(thing: Drawn, cells: Sequence[tuple[float, float, float, float]], by: float) -> Drawn:
    for cell, off in zip(cells, (by, -by), strict=True):
        if isinstance(thing, Words) and _lies_in(thing, cell):
            return replace(thing, x=thing.x + off)
        if isinstance(thing, Stroke | Fill) and _lies_in(thing, cell):
            clip = thing.clip and replace(thing.clip, left=thing.clip.left + off, right=thing.clip.right + off)
            return replace(thing, paths=tuple(path.placed(Pose(off, 0.0)) for path in thing.paths), clip=clip)
    return thing


def turn_changed(pack: Pack) -> Pack | None:
    """A stair's layers are to be turned five degrees farther."""

    def other(thing: Drawn) -> Drawn:
        found = TURN.match(thing.text) if isinstance(thing, Words) else None
        return replace(thing, text=f"{float(found[1]) + 5.0:g}°") if found and float(found[1]) > 0.0 else thing

    return _changed(pack, other)


def bevels_left_out(pack: Pack) -> Pack | None:
    """Nothing says that edges are bevelled."""
    return _changed(pack, lambda t: None if isinstance(t, Words) and BEVEL.match(t.text) else t)


def glue_lines_left_out(pack: Pack) -> Pack | None:
    """No template shows where another part is glued to it."""
    return _changed(pack, lambda t: None if isinstance(t, Stroke) and t.style.name == "glue" else t)


def dotted_lines_left_out(pack: Pack) -> Pack | None:
    """No template shows a dotted line; those at the glue areas of tiles stay, without which a tile has its grey and its words still."""
    pages = []
    for page in pack.pages:
        shows = page.kind in WITH_PARTS
        drawn = tuple(
            t
            for t in page.drawn
            if not (shows and isinstance(t, Stroke) and t.style.name == "reference" and not _at_seam(t, page))
        )
        pages.append(page if drawn == page.drawn else replace(page, drawn=drawn, structure=()))
    return None if tuple(pages) == pack.pages else replace(pack, pages=tuple(pages))


def _at_seam(stroke: Stroke, page: Page) -> bool:
    """Say whether a stroke runs along an edge of a tile's window, within its glue area."""
    points = [p for path in stroke.paths for p in path.points]
    for box in (tile.window for tile in page.tiles if tile.window is not None):
        sides = [[abs(x - at) for x, _ in points] for at in (box.left, box.right)]
        sides += [[abs(y - at) for _, y in points] for at in (box.bottom, box.top)]
        if any(max(far) < GLUE_AREA and max(far) - min(far) < 0.1 for far in sides):
            return True
    return False


PLANTED: dict[str, Plant] = {
    "letters exchanged": letters_exchanged,
    "letter missing": letter_missing,
    "side flipped": _recut(_flipped, _askew),
    "one per cent larger": _recut(_larger, lambda t: t.clip is None),
    "openings left out": _recut(lambda paths: paths[:1], lambda t: len(t.paths) > 1 and t.clip is None),
    "cut line thin": thin_cut_line,
    "match mark a millimetre off": mark_moved,
    "match mark misnamed": mark_misnamed,
    "match letter changed": match_letter_changed,
    "match letter of a picture changed": pictured_letter_changed,
    "match letters exchanged": match_letters_exchanged,
    "tops left out": tops_left_out,
    "another count": counts_changed,
    "acts out of order": acts_exchanged,
    "pictures of acts exchanged": pictures_exchanged,
    "another turn": turn_changed,
    "bevels left out": bevels_left_out,
    "glue lines left out": glue_lines_left_out,
    "dotted lines left out": dotted_lines_left_out,
    "another board": _retold("5.00 mm", "6.00 mm"),
    "another pencil": _retold("its line runs 0.4 mm", "its line runs 1.4 mm"),
}


def planted(pack: Pack) -> Iterator[tuple[str, Pack]]:
    """Yield every spoiled pack with the name of what is wrong."""
    for name, plant in PLANTED.items():
        spoiled = plant(pack)
        if spoiled is not None:
            yield name, spoiled


def worse(good: Rehearsed, spoiled: Rehearsed) -> tuple[str, ...]:
    """Return, in words, what of a spoiled pack is not as meant that is so in the good one."""
    reasons = []
    meant = {part.letter for part in good.parts if part.reached}
    for part in spoiled.parts:
        if not part.reached and (part.letter in meant or part.mean is None):
            far = "" if part.worst is None or part.worst <= TRUE else f"{part.worst:.2f} mm off"
            reasons.append(f"part {part.letter}: {', '.join((far, *part.wrong)).strip(', ')}")
    for number, (was, now) in enumerate(zip(good.assemblies, spoiled.assemblies, strict=True), 1):
        if was is None:
            continue
        if now is None or now.found - now.stray < was.found - was.stray:
            found, stray = (now.found, now.stray) if now else (0, 0)
            reasons.append(f"assembly {number}: {found} of {was.panels} boards stand, {stray} where none belongs")
        elif now.worst > max(was.worst, TRUE):
            reasons.append(f"assembly {number}: {now.worst:.2f} mm off")
    new = set(spoiled.left) - set(good.left)
    return (*reasons, *sorted(new))
