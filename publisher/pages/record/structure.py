"""What the things on a page are to a reader who cannot see it: headings, paragraphs, lists, tables, figures with words in their place."""

from collections.abc import Iterable

from publisher.basics import record
from publisher.pages.model import Drawn, Element, Picture, Role, Stroke, Words
from publisher.pages.sheet import FIGURE

ROLES: dict[str, Role] = {"h1": "H1", "h2": "H2", "lbl": "Lbl", "li": "LBody", "th": "TH", "td": "TD"}
ON_ONE_LINE = 0.25  # of the em, that the baselines of a step's number and its title may lie apart


@record
class _Group:
    """Things of one tag that belong together, by their places among what is drawn."""

    tag: str
    things: tuple[int, ...]
    first: Drawn


def structure_of(drawn: tuple[Drawn, ...], bare: str) -> tuple[Element, ...]:
    """Return the elements of a page in the order of reading: its title, then what it shows in the order in which it is drawn.

    ``bare``: words for figures that bring none of their own. What stands in no element is furniture, or an ornament.
    """
    groups = _groups(drawn)
    titles = [group for group in groups if group.tag == "h1"]
    return tuple(_elements((*titles, *(group for group in groups if group.tag != "h1")), bare))


def _groups(drawn: tuple[Drawn, ...]) -> list[_Group]:
    found: list[_Group] = []
    figures: dict[str, int] = {}  # where the figure of a tag stands: its things may be drawn with others between them
    for place, thing in enumerate(drawn):
        tag = _tag(thing)
        if tag in {"", "artifact"}:
            continue
        at = figures.get(tag) if tag.startswith(FIGURE) else len(found) - 1 if _goes_on(found, tag, thing) else None
        if at is None:
            if tag.startswith(FIGURE):
                figures[tag] = len(found)
            found.append(_Group(tag, (place,), thing))
        else:
            found[at] = _Group(tag, (*found[at].things, place), found[at].first)
    return found


def _tag(thing: Drawn) -> str:
    if isinstance(thing, Picture):
        return f"{FIGURE}:{thing.alt}"
    return getattr(thing, "tag", "") if not isinstance(thing, Stroke) or thing.paths else ""


def _goes_on(found: list[_Group], tag: str, thing: Drawn) -> bool:
    """Say whether words go on with those before: in their paragraph, or as a heading on one line with its number."""
    if not found or found[-1].tag != tag or not isinstance(thing, Words):
        return False
    before = found[-1].first
    level = isinstance(before, Words) and abs(before.y - thing.y) < ON_ONE_LINE * thing.size
    return thing.goes_on or (tag == "h2" and level and isinstance(before, Words) and before.text.isdigit())


def _elements(groups: tuple[_Group, ...], bare: str) -> Iterable[Element]:
    """Yield an element for each group; items in a row as one list, cells in a row as one table."""
    at = 0
    while at < len(groups):
        end = at + 1
        tag = groups[at].tag
        if tag in {"li", "lbl"}:
            while end < len(groups) and groups[end].tag in {"li", "lbl"}:
                end += 1
            yield Element("L", kids=tuple(_items(groups[at:end])))
        elif tag in {"th", "td"}:
            while end < len(groups) and groups[end].tag in {"th", "td"} and not _begins(groups[end - 1], groups[end]):
                end += 1
            yield Element("Table", kids=tuple(_rows(groups[at:end])))
        elif tag.startswith(FIGURE):
            yield Element("Figure", groups[at].things, alt=tag.partition(":")[2] or bare)
        else:
            yield _leaf(groups[at])
        at = end


def _leaf(group: _Group) -> Element:
    return Element(ROLES.get(group.tag, "P"), group.things)


def _items(groups: tuple[_Group, ...]) -> Iterable[Element]:
    """Yield the items of a list: each with its number, where it has one."""
    label: tuple[Element, ...] = ()
    for group in groups:
        if group.tag == "lbl":
            label = (*label, _leaf(group))
        else:
            yield Element("LI", kids=(*label, _leaf(group)))
            label = ()
    if label:
        yield Element("LI", kids=label)


def _cell(group: _Group) -> tuple[int, int]:
    """Return a cell's row and column; the headings are row -1."""
    return (group.first.cell or (0, 0)) if isinstance(group.first, Words) else (0, 0)


def _begins(before: _Group, group: _Group) -> bool:
    """Say whether a cell begins another table than the one before: its row does not come after that one's."""
    return _cell(group) <= _cell(before)


def _rows(groups: tuple[_Group, ...]) -> Iterable[Element]:
    """Yield the rows of a table, each with all its cells: those without a word as well."""
    across = max(_cell(group)[1] for group in groups) + 1
    rows: dict[int, dict[int, _Group]] = {}
    for group in groups:
        row, column = _cell(group)
        rows.setdefault(row, {})[column] = group
    for row, cells in rows.items():
        empty = Element("TH" if row < 0 else "TD")
        yield Element("TR", kids=tuple(_leaf(cells[k]) if k in cells else empty for k in range(across)))
