"""Parts from read pages: which cut lines are one piece, its letter, how many of it, from which board, and how large it is cut."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from math import dist

import shapely

from tests.rehearsal.cut_lines import WIDTH, middle_area
from tests.rehearsal.letters import Tag
from tests.rehearsal.notes import Note
from tests.rehearsal.pages import Line, ReadPage
from tests.rehearsal.thin_lines import Thin
from tests.rehearsal.tiles import Tile, taped, tiles_of

CUT = re.compile(r"\bcut (\d+)(?: ?\+ ?(\d+) spare)?")
THIS_IS = re.compile(r"\bthis is (\d+) of (\d+)|^(\d+) of (\d+)$")
BOARD = re.compile(r"^([^\d(×][^×]*?) (?:[\d/. ]+ in \()?(\d+(?:\.\d+)?) mm\b")
MIRRORED = re.compile(r"(\d+) mirrored")
STRIP = re.compile(r"^([A-Z]\d*) .*, cut (\d+)(?: ?\+ ?(\d+) spare)?: compass strip")
RADIUS = re.compile(r"radius .*?(\d+(?:\.\d+)?) mm")
STRIP_LONG = 120.0  # mm within a strip from its name to its radius
FOOT = " · version "
GUIDE_AREA = 600.0  # mm²: a bevel guide is no larger
GUIDE = "Bevel guide "
NESTED = re.compile(r"^Nested templates: ([A-Z]\d*(?:, [A-Z]\d*)+)")
THICKEST = 60.0  # mm of a board: more is a size
LABEL_WIDE, LABEL_TALL = 100.0, 60.0  # mm from a tag within which its words stand


@dataclass(frozen=True, slots=True, eq=False)
class ReadPart:
    """A template as read: its letter ("" where none was found), the area that its cut lines go round in true mm, how many are cut and
    how many spare, how many of them mirrored, the board's name and thickness (0 where not read), and the pages that show it.

    ``thin``: its dotted lines and glue lines; ``nest``: the letters of the templates that are printed within one another with it, where the
    inner one lies on the outer. ``cut_so``: the lines are the finished size as they stand, as those of a compass strip are.
    """

    letter: str
    area: shapely.Polygon
    pages: tuple[int, ...]
    count: int = 0
    spare: int = 0
    mirrored: int = 0
    board: str = ""
    thickness: float = 0.0
    copy: int = 0
    cut_so: bool = False
    words: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()
    notes: tuple[Note, ...] = ()
    thin: tuple[Thin, ...] = ()
    nest: tuple[str, ...] = ()


@dataclass(slots=True)
class Label:
    """The words that stand with a part's tags."""

    words: list[str] = field(default_factory=list)


def read_parts(pages: Iterable[ReadPage]) -> tuple[ReadPart, ...]:
    """Return the parts that pages of templates and tiles show."""
    pages = tuple(pages)
    labels: dict[str, Label] = {}
    found: list[ReadPart] = []
    tiles: list[Tile] = []
    for page in pages:
        for letter, words in _labels(page):
            labels.setdefault(letter, Label()).words += words
        own = tiles_of(page)
        tiles += own
        taken = {id(ink) for tile in own for ink in tile.inks}
        areas = _without_guides(page, [cut.area for cut in page.cuts if cut.closed and id(cut.ink) not in taken])
        nests = _nests(page)
        found += _lettered(
            replace(page, tags=off_tiles(page.tags, own, areas)), [*_with_holes(areas, len(nests) > 0)], nests
        )
        found += _strips(page)
    for whole in taped(tiles):
        letter = next(iter(whole.letters)) if len(whole.letters) == 1 else ""
        areas = [middle_area(ink) for ink in whole.inks if ink.interiors]
        if not areas:
            found.append(
                ReadPart(
                    letter, shapely.Polygon(), whole.pages, faults=(*whole.faults, "its tiles make no closed line")
                )
            )
        for area in _with_holes(areas):
            on = _on(area, whole.notes)
            thin = _thin_on(area, whole.thin)
            found.append(ReadPart(letter, area, whole.pages, faults=whole.faults, notes=on, thin=thin))
    scale = {page.number: page.scale or 1.0 for page in pages}
    feet = {_boards(line.text) for page in pages for line in page.lines if FOOT in line.text}
    foot = next(iter(feet)) if len(feet) == 1 else ()
    parts = (_said(part, labels, scale[part.pages[0]]) for part in found)
    if len(foot) != 1:
        return tuple(parts)
    (board, thickness), *_ = foot  # a pack of one board says it under every page, and not beside every part
    return tuple(part if part.thickness else replace(part, board=board, thickness=thickness) for part in parts)


