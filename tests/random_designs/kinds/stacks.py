"""Stacks of level layers: plinths, turned polygons, spiral stairs, straight flights, hills.

A row's turn and shift count for each of its layers, against the layer below it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import cos, hypot, pi, radians, sin

from manifold3d import CrossSection, JoinType, Manifold

from tests.random_designs.design import Base, Design, Piece, Spec, Touch, deg, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.judge import of_piece
from tests.random_designs.kinds.layers import COARSE, FINE, Layer, outline
from tests.random_designs.solids import Point

FIGURE = 0.294  # N: a figure of 30 g
FIGURE_BASE = 25.0  # mm: its load spreads over no more than that and its way to the root
NARROWEST = 5.0  # mm of a part in foam up to 5 mm thick, at its narrowest (common practice)
BESIDE = 0.2  # mm beside a rim in which all that crosses it is measured
STRENGTH = 0.345  # MPa, a maker's least value for extruded polystyrene (50 psi)
GLUED = 0.25  # of the smaller of two layers lies on the other, and a strip of it is at least 8 mm wide in 5 mm board (common practice)


@dataclass(frozen=True, slots=True)
class Row:
    """A row of a stack: the part's number, how many layers, turn (degrees) and shift (mm) of each against the one below."""

    part: int
    count: int = 1
    turn: float = 0.0
    shift: Point = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Stack:
    """Parts and rows from the table up; ``form`` says which kind of stack it is."""

    base: Base
    form: str
    parts: tuple[Layer, ...]
    rows: tuple[Row, ...]
    layers: int = 0  # of a hill
    centre: bool = False  # middles lie over each other, and not origins


ANGLES = ("step_angle", "turn")
COUNTS = ("sides",)


def draw(dice: Dice) -> Stack:
    """Return a stack of one of the forms."""
    base = dice.base("Random stack")
    forms = {
        "plinth": _plinth,
        "turned": _turned,
        "spiral": _spiral,
        "flight": _flight,
        "hill": _hill,
        "winding": _winding,
    }
    form = dice.one_of(tuple(forms))
    return forms[form](dice, base)


def _plinth(dice: Dice, base: Base) -> Stack:
    parts, rows = [], []
    radius = dice.page_wide(40.0, 240.0, 0.0, base.paper) / 2
    for number in range(dice.count(2, 4)):
        shape = dice.one_of(("disc", "regular_polygon"))
        sides = dice.count(4, 12)
        sizes = (
            (("radius", round(radius, 3)),)
            if shape == "disc"
            else (("sides", float(sides)), ("radius", round(radius, 3)))
        )
        parts.append(Layer(shape, sizes))
        rows.append(Row(number, dice.count(1, 4)))
        inner = radius if shape == "disc" else radius * cos(pi / sides)
        radius = inner - dice.above("terrace", 0.0, inner / 4)
        if radius < 12.0:
            break
    return Stack(base, "plinth", tuple(parts), tuple(rows))


def _turned(dice: Dice, base: Base) -> Stack:
    radius, sides = dice.size(20.0, 100.0), dice.count(3, 8)
    plinth = Layer("disc", (("radius", radius + dice.size(0.0, 10.0)),))
    polygon = Layer("regular_polygon", (("sides", float(sides)), ("radius", radius)))
    turn = dice.one_of((5.0, 10.0, 15.0, 22.5, 45.0)) * dice.one_of((1.0, -1.0))
    return Stack(base, "turned", (plinth, polygon), (Row(0), Row(1, dice.count(1, 12), turn)))


def _spiral(dice: Dice, base: Base) -> Stack:
    while True:
        steps = dice.count(10, 24)  # to a full turn
        turn, span = 360.0 / steps, dice.count(2, 3)
        core = dice.size(15.0, 45.0)
        reach = dice.size(core + 20.0, core + 80.0)
        root = core * radians(turn * span)
        across = 2 * core * sin(radians(turn * span) / 2)  # the step where it leaves the core: narrower is warned of
        bears = STRENGTH * root * base.t**2 / (6 * FIGURE * (reach - core)) >= 1.25
        if bears and across > NARROWEST * max(1.0, base.t / 5.0):
            break
    notch = dice.one_of((0.0, 4.0))
    climb = 1.0 if dice.chance(0.7) else -1.0
    turn = round(turn, 4)
    sizes = (
        ("core_radius", core),
        ("reach", reach),
        ("step_angle", round(span * turn, 4)),
        ("turn", climb * turn),
        ("notch", notch),
    )
    plinth = Layer("disc", (("radius", reach),))
    return Stack(
        base, "spiral", (plinth, Layer("spiral_stair_layer", sizes)), (Row(0), Row(1, dice.count(4, 30), climb * turn))
    )


