"""What words add to the edges of boards: which of two ends at which, and which edges meet at all where none bears a letter."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, product
from types import MappingProxyType

import numpy as np
import numpy.typing as npt

from tests.rehearsal.sentences import Ends, Levels
from tests.rehearsal.sites import Site

Vector = npt.NDArray[np.float64]

IN_LINE = "line"  # in the place of the part that runs through
UPRIGHT = 0.9  # cosine between an edge that stands and its board's top
NO_UPS: Mapping[str, Vector | None] = MappingProxyType({})
LENGTH_OFF = 0.6  # mm by which two edges may differ that meet over their whole length


@dataclass(frozen=True, slots=True)
class Plain:
    """A join of two plain edges: its letter and both parts, in the order of the alphabet."""

    letter: str
    parts: tuple[str, str]


def ends_of(plain: Plain, ends: Sequence[Ends]) -> tuple[str, ...]:
    """Return which part may run through at a join: the one that words say; of two alike, "a" or "b"."""
    one, other = plain.parts
    meant = [t for t in ends if {t.part, t.at} == {one, other} and (not t.marks or plain.letter in t.marks)]
    said = {IN_LINE if told.in_line else told.at for told in meant}
    if one == other:
        return (IN_LINE,) if IN_LINE in said else ("a", "b")
    return tuple(said) or (one, other)


Ups = Mapping[str, Vector | None]  # where the top of each part is


def levelled(
    one: tuple[str, Site], other: tuple[str, Site], ups: Ups, letter: str, levels: Sequence[Levels]
) -> tuple[Site, Site]:
    """Return the stretches of two edges that meet: of edges of unequal length that of the shorter one, from the end at which words say
    that both are level."""
    end = next((t.end for t in levels if {one[0], other[0]} <= t.parts and (not t.marks or letter in t.marks)), None)
    if end is None:
        return one[1], other[1]
    length = min(one[1].length, other[1].length)
    mine, its = (_stretch(site, ups.get(part), length, end) for part, site in (one, other))
    return mine, its


def _stretch(site: Site, up: Vector | None, length: float, end: str) -> Site:
    if up is None or not _is_upright(site, up):
        return site
    way = site.along if (float(up @ site.along) > 0.0) == (end == "top") else -site.along
    return replace(site, middle=site.middle + (site.length - length) / 2.0 * way, length=length)


def _is_upright(site: Site, up: Vector | None) -> bool:
    return up is not None and abs(float(up @ site.along)) > UPRIGHT


def lettered_sites(
    own: dict[str, tuple[Site, ...]], ends: Sequence[Ends], levels: Sequence[Levels] = (), ups: Ups = NO_UPS
) -> dict[str, tuple[Site, ...]]:
    """Return the sites of parts with a letter of our own on the edges that words let meet, where both bear none."""
    found = dict(own)
    for told in ends:
        if told.marks or not {told.part, told.at} <= found.keys() or _meet_already(found, told):
            continue
        wanted = {
            (part, n)
            for (part, n), (other, m) in _pairs(found, told)
            if abs(found[part][n].length - found[other][m].length) < LENGTH_OFF
            or (
                any({part, other} <= one.parts for one in levels)
                and _is_upright(found[part][n], ups.get(part))
                and _is_upright(found[other][m], ups.get(other))
            )
        }
        for part in {told.part, told.at}:
            found[part] = tuple(
                replace(site, letters=site.letters | {f"{told.part}>{told.at}"}) if (part, n) in wanted else site
                for n, site in enumerate(found[part])
            )
    return found


def may_meet(letter: str, one: str, other: str) -> bool:
    """Say whether edges of a letter may meet on these two parts: one of our own is that of two parts."""
    part, told, at = letter.partition(">")
    return not told or {one, other} == {part, at}


def _meet_already(sites: dict[str, tuple[Site, ...]], told: Ends) -> bool:
    one, other = ({letter for site in sites[part] for letter in site.letters} for part in (told.part, told.at))
    return bool(one & other) if told.part != told.at else bool(one)


def _pairs(sites: dict[str, tuple[Site, ...]], told: Ends) -> Iterator[tuple[tuple[str, int], tuple[str, int]]]:
    """Yield, both ways, the pairs of plain edges without a letter of the two parts."""
    free = {part: [(part, n) for n, site in enumerate(sites[part]) if _is_free(site)] for part in {told.part, told.at}}
    one, other = free[told.part], free[told.at]
    pairs = list(combinations(one, 2) if told.part == told.at else product(one, other))
    yield from pairs
    yield from ((b, a) for a, b in pairs)


def _is_free(site: Site) -> bool:
    return all(">" in letter for letter in site.letters) and site.bevel is None and not site.strip


def bent_kinds(sites: Sequence[Site]) -> tuple[tuple[float, float], ...]:
    """Return the kinds of bevelled edges that bear no letter, by bevel (degrees) and length (mm)."""
    return tuple(sorted({kind for site in sites if (kind := kind_of(site)) is not None}))


def kind_of(site: Site) -> tuple[float, float] | None:
    """Return the kind of a bevelled edge without a letter; None for all others."""
    return None if site.bevel is None or site.letters else (round(site.bevel), round(site.length))
