"""What the things on a page are to a reader who cannot see it: headings, paragraphs, lists, tables, figures with words in their place."""

from collections.abc import Iterable, Iterator

from publisher.basics import TagPromise, record
from publisher.pages.model import Drawn, Picture, Role, Stroke, StructureElement, Words
from publisher.pages.sheet import FIGURE

ROLES: dict[str, Role] = {"h1": "H1", "h2": "H2", "lbl": "Lbl", "li": "LBody", "th": "TH", "td": "TD"}
ON_ONE_LINE = 0.25  # of the em, that the baselines of a step's number and its title may lie apart


@record
class _TagGroup:
    """Things of one tag that belong together, by their places among what is drawn."""

    tag: str
    things: tuple[int, ...]
    first: Drawn


def structure_of(drawn: tuple[Drawn, ...], bare: str) -> tuple[StructureElement, ...]:
    """Return the elements of a page in the order of reading: its title, then what it shows in the order in which it is drawn.

    ``bare``: words for figures that bring none of their own. What stands in no element is furniture, or an ornament.
    """
    groups = _groups(drawn)
    titles = [group for group in groups if group.tag == "h1"]
    return tuple(_elements((*titles, *(group for group in groups if group.tag != "h1")), bare))


def tag_promises(
    page: int, elements: Iterable[StructureElement], drawn: tuple[Drawn, ...], depth: int = 0
) -> Iterator[TagPromise]:
    """Yield a promise for each element of a page (from 1), with the words that stand in it, before those under it."""
    for element in elements:
        said = (thing.text for place in element.things if isinstance(thing := drawn[place], Words))
        yield TagPromise(page, depth, element.role, element.alt, " ".join(said))
        yield from tag_promises(page, element.kids, drawn, depth + 1)


def _groups(drawn: tuple[Drawn, ...]) -> list[_TagGroup]:
    found: list[_TagGroup] = []
    figures: dict[str, int] = {}  # where the figure of a tag stands: its things may be drawn with others between them
    for place, thing in enumerate(drawn):
        tag = _tag(thing)
        if tag in {"", "artifact"}:
            continue
        at = figures.get(tag) if tag.startswith(FIGURE) else len(found) - 1 if _goes_on(found, tag, thing) else None
        if at is None:
            if tag.startswith(FIGURE):
                figures[tag] = len(found)
            found.append(_TagGroup(tag, (place,), thing))
        else:
            found[at] = _TagGroup(tag, (*found[at].things, place), found[at].first)
    return found


def _tag(thing: Drawn) -> str:
    if isinstance(thing, Picture):
        return f"{FIGURE}:{thing.alt}"
    return getattr(thing, "tag", "") if not isinstance(thing, Stroke) or thing.paths else ""


def _goes_on(found: list[_TagGroup], tag: str, thing: Drawn) -> bool:
    """Say whether words go on with those before: in their paragraph, or as a heading on one line with its number."""
    if not found or found[-1].tag != tag or not isinstance(thing, Words):
        return False
    before = found[-1].first
    level = isinstance(before, Words) and abs(before.y - thing.y) < ON_ONE_LINE * thing.size
    return thing.goes_on or (tag == "h2" and level and isinstance(before, Words) and before.text.isdigit())


def _elements(groups: tuple[_TagGroup, ...], bare: str) -> Iterable[StructureElement]:
    """Yield an element for each group; items in a row as one list, cells in a row as one table."""
    at = 0
    while at < len(groups):
        end = at + 1
        tag = groups[at].tag
        if tag in {"li", "lbl"}:
            while end < len(groups) and groups[end].tag in {"li", "lbl"}:
                end += 1
            yield StructureElement("L", kids=tuple(_items(groups[at:end])))
        elif tag in {"th", "td"}:
            while end < len(groups) and groups[end].tag in {"th", "td"} and not _begins(groups[end - 1], groups[end]):
                end += 1
            yield StructureElement("Table", kids=tuple(_rows(groups[at:end])))
        elif tag.startswith(FIGURE):
            yield StructureElement("Figure", groups[at].things, alt=tag.partition(":")[2] or bare)
        else:
            yield _leaf(groups[at])
        at = end


def _leaf(group: _TagGroup) -> StructureElement:
    return StructureElement(ROLES.get(group.tag, "P"), group.things)


def _items(groups: tuple[_TagGroup, ...]) -> Iterable[StructureElement]:
    """Yield the items of a list: each with its number, where it has one."""
    label: tuple[StructureElement, ...] = ()
    for group in groups:
        if group.tag == "lbl":
            label = (*label, _leaf(group))
        else:
            yield StructureElement("LI", kids=(*label, _leaf(group)))
            label = ()
    if label:
        yield StructureElement("LI", kids=label)


def _cell(group: _TagGroup) -> tuple[int, int]:
    """Return a cell's row and column; the headings are row -1."""
    return (group.first.cell or (0, 0)) if isinstance(group.first, Words) else (0, 0)


def _begins(before: _TagGroup, group: _TagGroup) -> bool:
    """Say whether a cell begins another table than the one before: its row does not come after that one's."""
    return _cell(group) <= _cell(before)


def _rows(groups: tuple[_TagGroup, ...]) -> Iterable[StructureElement]:
    """Yield the rows of a table, each with all its cells: those without a word as well."""
    across = max(_cell(group)[1] for group in groups) + 1
    rows: dict[int, dict[int, _TagGroup]] = {}
    for group in groups:
        row, column = _cell(group)
        rows.setdefault(row, {})[column] = group
    for row, cells in rows.items():
        empty = StructureElement("TH" if row < 0 else "TD")
        yield StructureElement("TR", kids=tuple(_leaf(cells[k]) if k in cells else empty for k in range(across)))
