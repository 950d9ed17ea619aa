"""What each room does most, beside a fixed work: ``python -m tests.benchmarks.rooms``. Returns 1 when a ratio is over its limit."""

import json
import sys
from functools import partial
from math import cos, pi, sin
from pathlib import Path

from publisher.basics import Place
from publisher.brief import read_brief
from publisher.design import Parameter, PartPlan, SurfacePlan, work_out
from publisher.geometry import look_at, make_parts, shape_infos
from publisher.geometry.making.parts import make_part
from publisher.joints import put_together
from publisher.material import lay_out
from publisher.proof import prove
from tests.benchmarks.stacks import work_out_facts
from tests.benchmarks.yardstick import compare, seconds
from tests.proof.conftest import good_pack

ROOT = Path(__file__).parents[2]
HERE = Place("spec.yaml", 1, 1)


def plan(shape: str, sizes: dict[str, float | str], surface: SurfacePlan | None = None) -> PartPlan:
    """Return the plan of a part of a shape, traced at 0.4 mm."""
    return PartPlan(
        id="p", letter="A", name="Part", board="foam", thickness=5.0, shape=shape, parameters=parameters(sizes), openings=(),
        surface=surface, drawing=None, treatments=(), count=1, spare=0, mirrored=0, turning="any", trace_allowance=0.4, place=HERE,
    )  # fmt: skip


def parameters(sizes: dict[str, float | str]) -> tuple[Parameter, ...]:
    """Return sizes as values that stand in a spec."""
    return tuple(Parameter(name, value, str(value), HERE) for name, value in sizes.items())


def slowest_shape() -> PartPlan:
    """Return the plan of the shape that takes longest with the example sizes of the docs."""
    examples = json.loads((ROOT / "docs" / "examples.json").read_text(encoding="utf-8"))["shapes"]
    plans = []
    for info in shape_infos():
        sizes = {n: v if isinstance(v, str) else float(v) for n, v in examples[info.name].items()}
        plans.append(plan(info.name, sizes))
    return max(plans, key=lambda p: min(seconds(partial(make_part, p)) for _ in range(3)))


def drawing(corners: int) -> bytes:
    """Return a drawing of a star of so many corners."""
    points = (
        ((100.0 + 2.0 * (k % 2)) * cos(a) + 150.0, (100.0 + 2.0 * (k % 2)) * sin(a) + 150.0)
        for k, a in ((k, 2.0 * pi * k / corners) for k in range(corners))
    )
    path = " ".join(f"{x:.3f},{y:.3f}" for x, y in points)
    head = '<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="300mm" viewBox="0 0 300 300">'
    return f'{head}<path id="o" d="M{path}z"/></svg>'.encode()


def main() -> int:
    """Print the table; return 1 when a ratio is over its limit."""
    rows = []
    for slug in ("lock-stair", "toll-house", "quay"):
        folder = ROOT / "designs" / slug
        brief = read_brief(folder)
        design = work_out(brief)
        parts, _ = make_parts(design)
        rows += [
            compare(f"{slug}: read", partial(read_brief, folder), 3.0),
            compare(f"{slug}: sizes and plans", partial(work_out, brief), 0.5),
            compare(f"{slug}: parts", partial(make_parts, design), 4.0),
            compare(f"{slug}: put together", partial(put_together, design, parts), 40.0, 3),
            compare(f"{slug}: layouts from the store", partial(lay_out, design, parts), 12.0, 3),
        ]
    slow = slowest_shape()
    bricks = SurfacePlan("brick", parameters({"length": 9.0, "height": 3.0}), 0, HERE)
    wall = plan("wall_panel", {"width": 270.0, "height": 200.0}, bricks)
    pack = good_pack()
    rows += [
        compare(f"the slowest shape, {slow.shape}", partial(make_part, slow), 2.0),
        compare("a wall of 2,000 bricks", partial(make_part, wall), 3.0),
        compare("a drawing of 5,000 corners", partial(look_at, drawing(5000), "star.svg"), 16.0),
        compare("facts of a stack of 24 layers", partial(work_out_facts, 24), 20.0, 3),
        compare("a proof of four pages", partial(prove, pack.write(), pack.promises, "good.pdf"), 16.0, 3),
    ]
    return 0 if all(rows) else 1


if __name__ == "__main__":
    sys.exit(main())
