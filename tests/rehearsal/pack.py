"""A pack read from its pages, in their order: parts, the pencil's way round them, and what could not be read."""

import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from tests.rehearsal.acts import Act, acts_of, every_act, misnumbered
from tests.rehearsal.angles import unlike_angles
from tests.rehearsal.measured import measured_parts
from tests.rehearsal.pages import ReadPage, read_page
from tests.rehearsal.parts import ReadPart, read_parts
from tests.rehearsal.raster import page_pictures
from tests.rehearsal.sentences import NOTHING_SAID, Sentences, flowing, sentences_of

PENCIL = re.compile(r"its line runs .*?(\d+(?:\.\d+)?) ?(?:mm|$)")
TRACE = "trace, lift"


@dataclass(frozen=True, slots=True, eq=False)
class ReadPack:
    """What a pack's pages say. ``allowance``: mm by which a pencil runs outside a template, None where the pages say of tracing but of no
    number; ``unread``: what the reader could not read, in words; ``acts``: what is put together, in the order of the steps, and
    ``every_act``, what is only tried among it; ``said``: what steps say of joints in words."""

    pages: tuple[ReadPage, ...]
    parts: tuple[ReadPart, ...]
    allowance: float | None
    unread: tuple[str, ...]
    acts: tuple[Act, ...] = ()
    said: Sentences = NOTHING_SAID
    every_act: tuple[Act, ...] = ()


def read_pack(pdf: Path, known: Mapping[int, ReadPage] | None = None) -> ReadPack:
    """Read a pack from the pictures of its pages; those that are ``known`` by their numbers already are not read again."""
    known = known or {}
    return pack_of(tuple(known.get(picture.number) or read_page(picture) for picture in page_pictures(pdf)))


def pack_of(pages: tuple[ReadPage, ...]) -> ReadPack:
    """Return the pack that read pages make."""
    shown = tuple(page for page in pages if page.shows_templates)
    templates = read_parts(shown)
    drawn = {part.letter for part in templates}
    parts = (*templates, *(part for part in measured_parts(pages) if part.letter not in drawn))
    allowance = _allowance(pages)
    unread = [
        f"page {page.number}: no square whose number was read: taken as true" for page in shown if page.scale is None
    ]
    unread += [
        f"page {page.number}: a match mark without a name" for page in shown for mark in page.marks if not mark.name
    ]
    unread += [f"page {part.pages[0]}: a template without a letter" for part in parts if not part.letter]
    unread += [f"part {part.letter}: {fault}" for part in parts for fault in part.faults]
    unread += [f"part {part.letter}: how many are cut" for part in parts if part.letter and not part.count]
    unread += [f"part {letter}: its prints bear different letters" for letter in unlike_prints(parts)]
    unread += misnumbered(pages)
    unread += unlike_angles(pages, parts, every_act(pages))
    if allowance is None:
        unread.append("how far outside a template the pencil runs")
    return ReadPack(
        pages, parts, allowance, tuple(dict.fromkeys(unread)), acts_of(pages), sentences_of(pages), every_act(pages)
    )


def unlike_prints(parts: tuple[ReadPart, ...]) -> Iterator[str]:
    """Yield the letters of parts that are printed once for each copy, not all prints with the same match letters."""
    found: dict[str, list[Counter[str]]] = defaultdict(list)
    for part in parts:
        found[part.letter].append(Counter(note.text for note in part.notes if note.kind == "match"))
    yield from (letter for letter, own in found.items() if letter and any(one != own[0] for one in own))


def _allowance(pages: tuple[ReadPage, ...]) -> float | None:
    """Return the millimetres that the page about templates says; 0 where nothing is traced."""
    texts = [flowing(page) for page in pages]
    said = [float(m[1]) for text in texts if (m := PENCIL.search(text))]
    if said:
        return said[0]
    return None if any(TRACE in text for text in texts) else 0.0
