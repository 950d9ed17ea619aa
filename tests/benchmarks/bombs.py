"""Input that is made to exhaust a reader, beside good input of its kind: ``python -m tests.benchmarks.bombs``.

Each bomb of ``tests/hostile/`` and of the proof's reader is read once. Printed, per kind: the slowest bombs, in seconds and as ratios to
a good one. Returns 1 when a ratio is over the limit of its kind: the reader hangs, or nearly.
"""

import sys
import tempfile
from collections.abc import Callable, Mapping
from contextlib import suppress
from functools import partial
from pathlib import Path
from types import SimpleNamespace

from publisher.basics import Refusal
from publisher.brief import read_brief
from publisher.geometry import look_at
from publisher.proof import prove
from tests.benchmarks.rooms import drawing
from tests.benchmarks.yardstick import seconds
from tests.hostile import test_brief_hostile, test_svg_hostile
from tests.proof.conftest import good_pack, raw_pdf, raw_stream
from tests.proof.reading.test_reader import odd_files

ROOT = Path(__file__).parents[2]
SHOWN = 3


def table(kind: str, good: Callable[[], object], bombs: Mapping[str, Callable[[], object]], most: float) -> bool:
    """Print the slowest bombs of a kind; return whether all stay below ``most`` times a good one."""

    def take(work: Callable[[], object]) -> None:
        with suppress(Refusal):
            work()

    usual = min(seconds(good) for _ in range(5))
    times = sorted(((seconds(partial(take, work)), name) for name, work in bombs.items()), reverse=True)
    for took, name in times[:SHOWN]:
        print(f"{kind:8} {name:32} {took:7.3f} s {took / usual:8.1f} × (at most {most:g})", flush=True)
    return times[0][0] <= most * usual


def specs(folder: Path) -> dict[str, Callable[[], object]]:
    """Write each hostile spec into a folder of its own; return how each is read."""
    for name, text in test_brief_hostile.BOMBS.items():
        (folder / name).mkdir()
        (folder / name / "spec.yaml").write_text(text(), encoding="utf-8")
    return {name: partial(read_brief, folder / name) for name in test_brief_hostile.BOMBS}


def main() -> int:
    """Print the table; return 1 when a bomb takes too long."""
    drawings = {
        name: partial(look_at, f"{body}{'' if name == 'deep' else '</svg>'}".encode(), "hostile.svg")
        for name, (body, _) in test_svg_hostile.HOSTILE.items()
    }
    kit = SimpleNamespace(good=good_pack, raw_pdf=raw_pdf, raw_stream=raw_stream)
    pack = good_pack()
    files = {name: partial(prove, data, pack.promises, f"{name}.pdf") for name, data in odd_files(kit).items()}
    with tempfile.TemporaryDirectory() as folder:
        house = ROOT / "designs" / "toll-house"
        rows = [
            table("spec", partial(read_brief, house), specs(Path(folder)), 80.0),
            table("drawing", partial(look_at, drawing(5000), "star.svg"), drawings, 40.0),
            table("pack", partial(prove, pack.write(), pack.promises, "good.pdf"), files, 20.0),
        ]
    return 0 if all(rows) else 1


if __name__ == "__main__":
    sys.exit(main())
