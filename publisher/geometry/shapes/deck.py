"""A bridge deck: a rectangle whose long edges lie on the sides or take parapets in rebates."""

from collections.abc import Iterator

from publisher.basics import Finding, LineKind, Purpose, polyline
from publisher.geometry.model import Mark
from publisher.geometry.registry import LOWER_LEFT, SIDES, Shape, Values, length, mm, rectangle, shape_kind
from publisher.geometry.rules import LEAST_WALL


def check(values: Values) -> Iterator[Finding]:
    """Find rebates or kerbs that leave no roadway between them."""
    width, rebate, kerb = (values.number(name) for name in ("width", "rebate", "kerb"))
    if width - 2.0 * (rebate + kerb) < LEAST_WALL - 1e-9:
        yield values.wrong(
            "rebate" if rebate else "kerb",
            f"rebates of {mm(rebate)} and kerbs of {mm(kerb)} on both sides leave no roadway on a deck {mm(width)} wide",
            f"together they may take at most {mm((width - LEAST_WALL) / 2.0)} on each side",
            (width - LEAST_WALL) / 2.0,
        )


def build(values: Values) -> Shape:
    """Return the deck seen from above, lower left corner at the origin; area length × width.

    A rebate is a strip along each long edge where the foam is taken off, so that a parapet stands in it: its inner line is
    scored. A kerb is a line drawn along the roadway.
    """
    whole, w, rebate, kerb = (values.number(name) for name in ("length", "width", "rebate", "kerb"))
    marks = []
    if rebate > 0.0:
        for at in (rebate, w - rebate):
            text = f"take off the foam, {mm(rebate)} wide" if at == rebate else ""
            marks.append(
                Mark(LineKind.SCORE, Purpose.LAP, polyline(((0.0, at), (whole, at))), name="rebate", text=text)
            )
    if kerb > 0.0:
        for at in (rebate + kerb, w - rebate - kerb):
            marks.append(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, at), (whole, at))), name="kerb"))
    return rectangle(whole, w, marks=tuple(marks))


KIND = shape_kind(
    "deck",
    "a bridge deck seen from above, with rebates for its parapets and lines for its kerbs if wanted",
    (
        length("length", "length of the deck, along the bridge"),
        length("width", "width of the deck over all"),
        length("rebate", "width of the strip on each side where a parapet stands in the deck (0 = none)", 0.0, 0.0),
        length("kerb", "width of the kerb drawn on each side of the roadway (0 = none)", 0.0, 0.0),
    ),
    SIDES,
    build,
    check,
    origin=LOWER_LEFT,
)
