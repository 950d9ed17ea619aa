"""Where the time of a build goes: ``python -m tests.benchmarks.stages [designs/bridge …]``, all demos when none is named.

One row a design: seconds of processor time of each stage, and below them the ratios to the bare imports of ``whole_path``. Each
build is a process of its own, for one paper (A4, sizes as written), in turn with the yardstick; medians are printed. The stages:
``load`` the interpreter and the imports of the command; ``read`` the folder; ``work`` sizes, parts, joints, layouts; ``compose``
pages and record; ``write`` PDF, previews, cut files, and putting them in place; ``prove`` the finished PDF.
"""

import json
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import process_time
from typing import Any

from tests.benchmarks.whole_path import KEPT, ROOT, YARDSTICK, run

STAGES = ("load", "read", "work", "compose", "write", "prove")
RUNS = 3
ME = "tests.benchmarks.stages"


def stages_of(folder: Path) -> dict[str, float]:
    """Build one design in this process and return the processor seconds of each stage. Raises SystemExit when it has errors."""
    from publisher.cli import look_for_rings_seldom

    look_for_rings_seldom()  # and all rooms at once: as the command does
    from publisher import api
    from publisher.api import Built
    from publisher.pipeline import building

    spent = dict.fromkeys(STAGES, 0.0)

    def timed(stage: str, call: Callable[..., Any]) -> Callable[..., Any]:
        def clocked(*args: Any, **named: Any) -> Any:
            start = process_time()
            try:
                return call(*args, **named)
            finally:
                spent[stage] += process_time() - start

        return clocked

    for stage, name in (("work", "work"), ("compose", "compose_packs"), ("prove", "prove")):
        setattr(building, name, timed(stage, getattr(building, name)))
    spent["load"] = process_time()
    brief = timed("read", api.read)(folder, (), ("a4",))
    with tempfile.TemporaryDirectory() as out:
        built: Built = api.build(brief)
        if not built.good:
            sys.exit(f"{folder} has errors")
        api.place(built, Path(out))
    spent["write"] = process_time() - sum(spent.values())
    return spent


def measured(folder: str) -> dict[str, float]:
    """Return the stages of one build in a process of its own."""
    words = (sys.executable, "-m", ME, "--here", folder)
    done = subprocess.run(words, cwd=ROOT, env=KEPT, check=True, capture_output=True, text=True)
    found: dict[str, float] = json.loads(done.stdout)
    return found


def row(folder: str) -> None:
    """Print the seconds of one design's stages, and their ratios to the bare imports."""
    yardstick = (sys.executable, "-c", YARDSTICK)
    measured(folder), run(*yardstick)
    pairs = [(measured(folder), run(*yardstick)[0]) for _ in range(RUNS)]
    seconds = [median(one[stage] for one, _ in pairs) for stage in STAGES]
    ratios = [median(one[stage] / bare for one, bare in pairs) for stage in STAGES]
    whole = median(sum(one.values()) for one, _ in pairs)
    times = median(sum(one.values()) / bare for one, bare in pairs)
    print(f"{Path(folder).name:12}" + "".join(f"{s:8.2f} s" for s in (*seconds, whole)))
    print(f"{'':12}" + "".join(f"{r:8.2f} ×" for r in (*ratios, times)), flush=True)


def main(words: list[str]) -> None:
    """Print the table; with ``--here`` the stages of one design in this process, as JSON."""
    if words[:1] == ["--here"]:
        print(json.dumps(stages_of(Path(words[1]))))
        return
    print(f"{'':12}" + "".join(f"{stage:>10}" for stage in (*STAGES, "all")))
    for folder in words or sorted(str(spec.parent) for spec in ROOT.glob("designs/*/spec.yaml")):
        row(folder)


if __name__ == "__main__":
    main(sys.argv[1:])
