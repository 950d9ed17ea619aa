"""How long a drawing of many nodes takes: ``python -m tests.benchmarks.drawings``.

A wavy outline of straight pieces, then of curves, with 2,000 to 60,000 nodes: seconds of the processor to look at it, and to take it
as a part. Returns 1 when 20,000 nodes take more than two seconds.
"""

import sys
from collections.abc import Callable
from math import cos, pi, sin

from publisher.basics import Place
from publisher.design import DrawingPlan
from publisher.geometry import look_at
from publisher.geometry.making.parts import make_part
from tests.benchmarks.yardstick import seconds
from tests.geometry.conftest import make_plan

MOST_SECONDS = 2.0
JUDGED = 20_000


def wavy(nodes: int, curved: bool) -> bytes:
    """Return a drawing of 100 mm whose outline has this many nodes, joined by lines or by curves through them."""

    def at(k: float) -> tuple[float, float]:
        turn = 2.0 * pi * k / nodes
        reach = 40.0 + 1.5 * sin(37.0 * turn)
        return 50.0 + reach * cos(turn), 50.0 + reach * sin(turn)

    def said(k: float) -> str:
        return "{:.4f},{:.4f}".format(*at(k))

    pieces = (
        f"C{said(k + 1 / 3)} {said(k + 2 / 3)} {said(k + 1)}" if curved else f"L{said(k + 1)}" for k in range(nodes)
    )
    head = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">'
    return f'{head}<path id="outline" d="M{said(0)}{"".join(pieces)}Z"/></svg>'.encode()


def main() -> int:
    """Print the table; return 1 when the judged drawing takes too long."""
    drawing = DrawingPlan("wavy.svg", "outline", None, None, (), Place("spec.yaml", 1, 1))
    worst = 0.0
    print(f"{'nodes':>7} {'joined by':10} {'look':>7} {'part':>7}   pieces of the part")
    for nodes in (2_000, 20_000, 60_000):
        for curved in (False, True):
            data = wavy(nodes, curved)
            made: list[str] = []

            def part(data: bytes = data, made: list[str] = made) -> None:
                found = make_part(make_plan("", {}, drawing=drawing), data)
                made.append(f"{len(found[0].outline.outer.edges)}" if found[0] else found[1][0].message)

            works: tuple[Callable[[], object], ...] = (lambda data=data: look_at(data, "wavy.svg"), part)
            took = [seconds(work) for work in works]
            print(
                f"{nodes:7,} {'curves' if curved else 'lines':10} {took[0]:5.2f} s {took[1]:5.2f} s   {made[-1]}",
                flush=True,
            )
            worst = max(worst, *took) if nodes == JUDGED else worst
    return int(worst > MOST_SECONDS)


if __name__ == "__main__":
    sys.exit(main())
