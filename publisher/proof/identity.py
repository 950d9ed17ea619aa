"""Whether a file is the one that its spec builds today: bytes first, then what each page draws, then its pixels.

This knows no promise and trusts nothing that was worked out; it only compares two files. Other versions of the libraries that write a PDF
may pack the same pages into other bytes: then bytes cannot tell, and what is drawn and what is seen decide.
"""

from collections.abc import Iterator
from typing import Any, Literal

import numpy as np

from publisher.basics import Finding, Rule, Severity, record
from publisher.proof.measuring import pages_seen
from publisher.proof.reading import Array, FileRead, PageRead, beside_pages, read_file

SAME_PLACE = 0.002  # mm: coordinates are written to 0.0001 pt, and curves are flattened to 0.002 mm
SAME_GREY = 0.01
OTHER_DOT = 96  # of 255: fonts taken apart by another version darken the rim of a letter by less
BUILD_AGAIN = "build the pack again from this spec, or give the spec of the version that it was built from"
MOST_PAGES_NAMED = 12  # pages
BESIDE = {  # entries of a catalogue, as a reader would call them
    "/Outlines": "the bookmarks",
    "/Annots": "the links",
    "/Dests": "where links and bookmarks lead",
    "/Names": "the attached files, or where links lead",
    "/PageLabels": "the labels of pages",
    "/StructTreeRoot": "the tags",
    "/OCProperties": "the layers",
    "/ViewerPreferences": "what it asks of viewers and printers",
    "/Lang": "the language",
}

AS_BUILT = Rule(
    "proof/not-as-built",
    "What this spec builds",
    "a pack that was changed after it was built, or built from another state of the spec, shows what nobody worked out: held against its "
    "spec, a file has the bytes of the build, or draws the same and looks the same on every page, lines to "
    f"{SAME_PLACE:g} mm",
    Severity.ERROR,
)


@record
class Identity:
    """How a file agrees with what its spec builds.

    ``identical``: byte by byte. ``alike``: other bytes, but each page draws and looks the same, and so does all round them; bytes
    cannot tell why. ``different``: ``pages`` (from 1) are others, ``beside`` names what differs outside of pages.
    """

    verdict: Literal["identical", "alike", "different"]
    pages: tuple[int, ...] = ()
    beside: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()


def identify(data: bytes, built: bytes, name: str) -> Identity:
    """Compare a file with the one that its spec builds; any bytes may come in. ``name`` is how messages call the file."""
    if data == built:
        return Identity("identical")
    here, there = read_file(data, name), read_file(built, name)
    if here.trouble:
        return _different(name, (), (f"the file itself: {here.trouble}",))
    beside = tuple(_beside(here, there, data, built))
    others = {new.number for new, old in zip(here.pages, there.pages, strict=False) if not _draws_alike(new, old)}
    if not beside:  # a page too few or too many shifts all that follow: dots would only repeat it
        others |= pages_seen(data, built, OTHER_DOT)
    if others or beside:
        return _different(name, tuple(sorted(others)), beside)
    return Identity("alike")


def identify_files(files: dict[str, bytes], built: dict[str, bytes]) -> tuple[Finding, ...]:
    """Return a finding for each file that is there and not byte by byte the one that its spec builds. For cut files and tables: nothing
    of other libraries goes into these but the layouts, which are kept beside the spec."""
    return tuple(
        AS_BUILT.found(f"{path} is not what this spec builds", subject=path, hint=BUILD_AGAIN)
        for path, data in sorted(built.items())
        if path in files and files[path] != data
    )


def _different(name: str, pages: tuple[int, ...], beside: tuple[str, ...]) -> Identity:
    named = ", ".join(map(str, pages[:MOST_PAGES_NAMED])) + (
        f" and {len(pages) - MOST_PAGES_NAMED} more" * (len(pages) > MOST_PAGES_NAMED)
    )
    what = [f"page{'s' * (len(pages) > 1)} {named}"] if pages else []
    finding = AS_BUILT.found(
        f"{name} is not what this spec builds: it differs in {'; '.join((*what, *beside))}",
        subject=name,
        hint=BUILD_AGAIN,
    )
    return Identity("different", pages, beside, (finding,))


