"""Time of all facts of spiral stacks of 25, 50, 100 and 200 layers; run as ``python -m tests.benchmarks.stacks`` from the top.

Each stack is worked out three times from nothing and the least CPU time counts, as others may use the machine. Growth is the
slope of log(time) over log(layers) between 25 and 200 layers: 1 is linear.
"""

from math import acos, ceil, cos, inf, log, radians, sin
from time import process_time

from publisher.basics import LineKind, Place, Point, Purpose, polyline
from publisher.design import Board, SheetSize, StackPlan, StackRow
from publisher.geometry import Mark, Part, Region
from publisher.joints.stacks.facts import facts_of, report_on
from publisher.joints.stacks.layers import lay_all

HERE = Place("spec.yaml", 1, 1)
BOARDS = {"foam": Board("foam", 5.0, 0.2, "bare", (SheetSize("20 x 30 in", 508.0, 762.0),), 1.0, 3.0, "none", HERE)}
TURN, CORE, REACH = 15.0, 30.0, 92.0
COUNTS = (25, 50, 100, 200)


def step() -> Part:
    """A step of two turns with 27 joints round its core, arcs flattened to 0.005 mm as geometry does."""

    def arc(radius: float, first: float, last: float) -> list[Point]:
        many = max(1, ceil(abs(radians(last - first)) / (2 * acos(1 - 0.005 / radius))))
        at = [radians(first + (last - first) * i / many) for i in range(many + 1)]
        return [(radius * cos(a), radius * sin(a)) for a in at]

    points = arc(REACH, 0, 2 * TURN) + arc(CORE, 2 * TURN, 360)
    ticks = []
    for i in range(1, 27):
        a = radians(360 * i / 27)
        if a > radians(2 * TURN):
            ends = ((CORE * cos(a), CORE * sin(a)), ((CORE - 3) * cos(a), (CORE - 3) * sin(a)))
            ticks.append(Mark(LineKind.DRAW, Purpose.JOINT_TICK, polyline(ends)))
    region = Region(polyline(points, True, "rim"))
    return Part(
        "step", "A", "Step", "foam", 5.0, "", region, region, (), tuple(ticks), (), 1, 0, 0, "any", 0.0, HERE
    )  # fmt: skip


def work_out_facts(layers: int, regular: bool = True) -> None:
    """Work out all facts of a stack from nothing.

    ``regular``: every layer turned alike; otherwise in rows of seven, each row with a turn of its own.
    """
    part = step()
    if regular:
        rows = (StackRow("step", layers, TURN, (0.0, 0.0), HERE),)
    else:
        turns = [TURN + (i * 7 % 5) - 2.0 for i in range(ceil(layers / 7))]
        rows = tuple(StackRow("step", min(7, layers - 7 * i), t, (0.0, 0.0), HERE) for i, t in enumerate(turns))
    plan = StackPlan("s", rows, "", 0.0, False, HERE)
    (stack,), _ = lay_all((plan,), {"step": part})
    assert facts_of(report_on(stack, {"step": part}, BOARDS, inf, HERE), {"step": part}, BOARDS)


def seconds(layers: int, regular: bool) -> float:
    """Return the least of three times of the processor in which all facts of a stack were worked out, in seconds."""
    best = inf
    for _ in range(3):
        start = process_time()
        work_out_facts(layers, regular)
        best = min(best, process_time() - start)
    return best


def main() -> None:
    """Print the table."""
    for regular in (True, False):
        times = {count: seconds(count, regular) for count in COUNTS}
        growth = log(times[200] / times[25]) / log(200 / 25)
        print("every layer turned alike" if regular else "rows of seven, each turned by another angle")
        for count, time in times.items():
            print(f"  {count:4} layers  {time:7.3f} s")
        print(f"  growth: layers to the power {growth:.2f}")


if __name__ == "__main__":
    main()
