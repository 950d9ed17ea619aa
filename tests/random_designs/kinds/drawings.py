"""Outlines drawn as SVG by the generator: polygons, round-cornered rectangles and smooth shores, stacked."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations, pairwise
from math import cos, pi, sin

from manifold3d import CrossSection, Manifold

from tests.random_designs.design import Base, Design, Need, Piece, Spec, Touch, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.solids import Point, box_of

STEPS = 160  # chords of a curve of a quarter of a metre lie within 0.002 mm of it


@dataclass(frozen=True, slots=True)
class Drawing:
    """Corners in mm on the drawing's page, y down; how they are joined; how many layers; what is wrong with the drawing."""

    base: Base
    form: str
    corners: tuple[Point, ...]
    radius: float
    count: int
    wide_off: float = 0.0
    gap: float = 0.0
    crossed: int = 0  # the corner that changes places with the second, so that the outline crosses itself


def draw(dice: Dice) -> Drawing:
    """Return an outline round a middle, so that it never crosses itself."""
    base = dice.base("Random drawing")
    form = dice.one_of(("polygon", "round", "shore"))
    size = dice.page_wide(40.0, 380.0, 0.0, base.paper)
    corners: tuple[Point, ...]
    if form == "round":
        high, radius = dice.size(40.0, max(40.0, min(size, 300.0))), dice.size(3.0, 18.0)
        corners = ((10.0, 10.0), (10.0 + size, 10.0), (10.0 + size, 10.0 + high), (10.0, 10.0 + high))
        return Drawing(base, form, corners, radius, dice.count(1, 6))
    n = dice.count(5, 12)
    radii = [dice.random.uniform(0.7, 1.0) * size / 2 for _ in range(n)]
    middle = 10.0 + size / 2
    corners = tuple(
        (round(middle + r * cos(2 * pi * k / n), 2), round(middle + r * sin(2 * pi * k / n), 2))
        for k, r in enumerate(radii)
    )
    return Drawing(base, form, corners, 0.0, dice.count(1, 6))


def _path(plan: Drawing) -> str:
    """Return the path data."""
    if plan.form == "round":
        (x, y), (right, _), (_, down), _ = plan.corners
        r = plan.radius
        arc = f"A {r:g} {r:g} 0 0 1"
        return (
            f"M {x + r:.3f} {y:.3f} H {right - r:.3f} {arc} {right:.3f} {y + r:.3f} V {down - r:.3f} {arc} {right - r:.3f} {down:.3f} "
            f"H {x + r:.3f} {arc} {x:.3f} {down - r:.3f} V {y + r:.3f} {arc} {x + r:.3f} {y:.3f} Z"
        )
    corners = list(plan.corners)
    if plan.crossed:
        corners[1], corners[plan.crossed] = corners[plan.crossed], corners[1]
    if plan.form == "polygon":
        body = "M " + " L ".join(f"{x:.2f} {y:.2f}" for x, y in corners)
    else:
        pairs = zip(_handles(corners), corners[1:] + corners[:1], strict=True)
        body = f"M {corners[0][0]:.2f} {corners[0][1]:.2f}" + "".join(
            f" C {a[0]:.3f} {a[1]:.3f} {b[0]:.3f} {b[1]:.3f} {x:.2f} {y:.2f}" for (a, b), (x, y) in pairs
        )
    if not plan.gap:
        return body + " Z"
    x, y = corners[0]
    return body + (f" L {x - plan.gap:.2f} {y:.2f}" if plan.form == "polygon" else "")


def _handles(corners: list[Point]) -> list[tuple[Point, Point]]:
    """Return the two handles of every curve: a sixth of the chord over each corner, rounded as they are written."""
    n = len(corners)
    made = []
    for i in range(n):
        before, a, b, after = (corners[(i + k) % n] for k in (-1, 0, 1, 2))
        out = (round(a[0] + (b[0] - before[0]) / 6, 3), round(a[1] + (b[1] - before[1]) / 6, 3))
        back = (round(b[0] - (after[0] - a[0]) / 6, 3), round(b[1] - (after[1] - a[1]) / 6, 3))
        made.append((out, back))
    return made


def outline(plan: Drawing) -> list[Point]:
    """Return the outline by our own reading of the path, anticlockwise, y up."""
    if plan.form == "round":
        (x, y), (right, _), (_, down), _ = plan.corners
        r = plan.radius
        middles = (
            (right - r, y + r, -90.0),
            (right - r, down - r, 0.0),
            (x + r, down - r, 90.0),
            (x + r, y + r, 180.0),
        )
        turns = [(a, b, (start + 90.0 * k / 24) * pi / 180) for a, b, start in middles for k in range(25)]
        down_ring = [(a + r * cos(u), b + r * sin(u)) for a, b, u in turns]
    elif plan.form == "polygon":
        down_ring = list(plan.corners)
    else:
        corners = list(plan.corners)
        down_ring = []
        for start, (a, b), end in zip(corners, _handles(corners), corners[1:] + corners[:1], strict=True):
            for k in range(STEPS):
                u = k / STEPS
                w = ((1 - u) ** 3, 3 * u * (1 - u) ** 2, 3 * u * u * (1 - u), u**3)
                bent = list(zip(w, (start, a, b, end), strict=True))
                down_ring.append((sum(c * p[0] for c, p in bent), sum(c * p[1] for c, p in bent)))
    return [(x, -y) for x, y in reversed(down_ring)]


