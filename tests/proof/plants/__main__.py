"""``python -m tests.proof.plants [--design designs/bridge] [--paper a4] [--seeds 0-19] [--kind …]``: survivors by class.

``--finished`` plants into the written file instead: any path, words or object, one for each seed.
"""

import argparse
from collections import Counter
from pathlib import Path

from publisher.brief import read_brief
from publisher.pages import Pack
from publisher.pipeline import compose_packs, work
from tests.proof.plants.bench import plant_all
from tests.proof.plants.finished import plant_finished
from tests.proof.plants.plants import EDITS, PLANTS


def main() -> None:
    """Plant faults into one design's pack; print how many of each class were found, and the seeds of those that were not."""
    parser = argparse.ArgumentParser(prog="python -m tests.proof.plants", description=main.__doc__)
    parser.add_argument("--design", type=Path, default=Path("designs/lock-stair"))
    parser.add_argument("--paper", default="a4")
    parser.add_argument("--seeds", default="0-9", help="first-last, or one seed")
    parser.add_argument("--kind", action="append", choices=(*PLANTS, *EDITS))
    parser.add_argument("--finished", action="store_true", help="any path, words or object of the written file")
    given = parser.parse_args()
    first, _, last = given.seeds.partition("-")
    (pack,), _ = compose_packs(work(read_brief(given.design)), (given.paper,))
    if given.finished:
        _finished(pack, range(int(first), int(last or first) + 1))
        return
    for kind in given.kind or (*PLANTS, *EDITS):
        seeds = range(int(first), int(first) + 1) if kind in EDITS else range(int(first), int(last or first) + 1)
        done = [one for one in plant_all(pack, (kind,), seeds) if not one.equal]
        left = [one.seed for one in done if not one.checks]
        print(
            f"{len(done) - len(left):3} of {len(done):3} found: {kind}{f'; survivors: {left}' if left else ''}",
            flush=True,
        )


def _finished(pack: Pack, seeds: range) -> None:
    """Print how many of each class were found, by which checks, and each survivor with what it changed."""
    done = list(plant_finished(pack, seeds))
    for kind in sorted({one.kind for one in done if one.page}):
        own = [one for one in done if one.kind == kind]
        print(f"{sum(bool(one.check) for one in own):5} of {len(own):5} found: {kind}")
    objects = [one for one in done if not one.page]
    print(f"{sum(bool(one.check) for one in objects):5} of {len(objects):5} found: an entry of an object")
    for check, times in Counter(one.check for one in done if one.check).most_common():
        print(f"{times:5} by {check}")
    left = Counter((one.differs, one.kind, one.beside) for one in done if not one.check)
    for (differs, kind, beside), times in sorted(left.items()):
        seeds_of = [one.seed for one in done if not one.check and (one.differs, one.kind) == (differs, kind)][:5]
        print(f"{times:5} survived, changes {differs}: {kind} {beside} {seeds_of}", flush=True)


if __name__ == "__main__":
    main()