def _flight(dice: Dice, base: Base) -> Stack:
    steps, going, wide, each = dice.count(2, 8), dice.size(12.0, 40.0), dice.size(30.0, 150.0), dice.count(1, 2)
    landing = dice.size(20.0, 60.0)
    parts, rows = [], []
    for i in range(steps):
        parts.append(Layer("rectangle", (("width", round(landing + going * (steps - 1 - i), 3)), ("height", wide))))
        rows.append(Row(i, 1, 0.0, (going, 0.0) if i else (0.0, 0.0)))
        if each > 1:
            rows.append(Row(i, each - 1))
    return Stack(base, "flight", tuple(parts), tuple(rows))


def _hill(dice: Dice, base: Base) -> Stack:
    length = dice.page_wide(80.0, 400.0, 0.0, base.paper)
    width = dice.size(0.5 * length, length)
    layers, inset = dice.count(2, 8), dice.size(6.0, 20.0)
    # an ellipse moved inwards keeps its form while its sharpest bend, b²/a, is larger than the move
    while inset * (layers - 1) > 0.7 * width**2 / length / 2 or inset * (layers - 1) > width / 2 - 15.0:
        if layers > 2:
            layers -= 1
        else:
            inset = round(inset / 2, 1)
    sizes = (("length", length), ("width", width), ("inset", inset))
    return Stack(base, "hill", (Layer("hill", sizes),), (Row(0),), layers)


def _winding(dice: Dice, base: Base) -> Stack:
    """Boards that turn and shift at once on a plate, about their corners or about their middles.

    None reaches over the plate's rim: where one does, a figure on it may tip the whole, and a warning is right.
    """
    while True:
        plate, board = (
            (dice.size(140.0, 260.0), dice.size(140.0, 260.0)),
            (dice.size(30.0, 80.0), dice.size(30.0, 80.0)),
        )
        parts = tuple(Layer("rectangle", (("width", w), ("height", h))) for w, h in (plate, board))
        centre = dice.chance(0.5)
        least = -20.0 if centre else 0.0
        turn, shift = dice.size(-30.0, 30.0, 0.5), (dice.size(least, 40.0), dice.size(least, 40.0))
        plan = Stack(
            base, "winding", parts, (Row(0, dice.count(1, 2)), Row(1, dice.count(1, 4), turn, shift)), 0, centre
        )
        lowest, *others = sections = _sections(plan, COARSE)
        if (
            all((other - lowest).is_empty() for other in others)
            and all(_holds(*pair, base.t) for pair in pairwise(sections))
            and _bears(sections, base.t)
            and not of_piece(_piece(plan))
        ):
            return plan


def _bears(sections: list[CrossSection], t: float) -> bool:
    """Tell whether each layer bears a figure at its bare edge over every lower one that it reaches beyond: by the strongest single board
    that crosses the rim there, and a quarter more."""
    for top in range(2, len(sections)):
        bare = sections[top] - sections[top + 1] if top + 1 < len(sections) else sections[top]
        edge = [(float(x), float(y)) for ring in bare.to_polygons() for x, y in ring]
        for over in range(top - 1, 0, -1):
            arm = max((_away(point, sections[over]) for point in edge), default=0.0)
            rim = sections[over].offset(BESIDE, JoinType.Miter) - sections[over]
            across = max((rim ^ one).area() / BESIDE for one in sections[over + 1 :])
            if STRENGTH * min(across, FIGURE_BASE + arm) * t**2 < 1.25 * 6 * FIGURE * arm:
                return False
    return True


