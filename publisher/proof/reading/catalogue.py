"""What the catalogue says beside its pages: page labels, bookmarks, attached files, wishes about printing (ISO 32000-2, 7.7.2)."""

from hashlib import sha256
from typing import Any

from publisher.proof.reading.model import BookmarkRead
from publisher.proof.reading.objects import Spent, array, dictionary, number, plain, stream_bytes

MOST_ENTRIES = 2000  # entries of a tree
DEEPEST_TREE = 32
ROMAN = ((1000, "m"), (900, "cm"), (500, "d"), (400, "cd"), (100, "c"), (90, "xc"), (50, "l"), (40, "xl"), (10, "x"),
         (9, "ix"), (5, "v"), (4, "iv"), (1, "i"))  # fmt: skip
WISHES = ("/PrintArea", "/PrintClip", "/ViewArea", "/ViewClip")
WHOLE = ("MediaBox", "CropBox")  # proof asks elsewhere that these two are the same


def page_labels(catalogue: Any, count: int) -> tuple[str, ...]:
    """Return the label of every page (12.4.2); empty when the file has no labels."""
    entries = {int(number(key)): dictionary(value) for key, value in _leaves(catalogue.get("/PageLabels"), "/Nums")}
    if not entries:
        return ()
    labels: list[str] = []
    entry, since = dictionary(None), 0
    for index in range(count):
        if index in entries:
            entry, since = entries[index], index
        style = str(plain(entry.get("/S")) or "").lstrip("/")
        prefix = plain(entry.get("/P"))
        labels.append(
            ("" if prefix is None else str(prefix)) + _numeral(style, int(number(entry.get("/St"), 1)) + index - since)
        )
    return tuple(labels)


def _numeral(style: str, value: int) -> str:
    if style == "D":
        return str(value)
    if style in ("R", "r"):
        text = ""
        for worth, letters in ROMAN:
            times = max(0, min(value, 10_000)) // worth
            text += letters * times
            value -= worth * times
        return text.upper() if style == "R" else text
    if style in ("A", "a") and value > 0:
        return chr(ord(style) + (value - 1) % 26) * min((value - 1) // 26 + 1, 100)
    return ""


def bookmarks(catalogue: Any, pages: dict[int, int]) -> tuple[BookmarkRead, ...]:
    """Return the entries of the outline tree in its order (12.3.3). ``pages``: number of a page by that of its object."""
    found: list[BookmarkRead] = []
    waiting = [(plain(dictionary(catalogue.get("/Outlines")).get("/First")), 0)]
    while waiting and len(found) < MOST_ENTRIES:
        entry, depth = waiting.pop()
        if not isinstance(entry, dict):
            continue
        found.append(BookmarkRead(str(plain(entry.get("/Title")) or ""), leads_to(entry, pages), depth))
        waiting.append((plain(entry.get("/Next")), depth))
        if depth < DEEPEST_TREE:
            waiting.append((plain(entry.get("/First")), depth + 1))
    return tuple(found)


def leads_to(entry: Any, pages: dict[int, int]) -> int:
    """Return the page of the destination of a bookmark or a link: its own, or that of its action; 0 where it names none of this file by
    its object. ``pages``: number of a page by that of its object."""
    place = plain(entry.get("/Dest")) or dictionary(entry.get("/A")).get("/D")
    target = next(iter(array(place)), None)
    return pages.get(getattr(target, "idnum", 0), 0)


def attachments(catalogue: Any, spent: Spent) -> tuple[tuple[str, str], ...]:
    """Return (name, SHA-256 of the bytes in hexadecimal) of every attached file, in the order of the file."""
    names = dictionary(catalogue.get("/Names"))
    found = []
    for key, value in _leaves(names.get("/EmbeddedFiles"), "/Names"):
        file = dictionary(value)
        embedded = dictionary(file.get("/EF"))
        streams = [s for s in (plain(embedded.get(k)) for k in ("/F", "/UF")) if hasattr(s, "get_data")]
        digests = dict.fromkeys(sha256(stream_bytes(s, spent)).hexdigest() for s in streams)
        found += [(str(plain(key)), digest) for digest in digests or {"": None}]
    return tuple(found)


def print_wishes(preferences: Any) -> tuple[str, ...]:
    """Return in words what the viewer preferences ask beside single-sided print at true size (12.2)."""
    found = []
    for key in WISHES:
        box = plain(preferences.get(key))
        if box is not None and str(box).lstrip("/") not in WHOLE:
            found.append(f"asks programs to show or print by its {str(box).lstrip('/')} ({key.lstrip('/')})")
    copies = number(preferences.get("/NumCopies"), 1.0)
    if copies != 1.0:
        found.append(f"asks for {copies:g} copies")
    if plain(preferences.get("/PrintPageRange")) is not None:
        found.append("asks to print only some of its pages")
    return tuple(found)


def _leaves(tree: Any, key: str) -> list[tuple[Any, Any]]:
    """Return the pairs of a name tree or number tree (7.9.6, 7.9.7)."""
    pairs: list[tuple[Any, Any]] = []
    waiting = [(dictionary(tree), 0)]
    looked = 0
    while waiting and looked < MOST_ENTRIES:
        node, depth = waiting.pop(0)
        looked += 1
        row = array(node.get(key))[: 2 * MOST_ENTRIES]
        pairs += list(zip(row[::2], row[1::2], strict=False))
        if depth < DEEPEST_TREE:
            waiting += [(dictionary(kid), depth + 1) for kid in array(node.get("/Kids"))[:MOST_ENTRIES]]
    return pairs
