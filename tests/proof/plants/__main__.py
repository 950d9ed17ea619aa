"""``python -m tests.proof.plants [--design designs/bridge] [--paper a4] [--seeds 0-19] [--kind …]``: survivors by class."""

import argparse
from pathlib import Path

from publisher.brief import read_brief
from publisher.pipeline import compose_packs, work
from tests.proof.plants.bench import plant_all
from tests.proof.plants.plants import EDITS, PLANTS


def main() -> None:
    """Plant faults into one design's pack; print how many of each class were found, and the seeds of those that were not."""
    parser = argparse.ArgumentParser(prog="python -m tests.proof.plants", description=main.__doc__)
    parser.add_argument("--design", type=Path, default=Path("designs/lock-stair"))
    parser.add_argument("--paper", default="a4")
    parser.add_argument("--seeds", default="0-9", help="first-last, or one seed")
    parser.add_argument("--kind", action="append", choices=(*PLANTS, *EDITS))
    given = parser.parse_args()
    first, _, last = given.seeds.partition("-")
    (pack,), _ = compose_packs(work(read_brief(given.design)), (given.paper,))
    for kind in given.kind or (*PLANTS, *EDITS):
        seeds = range(int(first), int(first) + 1) if kind in EDITS else range(int(first), int(last or first) + 1)
        done = [one for one in plant_all(pack, (kind,), seeds) if not one.equal]
        left = [one.seed for one in done if not one.checks]
        print(
            f"{len(done) - len(left):3} of {len(done):3} found: {kind}{f'; survivors: {left}' if left else ''}",
            flush=True,
        )


if __name__ == "__main__":
    main()
