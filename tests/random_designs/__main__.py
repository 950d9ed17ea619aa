"""Search: ``python -m tests.random_designs --seeds 0-499 [--kind ring] [--build 20] [--paper a3]``."""

import argparse
from pathlib import Path
from time import perf_counter

from tests.random_designs.design import PAPERS
from tests.random_designs.judge import untruths
from tests.random_designs.kinds import KINDS
from tests.random_designs.make import false_twin, true_design
from tests.random_designs.report import lines
from tests.random_designs.search import Asked, ask, ask_all
from tests.random_designs.shrink import failures, keep, smallest


def main() -> None:
    """Ask the tool about the designs of some seeds, and print what it gets wrong."""
    parser = argparse.ArgumentParser(prog="python -m tests.random_designs", description=main.__doc__)
    parser.add_argument("--seeds", default="0-99", help="first-last, or one seed")
    parser.add_argument("--kind", default="", choices=("", *KINDS))
    parser.add_argument("--paper", default="", choices=("", *PAPERS))
    parser.add_argument(
        "--build", type=int, default=0, help="build and prove this many of them on A4 and Letter, or on --paper"
    )
    parser.add_argument("--seconds", type=float, default=float("inf"), help="take no more seeds after this time")
    parser.add_argument(
        "--keep", default="", help="folder for the smallest case of every way to fail, such as build/cases"
    )
    parser.add_argument("--every", action="store_true", help="ask about all twins of each design, and not about one")
    parser.add_argument("--show", action="store_true", help="print the spec and all that the tool says")
    asked_for = parser.parse_args()
    first, _, last = asked_for.seeds.partition("-")
    papers = (asked_for.paper,) if asked_for.paper not in ("", "a4", "letter", "roll") else ("a4", "letter")
    start, asked = perf_counter(), []
    for place, seed in enumerate(range(int(first), int(last or first) + 1)):
        if perf_counter() - start > asked_for.seconds:
            break
        design = true_design(seed, asked_for.kind, asked_for.paper)
        change, twin = false_twin(design)
        for name, bad in (
            ("true", untruths(design)),
            ("false", () if untruths(twin) else ("nothing is wrong with it",)),
        ):
            if bad:
                print(f"a fault of the generator: {design.kind} {seed}, {name} ({change}): {'; '.join(bad)}")
        if asked_for.every:
            asked += ask_all(design)
            continue
        asked.append(ask(design, papers if place < asked_for.build else ()))
        if asked_for.show:
            print(design.spec)
            for said in (asked[-1].said, asked[-1].built, asked[-1].twin):
                for rule, message in (*said.errors, *said.warnings) if said else ():
                    print(f"{rule}: {message}")
            print(asked[-1].wrong_facts, asked[-1].change, asked[-1].found_by)
    print("\n".join(lines(asked)))
    if asked_for.keep:
        _keep(asked, papers, Path(asked_for.keep))
    print(f"{perf_counter() - start:.0f} s")


def _keep(asked: list[Asked], papers: tuple[str, ...], folder: Path) -> None:
    """Make the first example of every way to fail small, and write it."""
    seen = set()
    for failure in (f for one in asked for f in failures(one, papers)):
        if failure.name not in seen:
            seen.add(failure.name)
            print(f"kept {keep(failure, smallest(failure), folder)}", flush=True)


if __name__ == "__main__":
    main()
