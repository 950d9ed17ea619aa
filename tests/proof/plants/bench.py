"""Plants faults and asks truth alone, without the identity of the file: who was not found?"""

from collections.abc import Iterator
from random import Random

from publisher.basics import errors, record
from publisher.pages import Pack
from publisher.press import write_pdf
from publisher.proof import prove
from tests.proof.plants.plants import EDITS, PLANTS, edited


@record
class Planted:
    """One planted fault: its class and seed, whether the file came out as before (nothing planted), and by which checks it was found."""

    kind: str
    seed: int
    equal: bool
    checks: tuple[str, ...]


def plant_all(pack: Pack, kinds: tuple[str, ...], seeds: range) -> Iterator[Planted]:
    """Plant each kind once with each seed into a pack; one that the pack has nothing for is left out."""
    clean = write_pdf(pack)
    for kind in kinds:
        for seed in seeds:
            if kind in EDITS:
                data = edited(clean, EDITS[kind])
            else:
                changed = PLANTS[kind](Random(f"{kind} {seed}"), pack)
                if changed is None:
                    continue
                data = write_pdf(changed)
            found = errors(prove(data, pack.promises, "planted.pdf").findings)
            yield Planted(kind, seed, data == clean, tuple(dict.fromkeys(f.check for f in found)))
