"""The ink of a page: a hash of all that is drawn on it and is not furniture, so that two editions of a page can be told apart."""

import json
from collections.abc import Iterable
from hashlib import sha256

from publisher.basics import Arc, Box, FurniturePromise, Path
from publisher.pages.model import Drawn, Fill, FontFile, PackImage, Picture, Stroke, Words

INK_DECIMALS = 3  # of lengths in mm, and of turns in degrees

Plain = str | int | float | bool | None | list["Plain"]


def beside_furniture(
    drawn: tuple[Drawn, ...], boxes: tuple[Box | None, ...], furniture: tuple[FurniturePromise, ...]
) -> tuple[Drawn, ...]:
    """Return the things that have ink (``boxes``: round it) which does not lie wholly in a box of the page's furniture."""
    return tuple(
        thing
        for thing, box in zip(drawn, boxes, strict=True)
        if box is not None and all(box.beyond(promise.box) > 0.0 for promise in furniture)
    )


def digests_of(files: Iterable[FontFile | PackImage]) -> dict[str, str]:
    """Return the SHA-256 of each font and picture by its name."""
    return {file.name: sha256(file.data).hexdigest() for file in files}


def words_of(drawn: tuple[Drawn, ...]) -> tuple[str, ...]:
    """Return the lines of words, in the order in which they are drawn."""
    return tuple(thing.text for thing in drawn if isinstance(thing, Words))


def ink_id(digests: dict[str, str], drawn: tuple[Drawn, ...]) -> str:
    """Return the SHA-256 (hexadecimal) of things that have ink: of a page, all that lie ``beside_furniture``.

    It holds the shape, place, width, grey and dash of every line and area, every line of words with its font's bytes, and the bytes of
    pictures (both by ``digests``); not the layer or the tag of a thing, and not where a link leads, for paper shows none of these.
    """
    ink = [_plain(thing, digests) for thing in drawn]
    return sha256(json.dumps(ink, separators=(",", ":"), allow_nan=False).encode()).hexdigest()


def _plain(thing: Drawn, digests: dict[str, str]) -> Plain:
    """Return a thing that has ink as plain values."""
    if isinstance(thing, Words):
        at = _lengths(thing.x, thing.y, thing.size, thing.turn)
        return ["words", thing.text, digests[thing.font], at, thing.grey]
    if isinstance(thing, Picture):
        return ["picture", digests[thing.image], _box(thing.box)]
    if isinstance(thing, Stroke):
        style = thing.style
        drawn = _lengths(style.width, *style.dash)
        return ["stroke", drawn, style.grey, style.round_ends, _box(thing.clip), [_path(path) for path in thing.paths]]
    if isinstance(thing, Fill):
        return ["fill", thing.grey, _box(thing.clip), [_path(path) for path in thing.paths]]
    raise TypeError(f"a {type(thing).__name__} has no ink")


def _path(path: Path) -> Plain:
    if corners := path.corners:
        return [path.closed, [[round(x, INK_DECIMALS) + 0.0, round(y, INK_DECIMALS) + 0.0] for x, y in corners]]
    ends: list[Plain] = [_lengths(*path.edges[0].start)]
    for edge in path.edges:
        bow = (*edge.centre, edge.radius, edge.sweep) if isinstance(edge, Arc) else ()
        ends.append(_lengths(*edge.end, *bow))
    return [path.closed, ends]


def _box(box: Box | None) -> Plain:
    return None if box is None else _lengths(*box.sides)


def _lengths(*values: float) -> Plain:
    return [round(value, INK_DECIMALS) + 0.0 for value in values]  # no negative zero
