"""Style sheets of a drawing: rules with type, class and id selectors, and the cascade to each element (CSS 2.1, section 6.4)."""

import re

from publisher.basics import record
from publisher.geometry.drawings.tree import Element, Unreadable, external

INHERITED = (
    "fill",
    "fill-rule",
    "fill-opacity",
    "clip-rule",
    "stroke",
    "stroke-width",
    "stroke-dasharray",
    "visibility",
    "font-size",
)
_SHAPES = ("x", "y", "width", "height", "cx", "cy", "r", "rx", "ry")
_OTHERS = ("display", "opacity", "clip-path", "mask", "filter", "transform", "transform-origin", "overflow")
_MARKERS = ("marker-start", "marker-mid", "marker-end", "marker")
_KNOWN = frozenset((*INHERITED, *_SHAPES, *_OTHERS, *_MARKERS))
_ONLY_STYLE = ("marker",)  # a shorthand has no attribute of its own
MOST_WORK = 400_000  # rules tried on elements
_COMPOUND = re.compile(r"([A-Za-z_][\w-]*|\*)?((?:[#.][\w-]+)*)")
_SELECTOR = re.compile(r"\s*([>\s]?)\s*([^\s>]+)")


@record
class _Compound:
    """``path.thin#a``: all of it must fit one element. ``child``: the one before must be the parent."""

    tag: str
    names: tuple[str, ...]  # ".thin", "#a"
    child: bool


@record
class _Rule:
    weight: tuple[int, int, int, int]  # ids, classes, types, order
    chain: tuple[_Compound, ...]
    values: tuple[tuple[str, str, bool], ...]


def apply_styles(root: Element) -> tuple[str, ...]:
    """Set every element's ``own`` properties: attributes, then rules by weight, then its style. Return what was not read."""
    rules: list[_Rule] = []
    unread: list[str] = []
    for element in root.all():
        if element.tag == "style" and element.get("type", "text/css").strip().lower() in ("", "text/css"):
            _read(element, rules, unread)
    by_key: dict[str, list[_Rule]] = {}
    for rule in sorted(rules, key=lambda rule: rule.weight):
        last = rule.chain[-1]
        by_key.setdefault(last.names[0] if last.names else last.tag, []).append(rule)
    work = 0
    for element in root.all():
        keys = ("*", element.tag, *(f".{name}" for name in element.classes), f"#{element.id}")
        candidates = [rule for key in dict.fromkeys(keys) for rule in by_key.get(key, ())]
        work += len(candidates)
        if work > MOST_WORK:
            raise Unreadable("the drawing's style sheet has too many rules", "save it as plain SVG with plain styles")
        _cascade(element, [rule for rule in candidates if _fits(element, rule.chain)])
    return tuple(dict.fromkeys(unread))


def _cascade(element: Element, rules: list[_Rule]) -> None:
    own = {
        name: value.strip() for name, value in element.attributes.items() if name in _KNOWN and name not in _ONLY_STYLE
    }
    urgent: dict[str, str] = {}
    rules.sort(key=lambda rule: rule.weight)
    inline = declarations(element.get("style")) if "style" in element.attributes else ()
    for values in (*(rule.values for rule in rules), inline):
        for name, value, important in values:
            (urgent if important else own)[name] = value
    own.update(urgent)
    element.own = own


def declarations(text: str) -> tuple[tuple[str, str, bool], ...]:
    """Return name, value and importance of the known properties of a style."""
    found = []
    for part in _without_comments(text).split(";"):
        name, colon, value = part.partition(":")
        name, value = name.strip().lower(), value.strip()
        important = bool(re.search(r"!\s*important$", value, re.I))
        value = re.sub(r"\s*!\s*important$", "", value, flags=re.I)
        if colon and value and name in _KNOWN:
            found.append((name, value, important))
    return tuple(found)


def _without_comments(text: str) -> str:
    return re.sub(r"/\*.*?(?:\*/|\Z)|<!--|-->", " ", text, flags=re.S) if "*" in text or "-" in text else text


def _read(element: Element, rules: list[_Rule], unread: list[str]) -> None:
    text, at = _without_comments(element.text), 0
    while (start := text.find("{", at)) >= 0:
        head = text[at:start]
        while head.lstrip().startswith("@") and ";" in head:  # @import, @charset
            at_rule, _, head = head.partition(";")
            if at_rule.strip().lower().startswith("@import"):
                raise external("a style sheet", at_rule.strip()[7:], element.line)
        end = _closing(text, start)
        if head.lstrip().startswith("@"):
            unread.append(f"style rule “{head.strip()[:40]}”: the tool reads plain rules only")
        else:
            values = declarations(text[start + 1 : end])
            for selector in head.split(","):
                _rule(selector.strip(), values, rules, unread)
        at = end + 1
    if re.search(r"@import", text[at:], re.I):
        raise external("a style sheet", text[at:].strip()[7:], element.line)


def _closing(text: str, start: int) -> int:
    """Return where the block that opens at ``start`` ends."""
    depth = 0
    for match in re.compile(r"[{}]").finditer(text, start):
        depth += 1 if match[0] == "{" else -1
        if depth == 0:
            return match.start()
    return len(text)


def _rule(selector: str, values: tuple[tuple[str, str, bool], ...], rules: list[_Rule], unread: list[str]) -> None:
    chain: list[_Compound] = []
    for link, part in _SELECTOR.findall(selector):
        match = _COMPOUND.fullmatch(part)
        if match is None or len(chain) >= 6:
            unread.append(f"style rule “{selector[:40]}”: the tool reads type, class and id selectors")
            return
        names = tuple(sorted(re.findall(r"[#.][\w-]+", match[2] or "")))
        chain.append(_Compound(match[1] or "*", names, link == ">"))
    if not chain or not values:
        return
    ids = sum(name[0] == "#" for c in chain for name in c.names)
    classes = sum(name[0] == "." for c in chain for name in c.names)
    types = sum(c.tag != "*" for c in chain)
    rules.append(_Rule((ids, classes, types, len(rules)), tuple(chain), values))


def _fits(element: Element, chain: tuple[_Compound, ...]) -> bool:
    """Say whether a selector fits: from the root down, which beginnings of it end at the parent, and which anywhere above."""
    if not _one_fits(element, chain[-1]):
        return False
    if len(chain) == 1:
        return True
    above: list[Element] = []
    at = element.parent
    while at is not None:
        above.append(at)
        at = at.parent
    anywhere: set[int] = set()
    parent: set[int] = set()
    for one in reversed(above):
        parent = {
            k + 1
            for k, compound in enumerate(chain[:-1])
            if (k == 0 or k in (parent if compound.child else anywhere)) and _one_fits(one, compound)
        }
        anywhere |= parent
    return len(chain) - 1 in (parent if chain[-1].child else anywhere)


def _one_fits(element: Element, compound: _Compound) -> bool:
    if compound.tag not in ("*", element.tag):
        return False
    own = {f".{name}" for name in element.classes} | {f"#{element.id}"}
    return own.issuperset(compound.names)