def _without_guides(page: ReadPage, areas: list[shapely.Polygon]) -> list[shapely.Polygon]:
    """Return the areas but those that words beside them name as bevel guides, which are cut out and are no parts."""
    for line in page.lines:
        if line.text.startswith(GUIDE) and areas:
            small = [area for area in areas if area.area < GUIDE_AREA]
            nearest = min(small, key=lambda area: area.distance(shapely.Point(line.x, line.y)), default=None)
            areas = [area for area in areas if area is not nearest]
    return areas


def _boards(text: str) -> tuple[tuple[str, float], ...]:
    """Return the boards that a page's foot names before the version."""
    said = text.split(FOOT, maxsplit=1)[0].split(" · ")
    return tuple((found[1], float(found[2])) for part in said if (found := BOARD.match(part)))


def _nests(page: ReadPage) -> tuple[str, ...]:
    """Return the letters of templates that a page says to be nested in one another, the outermost first."""
    said = [found for line in page.lines if (found := NESTED.match(line.text))]
    return tuple(said[0][1].split(", ")) if said else ()


def _with_holes(areas: list[shapely.Polygon], nested: bool = False) -> Iterator[shapely.Polygon]:
    """Yield the outer areas less those of the lines within them; each as it is where they are ``nested``."""
    if nested:
        yield from sorted((area for area in areas if not area.is_empty), key=lambda area: -area.area)
        return
    areas = sorted((area for area in areas if not area.is_empty), key=lambda area: -area.area)
    outer: list[tuple[shapely.Polygon, list[shapely.Polygon]]] = []
    for area in areas:
        around = next((one for one in outer if one[0].contains(area)), None)
        if around is None:
            outer.append((area, []))
        else:
            around[1].append(area)
    for whole, holes in outer:
        yield shapely.Polygon(whole.exterior, [hole.exterior for hole in holes])


def off_tiles(tags: Iterable[Tag], tiles: Sequence[Tile], areas: Sequence[shapely.Polygon]) -> tuple[Tag, ...]:
    """Return the tags but those that stand on a tile, and in no whole template there: they name no template beside it."""
    hull = shapely.union_all([tile.hull for tile in tiles])
    return tuple(
        tag for tag in tags if not hull.contains(_middle(tag)) or any(area.contains(_middle(tag)) for area in areas)
    )


def _lettered(page: ReadPage, areas: list[shapely.Polygon], nest: tuple[str, ...] = ()) -> Iterator[ReadPart]:
    """Yield the parts of a page: each with the letter that stands in it, or with that of the nearest tag that stands in none."""
    named: dict[int, str] = {}
    outside: list[Tag] = []
    for tag in page.tags:
        within = [n for n, area in enumerate(areas) if shapely.Polygon(area.exterior).contains(_middle(tag))]
        if within:
            named[min(within, key=lambda n: areas[n].area)] = tag.letter
        else:
            outside.append(tag)
    inside, faults = dict(named), dict[int, str]()
    pairs = sorted(
        (areas[n].distance(_frame(tag)), n, i)
        for n in range(len(areas))
        if n not in named
        for i, tag in enumerate(outside)
    )
    used: set[int] = set()
    for _, n, i in pairs:
        if n not in named and i not in used:
            named[n] = outside[i].letter
            used.add(i)
    if nest and len(nest) == len(
        areas
    ):  # their page names them from the outermost, which a tag inside must not gainsay
        faults = {
            n: f"the tag {inside[n]} stands in it" for n, letter in enumerate(nest) if inside.get(n, letter) != letter
        }
        named = dict(enumerate(nest))
    for n, area in enumerate(areas):
        letter = named.get(n, "")
        own = nest if letter in nest else ()
        yield ReadPart(
            letter,
            area,
            (page.number,),
            faults=(faults[n],) if n in faults else (),
            notes=_on(area, page.notes),
            thin=_thin_on(area, page.thin),
            nest=own,
        )


def _strips(page: ReadPage) -> Iterator[ReadPart]:
    """Yield the discs of compass strips: by the radius that a strip says, for its lines are no outline."""
    for line in page.lines:
        strip = STRIP.search(line.text)
        if not strip:
            continue
        near = [
            (dist(line.middle, other.middle), found[1])
            for other in page.lines
            if (found := RADIUS.search(other.text)) and dist(line.middle, other.middle) < STRIP_LONG
        ]
        said = min(near)[1] if near else None
        if said:
            disc = shapely.Point(0.0, 0.0).buffer(float(said), quad_segs=256)
            count, spare = int(strip[2]), int(strip[3] or 0)
            yield ReadPart(strip[1], disc, (page.number,), count, spare, cut_so=True, words=(line.text,))