def _beside(here: FileRead, there: FileRead, data: bytes, built: bytes) -> Iterator[str]:
    """Yield in words what differs outside of the pages."""
    if len(here.pages) != len(there.pages):
        yield f"the number of pages ({len(here.pages)}, not {len(there.pages)})"
    if here.attachments != there.attachments:
        yield "the attached facts"
    if here.title != there.title:
        yield "the title"
    try:
        ours, theirs = beside_pages(data), beside_pages(built)
    except Exception:  # pypdf has many ways to give up on a damaged file
        yield "what stands beside its pages, which cannot be read"
        return
    others = {key for key in ours.keys() | theirs.keys() if ours.get(key) != theirs.get(key)}
    if len(here.pages) == len(there.pages):
        yield from dict.fromkeys(BESIDE.get(key.split()[0], f"the entry {key}") for key in sorted(others))


def _draws_alike(new: PageRead, old: PageRead) -> bool:
    """Say whether two pages draw the same things in the same order."""
    asked = (
        "media",
        "crop",
        "rotate",
        "user_unit",
        "hidden_layers",
        "unread",
        "links",
        "annotations",
        "actions",
        "other_boxes",
    )
    if any(getattr(new, what) != getattr(old, what) for what in asked):
        return False
    for kind in ("pieces", "texts", "images"):
        ours, theirs = getattr(new, kind), getattr(old, kind)
        if len(ours) != len(theirs) or not all(_same(a, b) for a, b in zip(ours, theirs, strict=True)):
            return False
    return True


def _same(new: Any, old: Any) -> bool:
    """Compare two drawn things field by field: numbers nearly, all else exactly."""
    for field in new.__slots__:
        a, b = _value(new, field), _value(old, field)
        if field == "clip":
            if not _near(np.array(a.box.sides), np.array(b.box.sides)) or not _same_shapes(a.shapes, b.shapes):
                return False
        elif field == "font":  # a subset's name begins with letters that whoever writes the file makes up
            continue
        elif isinstance(a, np.ndarray):
            if not _near(a, b):
                return False
        elif isinstance(a, float) and isinstance(b, float):
            if abs(a - b) > (SAME_GREY if "grey" in field else SAME_PLACE):
                return False
        elif isinstance(a, tuple) and a and isinstance(b, tuple):
            if not _same_values(a, b):
                return False
        elif a != b:
            return False
    return True


def _value(thing: Any, field: str) -> Any:
    """Return a field of a drawn thing; a path that has no Bézier says of its knots that they are all of its points."""
    value = getattr(thing, field)
    return np.ones(len(thing.points), dtype=bool) if field == "knots" and value is None else value


def _same_values(ours: Any, theirs: Any) -> bool:
    """Compare tuples in each other value by value: numbers nearly, all else exactly."""
    if isinstance(ours, tuple) and isinstance(theirs, tuple):
        return len(ours) == len(theirs) and all(map(_same_values, ours, theirs))
    if isinstance(ours, float | int) and isinstance(theirs, float | int):
        return abs(ours - theirs) <= SAME_PLACE
    return bool(np.array_equal(ours, theirs))


def _same_shapes(ours: tuple[Any, ...], theirs: tuple[Any, ...]) -> bool:
    if len(ours) != len(theirs):
        return False
    return all(
        rule == other and len(rings) == len(more) and all(_near(a, b) for a, b in zip(rings, more, strict=True))
        for (rings, rule), (more, other) in zip(ours, theirs, strict=True)
    )


def _near(a: Array, b: Array) -> bool:
    return a.shape == b.shape and bool(np.allclose(a, b, rtol=0.0, atol=SAME_PLACE, equal_nan=True))
