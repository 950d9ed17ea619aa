"""``python -m tests.searches [NAME …] [--cases N] [--seed S]``: many new random cases for each search, or for those named.

A NAME is (a part of) the name of a test or of its file. The seconds of each search are printed; ``--list`` only names them.

``python -m tests.searches mutants --seed S --count N``: packs made by a changed program, one change at a time; what proof lets through.
"""

import argparse
import sys
from pathlib import Path

import pytest

from tests.proof.mutants import __main__ as mutants

TESTS = Path(__file__).parent.parent


def files(names: list[str]) -> list[str]:
    """Return the files that may hold a search of one of the names: the others need not be loaded, nor their cases be counted out."""
    found = (file for file in sorted(TESTS.rglob("test_*.py")) if file.is_file())
    return [str(file) for file in found if any(name in file.name or name in file.read_text("utf-8") for name in names)]


def main(words: list[str]) -> int:
    """Run the searches by pytest, or the mutants by their own bench; return the exit code."""
    if words[:1] == ["mutants"]:
        return mutants.main(words[1:])
    parser = argparse.ArgumentParser(prog="python -m tests.searches", description=__doc__)
    parser.add_argument("names", nargs="*", metavar="NAME", help="searches to run (all)")
    parser.add_argument("--cases", type=int, help="cases of each search, in place of its own number")
    parser.add_argument("--seed", type=int, help="the seed of an earlier run, to repeat it")
    parser.add_argument("--workers", default="auto", help="processes at a time (as many as there are cores)")
    parser.add_argument("--list", action="store_true", help="name the searches, run none")
    given = parser.parse_args(words)
    asked = ["-m", "search", "--large", "-p", "no:cacheprovider"]
    asked += [*files(given.names), "-k", " or ".join(given.names)] if given.names else []
    asked += [f"--{name}={value}" for name in ("cases", "seed") if (value := getattr(given, name)) is not None]
    return int(pytest.main([*asked, *(["--collect-only"] if given.list else ["-n", given.workers])]))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
