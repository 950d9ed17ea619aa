"""The files that a spec names, read once and checked, and the layout store beside it."""

from pathlib import Path
from typing import Any

from publisher.basics import Finding, Place
from publisher.brief import limits, rules
from publisher.brief.files_inside import path_finding
from publisher.brief.fonts import plain_font
from publisher.brief.gather import Source
from publisher.brief.model import SpecFile, Value
from publisher.brief.pictures import picture_size

_ENDINGS = {
    "picture": (".jpg", ".jpeg", ".png", ".webp", ".tif", ".tiff"),
    "drawing": (".svg",),
    "font": (".ttf",),
}
_LIMITS = {"picture": limits.PICTURE_BYTES, "drawing": limits.DRAWING_BYTES, "font": limits.FONT_BYTES}
LAYOUTS = "layouts.json"


def read_files(
    source: Source, named: tuple[tuple[Value, str], ...], file: str
) -> tuple[tuple[SpecFile, ...], tuple[Finding, ...]]:
    """Return the bytes of every file that the spec names, in the order of the spec, and findings about them.

    ``named`` are the spec's file fields, each with its kind of file (picture, drawing, font); a file named twice is read
    once. ``file`` is the spec's own name for places.
    """
    files: dict[str, SpecFile] = {}
    findings: list[Finding] = []
    room = limits.FILES_BYTES
    for value, kind in named:
        if value.text in files:
            continue
        read = _read(source, value, kind)
        if isinstance(read, SpecFile) and len(read.data) > room:
            findings.append(_too_much(value))
        elif isinstance(read, SpecFile):
            files[read.name] = read
            room -= len(read.data)
        else:
            findings.append(read)
    if source.holds(LAYOUTS):
        data = source.read(LAYOUTS, limits.LAYOUTS_BYTES, Place((Path(file).parent / LAYOUTS).as_posix()))
        if isinstance(data, bytes):
            files[LAYOUTS] = SpecFile(LAYOUTS, "layouts", data)
        else:
            findings.append(data)
    return tuple(files.values()), tuple(findings)


def _too_much(value: Value) -> Finding:
    return rules.FILE_SIZE.found(
        f"with “{value.text}” the files of this design hold more than {limits.FILES_BYTES / 1e6:g} MB together",
        subject=value.text,
        hint="save the pictures smaller: 3000 pixels across fill a page at print quality",
        place=value.place,
        limit=float(limits.FILES_BYTES),
    )


def _read(source: Source, value: Value, kind: Any) -> SpecFile | Finding:
    name, place = value.text, value.place
    wrong = path_finding(name, place)
    if wrong is not None:
        return wrong
    if not name.lower().endswith(_ENDINGS[kind]):
        hint = f"a {kind} is a file that ends in {' or '.join(_ENDINGS[kind])}"
        return rules.FILE_TYPE.found(f"“{name}” is not a {kind} by its name", subject=name, hint=hint, place=place)
    data = source.read(name, _LIMITS[kind], place)
    if not isinstance(data, bytes):
        return data
    if kind == "font":
        plain = plain_font(data, name, place)
        return SpecFile(name, kind, plain, place=place) if isinstance(plain, bytes) else plain
    if kind == "picture":
        size = picture_size(data, name, place)
        return SpecFile(name, kind, data, *size, place=place) if isinstance(size, tuple) else size
    return SpecFile(name, kind, data, place=place)
