"""The files that a spec names, read once and checked, and the layout store beside it."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from publisher.basics import Finding, Place
from publisher.brief import limits, rules
from publisher.brief.fonts import font_finding
from publisher.brief.model import Node, Row, SpecFile, Table, Value
from publisher.brief.paths import path_finding, read_inside
from publisher.brief.pictures import picture_size

_ENDINGS = {
    "picture": (".jpg", ".jpeg", ".png", ".webp", ".tif", ".tiff"),
    "drawing": (".svg",),
    "font": (".ttf",),
}
_LIMITS = {"picture": limits.PICTURE_BYTES, "drawing": limits.DRAWING_BYTES, "font": limits.FONT_BYTES}
_KEYS: dict[str, Any] = {"photo": "picture", "file": "drawing"}
LAYOUTS = "layouts.json"


def read_files(folder: Path, fields: Table, file: str) -> tuple[tuple[SpecFile, ...], tuple[Finding, ...]]:
    """Return the bytes of every file that the spec names, in the order of the spec, and findings about them.

    ``file`` is the spec's own name for places. A file that is named twice is read once.
    """
    files: dict[str, SpecFile] = {}
    findings: list[Finding] = []
    room = limits.FILES_BYTES
    for value, kind in _named(fields):
        if value.text in files:
            continue
        read = _read(folder, value, kind, min(room, _LIMITS[kind]))
        if isinstance(read, SpecFile):
            files[read.name] = read
            room -= len(read.data)
        else:
            findings.append(read)
    if (folder / LAYOUTS).exists():
        data = read_inside(folder, LAYOUTS, limits.LAYOUTS_BYTES, Place(str(Path(file).parent / LAYOUTS)))
        if isinstance(data, bytes):
            files[LAYOUTS] = SpecFile(LAYOUTS, "layouts", data)
        else:
            findings.append(data)
    return tuple(files.values()), tuple(findings)


def _named(node: Node, key: str = "") -> Iterator[tuple[Value, Any]]:
    """Every file field of the tree with the kind of file that it names."""
    if isinstance(node, Table):
        for entry in node.entries:
            yield from _named(entry.node, entry.key)
    elif isinstance(node, Row):
        for item in node.items:
            yield from _named(item, key)
    elif node.kind == "file" and node.text:
        yield node, _KEYS.get(key, "font")


def _read(folder: Path, value: Value, kind: Any, most: int) -> SpecFile | Finding:
    name, place = value.text, value.place
    wrong = path_finding(name, place)
    if wrong is not None:
        return wrong
    if not name.lower().endswith(_ENDINGS[kind]):
        hint = f"a {kind} is a file that ends in {' or '.join(_ENDINGS[kind])}"
        return rules.FILE_TYPE.found(f"`{name}` is not a {kind} by its name", subject=name, hint=hint, place=place)
    data = read_inside(folder, name, most, place)
    if not isinstance(data, bytes):
        return data
    if kind == "font":
        return font_finding(data, name, place) or SpecFile(name, kind, data, place=place)
    if kind == "picture":
        size = picture_size(data, name, place)
        return SpecFile(name, kind, data, *size, place=place) if isinstance(size, tuple) else size
    return SpecFile(name, kind, data, place=place)
