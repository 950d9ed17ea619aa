"""Board that tears or buckles where it is bent."""

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import lengths_apart, say_length, shares_apart
from publisher.design import Board
from publisher.geometry import CARD, LEAST_SLIT_BOARD, BentForm, Part
from publisher.joints.assembled import Assembled

MOST_STRAIN = 0.02
"""Share by which the faces of board that is bent plain get longer and shorter."""

LEAST_RADIUS = 8.0
"""Radius of a bend as a multiple of the thickness, of board that is covered and slit."""

BENT_PLAIN = ("tube_wrap", "cone_frustum")
"""Shapes that are never slit, whatever covers them."""


@checked(
    "joints/bent-too-tightly",
    "Board is bent no more tightly than it bears",
    f"bare foam tears beyond {MOST_STRAIN:.0%} of strain, and buckles under {LEAST_RADIUS:g} times its thickness even when it is slit "
    "and covered with paper or tape (common practice, no source; bend a scrap)",
    Severity.WARNING,
    may_be_empty=True,
)
def bent_too_tightly(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Hold the radius of every bent part against its board: t/2ρ where it is bent plain, 8 t where it is covered and slit."""
    looked_at = 0
    boards = {board.id: board for board in subject.design.boards}
    for part in subject.parts:
        if part.bending is None or part.thickness < CARD:  # which bends as it likes
            continue
        looked_at += 1
        fault = _fault(part, part.bending, boards[part.board])
        if fault is not None:
            what, hint, value, limit = fault
            yield check.found(
                f"part {part.letter} ({part.name}) {what} (common practice)",
                subject=part.id,
                hint=hint,
                place=part.place,
                value=value,
                limit=limit,
            )
    return looked_at


def _fault(part: Part, bending: BentForm, board: Board) -> tuple[str, str, float, float] | None:
    covered = bending.covered != "none" or board.faces != "bare"
    radius, least = bending.radius, LEAST_RADIUS * part.thickness
    if covered and bending.slits:
        if radius >= least - 1e-6:
            return None
        bent, bends = lengths_apart(radius, least)
        return (
            f"is bent to a radius of {bent}; board of {say_length(part.thickness)}, slit and covered, bends to {bends}",
            "make the radius larger, or use thinner board or thin card",
            radius,
            least,
        )
    strain = part.thickness / (2.0 * radius)
    if strain <= MOST_STRAIN + 1e-9:
        return None
    strains, takes = shares_apart(strain, MOST_STRAIN, 1)
    if part.shape == "cone":
        return (
            f"is bent to a radius of {say_length(radius)} next to its tip, which strains its faces by {strains}; board takes {takes}",
            f"roll it from card under {CARD:g} mm, or make it a cone_frustum that ends where it bends less",
            strain,
            MOST_STRAIN,
        )
    wide = f"make the radius {say_length(part.thickness / (2.0 * MOST_STRAIN))} or more, or use thinner board"
    plain = part.shape in BENT_PLAIN
    if plain or part.thickness < LEAST_SLIT_BOARD:
        kind = f"a {part.shape} is bent without slits, and such board" if plain else "board too thin to be slit"
        return (
            f"is bent to a radius of {say_length(radius)}, which strains its faces by {strains}; {kind} takes {takes}",
            f"{wide}, or roll it from card under {CARD:g} mm",
            strain,
            MOST_STRAIN,
        )
    lacks = "bare and not covered" if not covered else "not slit"
    helps = "covered: paper (or tape) over the whole face that stays, and slits" if not covered else "slits"
    return (
        f"is bent to a radius of {say_length(radius)}, which strains its faces by {strains}; board that is {lacks} takes {takes}",
        f"let it have {helps}, {wide}",
        strain,
        MOST_STRAIN,
    )