def _away(point: Point, section: CrossSection) -> float:
    """Return how far (mm) a point lies from an area; 0 inside it."""
    disc = CrossSection.circle(0.01, 8).translate(point)
    if not (disc ^ section).is_empty():
        return 0.0
    sides = (side for ring in section.to_polygons() for side in zip(ring, [*ring[1:], ring[0]], strict=True))
    return min(_from_side(point, *side) for side in sides)


def _from_side(point: Point, a: Sequence[float], b: Sequence[float]) -> float:
    long = hypot(b[0] - a[0], b[1] - a[1])
    along = ((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / max(long**2, 1e-12)
    share = min(1.0, max(0.0, along))
    return hypot(point[0] - a[0] - share * (b[0] - a[0]), point[1] - a[1] - share * (b[1] - a[1]))


def _holds(below: CrossSection, above: CrossSection, t: float) -> bool:
    """Tell whether glue between two layers holds: over a quarter of the smaller one, in a strip that is wide enough."""
    common = below ^ above
    narrow = 4.0 * max(1.0, t / 5.0)
    return bool(
        common.area() > 1.01 * GLUED * min(below.area(), above.area())
        and not common.offset(-narrow, JoinType.Miter).is_empty()
    )


def design(plan: Stack) -> Design:
    """Return spec and solids."""
    names = [f"layer_{chr(97 + i)}" for i in range(len(plan.parts))]
    parts: Spec = {}
    for name, layer in zip(names, plan.parts, strict=True):
        parts[name] = {"shape": layer.shape, "with": {k: _written(k, v) for k, v in layer.sizes if v or k != "notch"}}
        if plan.layers:
            parts[name]["layers"] = plan.layers
    rows = []
    for row in plan.rows:
        written: Spec = {"part": names[row.part]}
        if row.count > 1:
            written["count"] = row.count
        if row.turn:
            written["turn"] = deg(row.turn)
        if row.shift != (0.0, 0.0):
            written["shift"] = [mm(row.shift[0]), mm(row.shift[1])]
        if plan.centre:
            written["at"] = "centre"
        rows.append(written)
    piece = _piece(plan)
    left, front, right, back = CrossSection.compose(_sections(plan, FINE)).bounds()
    size = [right - left, back - front, len(piece.boards) * plan.base.t]
    needs = (need("pile.height", plan.base, size[2]),)
    facts = [*zip(("pile.width", "pile.depth", "pile.height"), size, strict=True), *_stair_facts(plan)]
    longest = max(*size[:2], *(abs(v) for layer in plan.parts for _, v in layer.sizes))
    spec = frame(plan.base, parts, {"pile": {"stack": rows}}, needs, longest)
    return Design("stack", 0, plan, spec, (), (piece,), needs, tuple(facts), f"layers ({plan.form})", plan.base)


def _written(name: str, value: float) -> str | int:
    return deg(value) if name in ANGLES else round(value) if name in COUNTS else mm(value)


def _stair_facts(plan: Stack) -> list[tuple[str, float]]:
    """The climb; the headroom (n − m)·t where n layers make a turn, a step spans m and one lies over another; else, where no
    notch cuts into it, the largest circle on a bare tread: a sector of one turn between core and reach."""
    if plan.form != "spiral" or plan.rows[-1].count < 2:
        return []
    step, count, t = plan.parts[1], plan.rows[-1].count, plan.base.t
    facts = [("pile.climb", count * t)]
    bare = round((360.0 - step["step_angle"]) / abs(step["turn"]))  # n − m
    if count >= bare + 2:
        return [*facts, ("pile.headroom", bare * t)]
    half = sin(radians(abs(step["turn"]) / 2))
    rho = step["reach"] * half / (1 + half)
    if step["reach"] - 2 * rho < step["core_radius"]:
        rho = (step["reach"] - step["core_radius"]) / 2
    return [*facts, *([] if step["notch"] else [("pile.base_that_stands", 2 * rho)])]


def _sections(plan: Stack, fine: int) -> list[CrossSection]:
    """Return the outlines of all layers from the table up."""
    if plan.layers:
        ground, inset = CrossSection([outline(plan.parts[0], fine)]), plan.parts[0]["inset"]
        return [ground.offset(-k * inset, JoinType.Round, 2.0, fine) if k else ground for k in range(plan.layers)]
    sections: list[CrossSection] = []
    angle, at = 0.0, _middle(plan, plan.rows[0])
    for row in plan.rows:
        flat, own = CrossSection([outline(plan.parts[row.part], fine)]), _middle(plan, row)
        for _ in range(row.count):
            if sections:  # the lowest layer of all lies as it is drawn
                x, y = row.shift
                c, s = cos(radians(angle)), sin(radians(angle))
                at, angle = (at[0] + c * x - s * y, at[1] + s * x + c * y), angle + row.turn
            sections.append(flat.translate((-own[0], -own[1])).rotate(angle).translate(at))
    return sections


def _middle(plan: Stack, row: Row) -> Point:
    """Return the point of a row's part that lies over that of the layer below."""
    if not plan.centre:
        return (0.0, 0.0)
    left, low, right, high = CrossSection([outline(plan.parts[row.part], COARSE)]).bounds()
    return ((left + right) / 2, (low + high) / 2)


def _piece(plan: Stack) -> Piece:
    t = plan.base.t
    sections = _sections(plan, COARSE)
    boards = [(f"layer {k + 1}", Manifold.extrude(s, t).translate([0, 0, k * t])) for k, s in enumerate(sections)]
    touches = []
    for k, (below, above) in enumerate(pairwise(sections)):
        common = (below ^ above).area()
        # a layer that lies on less than a fifth of itself, or on a hair, is not said to hold
        touches.append(
            Touch(
                f"layer {k + 1}", f"layer {k + 2}", (0.0, 0.0, -1.0), max(common, 0.2 * min(below.area(), above.area()))
            )
        )
    return Piece("pile", tuple(boards), tuple(touches))


def faults(plan: Stack, dice: Dice) -> dict[str, Stack]:
    """Return the stack with its top row shifted off, or so far that it falls, or with a need that it does not meet."""
    made = {"a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0)))}
    if plan.layers:
        return made
    boxes = [CrossSection([outline(part, COARSE)]).bounds() for part in plan.parts]
    wide = [right - left for left, _, right, _ in boxes]
    reach = max(hypot(right - left, high - low) for left, low, right, high in boxes)  # however both are turned
    *rows, last = plan.rows
    made["top layers beside the stack"] = replace(
        plan, rows=(*rows, replace(last, count=1, shift=(round(reach + dice.size(1.0, 20.0), 3), 0.0)))
    )
    for share in (0.3, 0.45, 0.6, 0.75, 0.9):
        slid = round(wide[last.part] * share, 1)
        moved = tuple(replace(row, shift=(row.shift[0] + slid, 0.0)) if i else row for i, row in enumerate(plan.rows))
        falling = replace(plan, rows=moved)
        if any("falls over" in said for said in of_piece(_piece(falling))):
            made["slid until it falls"] = falling
            break
    return made


def smaller(plan: Stack) -> Iterator[Stack]:
    """Return stacks of fewer rows and layers, with rounder sizes."""
    if len(plan.rows) > 2:
        yield replace(plan, rows=plan.rows[:-1])
        yield replace(plan, rows=plan.rows[1:])
    for i, row in enumerate(plan.rows):
        for fewer in {1, row.count // 2} - {0, row.count}:
            yield replace(plan, rows=(*plan.rows[:i], replace(row, count=fewer), *plan.rows[i + 1 :]))
    if plan.layers > 2:
        yield replace(plan, layers=2)
    used = {row.part for row in plan.rows}
    if len(used) < len(plan.parts):
        keep = sorted(used)
        yield replace(
            plan,
            parts=tuple(plan.parts[k] for k in keep),
            rows=tuple(replace(r, part=keep.index(r.part)) for r in plan.rows),
        )
    for step in (20.0, 10.0, 1.0):
        for i, layer in enumerate(plan.parts):
            rounded = tuple(
                (k, v if k in (*ANGLES, *COUNTS) or not v else max(step, round(v / step) * step))
                for k, v in layer.sizes
            )
            if rounded != layer.sizes:
                yield replace(plan, parts=(*plan.parts[:i], replace(layer, sizes=rounded), *plan.parts[i + 1 :]))