def design(plan: Drawing) -> Design:
    """Return spec, drawing and solids."""
    t = plan.base.t
    section = CrossSection([outline(plan)])
    solid = Manifold.extrude(section, t)
    low, high = box_of(solid)
    width, height = float(high[0] - low[0]), float(high[1] - low[1])
    sheet = [max(c[i] for c in plan.corners) + 60.0 for i in (0, 1)]
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{sheet[0]:.3f}mm" height="{sheet[1]:.3f}mm" '
        f'viewBox="0 0 {sheet[0]:.3f} {sheet[1]:.3f}"><path id="outline" fill="none" stroke="#000" d="{_path(plan)}"/></svg>\n'
    )
    drawing: Spec = {"file": "outline.svg", "id": "outline", "width": mm(width + plan.wide_off), "height": mm(height)}
    assembly: Spec = {
        "slab": {"stack": [{"part": "layer", "count": plan.count} if plan.count > 1 else {"part": "layer"}]}
    }
    boards = tuple((f"layer {k + 1}", solid.translate([0.0, 0.0, k * t])) for k in range(plan.count))
    touches = tuple(
        Touch(f"layer {k}", f"layer {k + 1}", (0.0, 0.0, -1.0), section.area()) for k in range(1, plan.count)
    )
    truth = plan.count * t
    needs: tuple[Need, ...] = (need("slab.height", plan.base, truth),)
    facts = (
        ("layer.width", width),
        ("layer.height", height),
        ("layer.area", float(section.area())),
        ("slab.height", truth),
    )
    spec = frame(plan.base, {"layer": {"drawing": drawing}}, assembly, needs, max(width, height))
    # what the drawing fails to be: said here, as no solid can be made of it
    needs += (Need("the width that the spec states", width + abs(plan.wide_off), width),) if plan.wide_off else ()
    needs += (Need("an outline that closes", plan.gap, 0.0),) if plan.gap else ()
    needs += (Need("an outline that does not cross itself", 1.0, 0.0),) if plan.crossed else ()
    pieces = (Piece("slab", boards, touches),)
    return Design(
        "drawing", 0, plan, spec, (("outline.svg", svg),), pieces, needs, facts, f"layers ({plan.form})", plan.base
    )


def faults(plan: Drawing, dice: Dice) -> dict[str, Drawing]:
    """Return the drawing with a wrong width, an open or crossing outline, or a need that it does not meet."""
    made = {
        "another width than stated": replace(plan, wide_off=dice.size(0.1, 3.0) * dice.one_of((-1.0, 1.0))),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }
    if plan.form == "polygon":
        made["outline left open"] = replace(plan, gap=dice.size(0.2, 3.0))
        made["outline crosses itself"] = replace(plan, crossed=_crossing(plan))
    return made


def _still(plan: Drawing) -> Drawing:
    """Return a plan of other corners that crosses itself where it did."""
    return replace(plan, crossed=_crossing(plan)) if plan.crossed else plan


def _crossing(plan: Drawing) -> int:
    """Return the corner that makes the outline cross itself when it changes places with the second: some only make it bend back."""
    for other in range(2, len(plan.corners)):
        ring = list(plan.corners)
        ring[1], ring[other] = ring[other], ring[1]
        sides = list(pairwise([*ring, ring[0]]))
        if any(_cut(a, b) for a, b in combinations(sides, 2)):
            return other
    raise ValueError(f"no two corners of {plan.corners} make it cross itself")


def _cut(one: tuple[Point, Point], two: tuple[Point, Point]) -> bool:
    """Tell whether two sides cross between their ends."""

    def beside(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    (a, b), (c, d) = one, two
    return beside(a, b, c) * beside(a, b, d) < 0.0 and beside(c, d, a) * beside(c, d, b) < 0.0


def smaller(plan: Drawing) -> Iterator[Drawing]:
    """Return drawings with fewer corners and layers."""
    if plan.count > 1:
        yield replace(plan, count=1)
    if plan.form != "round" and len(plan.corners) > 4:
        for i in range(len(plan.corners)):
            yield _still(replace(plan, corners=plan.corners[:i] + plan.corners[i + 1 :]))
    if plan.form == "shore":
        yield replace(plan, form="polygon")
    rounded = tuple((round(x, 0), round(y, 0)) for x, y in plan.corners)
    if rounded != plan.corners:
        yield _still(replace(plan, corners=rounded))
