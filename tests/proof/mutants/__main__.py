"""``python -m tests.searches mutants --seed S --count 150``: what proof lets through of a program that is itself wrong, by file."""

import argparse
import os
import sys
from collections import Counter
from pathlib import Path
from random import Random

from tests.proof.mutants.bench import Tried, try_all
from tests.proof.mutants.makings import clean_makings
from tests.proof.mutants.sites import Mutant, mutant_of, sites

FATES = ("caught", "broke", "equivalent", "beside", "slight", "unused", "survived")


def main(words: list[str]) -> int:
    """Draw mutants of ``pages`` and ``press`` by a seed, make and prove packs by each, and print what became of them; return 0."""
    parser = argparse.ArgumentParser(prog="python -m tests.searches mutants", description=main.__doc__)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--count", type=int, default=150)
    parser.add_argument("--workers", type=int, default=os.cpu_count() or 1, help="processes at a time")
    parser.add_argument("--only", default="", help="files whose path holds this")
    parser.add_argument("--all", action="store_true", help="tell of each mutant, not of survivors alone")
    parser.add_argument(
        "--begin", type=int, default=0, metavar="N", help="leave out the first N of them, which were tried before"
    )
    parser.add_argument(
        "--again", type=Path, metavar="FILE", help="of them those alone that survived in what an earlier run printed"
    )
    given = parser.parse_args(words)
    every = [site for site in sites() if given.only in site.path]
    random = Random(f"mutants {given.seed}")
    chosen = [mutant_of(site, random) for site in random.sample(every, min(given.count, len(every)))]
    chosen = chosen[given.begin :]
    if given.again is not None:
        before = given.again.read_text("utf-8")
        chosen = [mutant for mutant in chosen if f"survived: {_named(mutant)}  [" in before]
    done: list[Tried] = []
    for tried in try_all(chosen, clean_makings(), given.workers):
        done.append(tried)
        if given.all or tried.fate in ("survived", "slight"):
            print(f"{tried.fate}: {_named(tried.mutant)}  [{tried.by}]", flush=True)
    table(done)
    return 0


def _named(mutant: Mutant) -> str:
    """Return how a run calls a mutant."""
    return f"{mutant.site.path}:{mutant.site.line}: {mutant.said[:150]}"


def table(done: list[Tried]) -> None:
    """Print how many mutants of each file had which fate."""
    files = sorted({tried.mutant.site.path for tried in done})
    print(f"\n{'file':48}" + "".join(f"{fate:>11}" for fate in FATES))
    for file in (*files, ""):
        counts = Counter(tried.fate for tried in done if tried.mutant.site.path.startswith(file))
        print(f"{file or 'all':48}" + "".join(f"{counts[fate]:11}" for fate in FATES))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
