"""``python -m tests.proof.left_out [--design FOLDER] [--paper a4] [--only print_check]``: words that nobody misses, by kind of page."""

import argparse
from collections import Counter
from pathlib import Path

from publisher.brief import read_brief
from publisher.pipeline import compose_packs, work
from tests.proof.left_out.bench import Trial


def main() -> None:
    """Leave out each paragraph and each sentence of a pack; print what no check finds, then how much of each kind of page is found."""
    parser = argparse.ArgumentParser(prog="python -m tests.proof.left_out", description=main.__doc__)
    parser.add_argument("--design", type=Path, default=Path("designs/lock-stair"))
    parser.add_argument("--paper", default="a4")
    parser.add_argument("--only", default="", help="pages of this kind")
    given = parser.parse_args()
    (pack,), _ = compose_packs(work(read_brief(given.design)), (given.paper,))
    tried, found = Counter[str](), Counter[str]()
    for one in Trial(pack).left_out(given.only):
        tried[one.kind] += 1
        found[one.kind] += bool(one.check)
        if not one.check:
            print(f"{one.kind}, page {one.page}: {one.words[:150]}", flush=True)
    for kind, count in tried.items():
        print(f"{found[kind]:5} of {count:5} missed when left out: {kind}")


if __name__ == "__main__":
    main()
