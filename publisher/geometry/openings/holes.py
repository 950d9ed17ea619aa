"""Openings without jambs: round holes, pockets for magnets and weights, pin holes."""

from collections.abc import Iterator

from publisher.basics import Finding, LineKind, Path, Point, Purpose, circle, polyline
from publisher.design import OpeningPlan
from publisher.geometry.model import Mark, Opening, ParameterInfo, ShapeInfo
from publisher.geometry.openings.kind import CENTRE, DrawnOpening, OpeningKind, centre_of
from publisher.geometry.paths import straight
from publisher.geometry.registry import Values, choice, length, mm

UP = ParameterInfo("up", "length", "height of its middle over the panel's bottom edge", None, 0.0)
HALF = "half the board"
LEAST_FLOOR = 1.0  # mm of board that stay under a pocket
CROSS = 2.0  # mm: arm of a pin hole's cross
PIN = 1.0  # mm: radius that a pin takes up, for the board around it


def _nothing(values: Values) -> Iterator[Finding]:
    del values
    yield from ()


def _round_hole(plan: OpeningPlan, values: Values, middle: float) -> DrawnOpening:
    radius, at = values.number("diameter") / 2.0, (centre_of(values, middle), values.number("up"))
    return _drawn(plan, circle(at, radius, f"{plan.name}.rim"), at, 2.0 * radius)


def _drawn(
    plan: OpeningPlan, path: Path, at: Point, size: float, high: float = 0.0, mark: Mark | None = None
) -> DrawnOpening:
    height = high or size
    return DrawnOpening(
        Opening(plan.name, plan.kind, path.reversed(), size, height, at[1] - height / 2.0, at[0]), path, False, mark
    )


def _check_pocket(values: Values) -> Iterator[Finding]:
    """Find a pocket without a size, with too many, or deeper than the board."""
    square = values.word("form") == "rectangle"
    wanted, other = (("width", "height"), ("diameter",)) if square else (("diameter",), ("width", "height"))
    for name in wanted:
        if not values.says(name):
            yield values.wrong(
                name, f"a pocket of the form {values.word('form')} needs {name}", f"write {name}: and its value"
            )
    for name in other:
        if values.says(name):
            yield values.wrong(
                name,
                f"{name} is given, but a pocket of the form {values.word('form')} has none",
                "leave it out, or change form",
            )
    most = values.thickness - LEAST_FLOOR
    if values.says("depth") and values.number("depth") > most:
        yield values.wrong(
            "depth",
            f"a pocket {mm(values.number('depth'))} deep cuts through board of {mm(values.thickness)}",
            f"make depth at most {mm(max(most, 0.0))}, or cut a round_hole or a window right through",
            most,
        )


def _pocket(plan: OpeningPlan, values: Values, middle: float) -> DrawnOpening:
    x, y = at = (centre_of(values, middle), values.number("up"))
    if values.word("form") == "round":
        width = height = values.number("diameter")
        path = circle(at, width / 2.0, f"{plan.name}.rim")
    else:
        width, height = values.number("width"), values.number("height")
        a, b = width / 2.0, height / 2.0
        path = straight(
            [(p, f"{plan.name}.rim") for p in ((x - a, y - b), (x + a, y - b), (x + a, y + b), (x - a, y + b))]
        )
    depth = values.number("depth") if values.says("depth") else values.thickness / 2.0
    words = f"pocket, {mm(depth)} deep from the {values.word('face')}"
    mark = Mark(LineKind.SCORE, Purpose.POCKET, path, plan.name, words)
    return _drawn(plan, path, at, width, height, mark)


def _pin_hole(plan: OpeningPlan, values: Values, middle: float) -> DrawnOpening:
    x, y = at = (centre_of(values, middle), values.number("up"))
    cross = ((x - CROSS, y), (x + CROSS, y), at, (x, y + CROSS), (x, y - CROSS))  # one line that goes back on itself
    mark = Mark(LineKind.DRAW, Purpose.CENTRE, polyline(cross), name=plan.name, text="pin")
    return _drawn(plan, circle(at, PIN, f"{plan.name}.rim"), at, 2.0 * PIN, mark=mark)


def _info(name: str, meaning: str, parameters: tuple[ParameterInfo, ...]) -> ShapeInfo:
    return ShapeInfo(name, meaning, (*parameters, CENTRE, UP))


ROUND_HOLE = OpeningKind(
    _info("round_hole", "a round hole: dowels, roundels, port holes", (length("diameter", "diameter of the hole"),)),
    _round_hole,
    _nothing,
)
POCKET = OpeningKind(
    _info(
        "pocket",
        "a place cut half through for a magnet or a weight",
        (
            choice("form", "outline of the pocket", ("round", "rectangle")),
            length("diameter", "diameter of a round pocket", "needed by the form round"),
            length("width", "width of a rectangular pocket", "needed by the form rectangle"),
            length("height", "height of a rectangular pocket", "needed by the form rectangle"),
            length("depth", "how deep it is cut", HALF, 0.5),
            choice("face", "face from which it is cut", ("inside", "outside")),
        ),
    ),
    _pocket,
    _check_pocket,
)
PIN_HOLE = OpeningKind(
    _info("pin_hole", "a place to prick through with a pin, marked by a cross", ()), _pin_hole, _nothing
)