def _labels(page: ReadPage) -> Iterator[tuple[str, list[str]]]:
    """Yield the letter of each tag with the lines of words that stand with it."""
    owned: dict[int, list[Line]] = {}
    for line in page.lines:
        gaps = [(_away(tag, line), n) for n, tag in enumerate(page.tags)]
        gap, n = min(gaps, default=(LABEL_WIDE, -1))
        if gap < LABEL_WIDE:
            owned.setdefault(n, []).append(line)
    for n, lines in owned.items():
        yield page.tags[n].letter, [line.text for line in sorted(lines, key=lambda line: (-line.y, line.x))]


def _away(tag: Tag, line: Line) -> float:
    """Return how far (mm) a line begins from a tag, to whose right or under which it stands, as both are read."""
    if tag.turned != line.turned:
        return LABEL_WIDE
    if tag.turned:
        x, y = line.middle[1] - line.length / 2, -line.middle[0] - 0.3 * line.em
        left, right, top, bottom = tag.bottom, tag.top, -tag.left, -tag.right
    else:
        x, y, left, right, top, bottom = line.x, line.y, tag.left, tag.right, tag.top, tag.bottom
    after, down = x - left, top - y
    if after < -1.0 or down < -1.0 or after > LABEL_WIDE or down > LABEL_TALL:
        return LABEL_WIDE
    beside = y > bottom - 1.0
    return (x - right if beside else abs(after)) + (0.0 if beside else bottom - y)


def _said(part: ReadPart, labels: dict[str, Label], scale: float) -> ReadPart:
    """Return a part with what its label says, in true millimetres."""
    words = part.words or tuple(labels[part.letter].words if part.letter in labels else ())
    cuts = Counter((int(m[1]), int(m[2] or 0)) for text in words if (m := CUT.search(text)))
    boards = Counter((m[1], float(m[2])) for text in words if (m := BOARD.match(text)) and float(m[2]) < THICKEST)
    mirrored = next((int(m[1]) for text in words if (m := MIRRORED.search(text))), 0)
    count, spare = cuts.most_common(1)[0][0] if cuts else (part.count, part.spare)
    board, thickness = boards.most_common(1)[0][0] if boards else ("", 0.0)
    size = 1.0 if part.cut_so else 1.0 / scale
    return replace(
        part,
        area=shapely.transform(part.area, lambda points: points * size),
        count=count,
        spare=spare,
        mirrored=mirrored,
        board=board,
        thickness=thickness,
        words=words,
        notes=tuple(replace(note, x=note.x * size, y=note.y * size) for note in part.notes),
        thin=tuple(replace(thin, points=thin.points * size) for thin in part.thin),
    )


def _on(area: shapely.Polygon, notes: Iterable[Note]) -> tuple[Note, ...]:
    """Return the notes that stand on an area, its openings among it."""
    whole = shapely.Polygon(area.exterior)
    return tuple(note for note in notes if whole.contains(shapely.Point(note.x, note.y)))


def _thin_on(area: shapely.Polygon, thin: Iterable[Thin]) -> tuple[Thin, ...]:
    """Return the thin lines most of which lie on an area."""
    whole = shapely.Polygon(area.exterior)
    return tuple(one for one in thin if shapely.contains_xy(whole, one.points).mean() > 0.5)


def _middle(tag: Tag) -> shapely.Point:
    return shapely.Point((tag.left + tag.right) / 2, (tag.bottom + tag.top) / 2)


def _frame(tag: Tag) -> shapely.Polygon:
    return shapely.box(tag.left, tag.bottom, tag.right, tag.top)


def clearest(parts: Iterable[ReadPart]) -> dict[str, ReadPart]:
    """Return of each letter the print of which most marks were read: where each copy is printed, they are pieces of one part."""
    found: dict[str, ReadPart] = {}
    for part in parts:
        known = found.get(part.letter)
        if known is None or len(part.notes) > len(known.notes):
            found[part.letter] = part
    return found


def grown(area: shapely.Polygon, allowance: float) -> shapely.Polygon:
    """Return what is cut along a pencil line that runs ``allowance`` mm outside a template and inside its openings."""
    return area.buffer(allowance, join_style="mitre", mitre_limit=20.0) if allowance else area


__all__ = ["WIDTH", "ReadPart", "clearest", "grown", "read_parts"]
