"""``python -m tests.whole.kills FOLDER OUT SEED KILLS PAIRS``: commands killed at random moments, and two of them at once.

Each round forks a process that places what was built before in this one, so that nearly all kills strike while files are put in
place. After each kill the next command comes to the folder, which must then hold one set or the other, whole, and nothing else.
"""

import os
import signal
import sys
import time
from collections import Counter
from collections.abc import Callable
from functools import partial
from pathlib import Path
from random import Random

from publisher import api
from publisher.pipeline import Built
from publisher.release import bundle_of, place_bundle
from tests.whole.conftest import changed, everything


def forked(work: Callable[[], object]) -> int:
    """Start a process that does one thing; return its number."""
    child = os.fork()
    if not child:
        try:
            work()
        finally:
            os._exit(0)
    return child


def killed(work: Callable[[], object], after: float) -> bool:
    """Do a thing in a process that is killed ``after`` seconds; say whether it lived until then."""
    child = forked(work)
    time.sleep(after)
    os.kill(child, signal.SIGKILL)
    _, status = os.waitpid(child, 0)
    return os.WIFSIGNALED(status)


def timed(work: Callable[[], object]) -> float:
    """Return the seconds by the clock that a process takes for a thing: kills are spread over them."""
    start = time.monotonic()
    os.waitpid(forked(work), 0)
    return time.monotonic() - start


def kill_builds(builds: tuple[Built, Built], out: Path, dice: Random, kills: int) -> Counter[str]:
    """Kill one build after the other in one folder; count how it was left, by what the next command made of it."""
    whole = [everything(api.place(built, out / f"alone-{k}").folder) for k, built in enumerate(builds)]
    home = api.place(builds[0], out / "packs").folder
    seconds, seen = timed(lambda: api.place(builds[1], out / "packs")), Counter[str]()
    while seen["killed"] < kills:
        now = everything(home)
        new = 1 - whole.index(now)  # the other one
        if not killed(partial(api.place, builds[new], out / "packs"), dice.uniform(0.0, 1.1 * seconds)):
            continue
        seen["killed"] += 1
        seen["unfinished until the next command"] += everything(home) not in whole
        api.settle(home)
        left = everything(home)
        seen["rolled forward" if left == whole[new] else "as before" if left == now else "MIXED"] += 1
        seen["LEFTOVERS"] += any(path.name.startswith(".publisher") for path in home.rglob("*"))
    return seen


def kill_releases(built: Built, out: Path, dice: Random, kills: int) -> Counter[str]:
    """Kill one release after the other, each to a folder of its own; count what the next release makes of it."""
    bundle = bundle_of((built.offer,))
    whole = everything(place_bundle(bundle, out / "alone").folder)
    seconds, seen, turn = timed(lambda: place_bundle(bundle, out / "timed")), Counter[str](), 0
    while seen["killed"] < kills:
        turn += 1
        releases = out / f"{turn}"
        if not killed(partial(place_bundle, bundle, releases), dice.uniform(0.0, 1.1 * seconds)):
            continue
        seen["killed"] += 1
        home = releases / bundle.slug
        seen["placed"] += (home / bundle.version).exists()
        seen["HALF"] += (home / bundle.version).exists() and everything(home / bundle.version) != whole
        place_bundle(bundle, releases)
        seen["MIXED"] += everything(home) != {f"{bundle.version}/{name}": data for name, data in whole.items()}
    return seen


def pair_up(builds: tuple[Built, Built], out: Path, pairs: int) -> Counter[str]:
    """Let two processes place two sets in one folder at once."""
    whole = [everything(api.place(built, out / f"alone-{k}").folder) for k, built in enumerate(builds)]
    seen = Counter[str]()
    for turn in range(pairs):
        packs = out / f"{turn}"
        for child in [forked(partial(api.place, built, packs)) for built in builds]:
            os.waitpid(child, 0)
        left = everything(packs / builds[0].slug)
        seen["pairs"] += 1
        seen[f"the {('first', 'second')[whole.index(left)]} came last" if left in whole else "MIXED"] += 1
    return seen


def main(folder: Path, out: Path, seed: int, kills: int, pairs: int) -> int:
    """Print what was seen; return 1 when a set was mixed, half or left with leftovers."""
    first = api.build(api.read(folder, papers=("a4", "letter")))
    changed(folder, "count: 3", "count: 9")
    second = api.build(api.read(folder, papers=("a4",)))
    rows = {
        "build": kill_builds((first, second), out / "builds", Random(seed), kills),
        "release": kill_releases(first, out / "releases", Random(seed), kills),
        "two at once": pair_up((first, second), out / "pairs", pairs),
    }
    for name, seen in rows.items():
        print(f"{name}: {', '.join(f'{count} {what}' for what, count in seen.items())}")
    return int(any(what.isupper() and count for seen in rows.values() for what, count in seen.items()))


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), Path(sys.argv[2]), *map(int, sys.argv[3:])))
