"""Whether a design is true, by its solids alone: a list of what is not, empty when all of it is."""

from manifold3d import CrossSection, Manifold

from tests.random_designs.design import Design, Piece
from tests.random_designs.solids import box_of, centroid, contact, inside_by, shared, united

GAP = 0.02  # mm: boards nearer to each other touch; the contact is what enters when one is moved by it
SHARE = 0.995  # of the contact that a join states must be there
SPACE = 1e-4  # of the smaller board may lie in another: round-off of flattened arcs
SAME = 1e-6  # mm: two sums of floats that mean one size
UPRIGHT = 0.5  # mm by which the centre of mass lies inside what carries it


def untruths(design: Design) -> tuple[str, ...]:
    """Return in words all that does not hold in a design."""
    said = [text for piece in design.pieces for text in of_piece(piece)]
    said += [f"{n.fact} is {n.truth:.7f}, not {n.at_least:.7f}" for n in design.needs if n.truth < n.at_least - SAME]
    return tuple(said)


def of_piece(piece: Piece) -> list[str]:
    """Return what does not hold in one assembly."""
    boards = dict(piece.boards)
    said = [f"{name} is no solid" for name, solid in boards.items() if solid.is_empty() or solid.volume() < 1.0]
    if said:
        return said
    whole = united(list(boards.values()))
    said = [*_apart(boards, whole), *_touching(piece, boards), *_whole(piece, boards), *_fitting(piece)]
    return [*said, *_standing(piece, boards, whole)]


def _apart(boards: dict[str, Manifold], whole: Manifold) -> list[str]:
    """The union of all boards has the sum of their volumes."""
    volumes = [solid.volume() for solid in boards.values()]
    over = sum(volumes) - whole.volume()
    return [f"boards share {over:.1f} mm³"] if over > max(0.5, SPACE * min(volumes)) else []


def _touching(piece: Piece, boards: dict[str, Manifold]) -> list[str]:
    said = []
    for touch in piece.touches:
        area = contact(boards[touch.a], boards[touch.b], touch.way, GAP)
        if area < SHARE * touch.area:
            said.append(f"{touch.a} and {touch.b} touch on {area:.0f} of {touch.area:.0f} mm²")
    return said


def _whole(piece: Piece, boards: dict[str, Manifold]) -> list[str]:
    """All boards hang together by what touches, or stands in what takes it."""
    pairs = [{t.a, t.b} for t in piece.touches] + [set(fit.holds) for fit in piece.fits]
    reached, more = {next(iter(boards))}, True
    while more:
        new = {name for pair in pairs if pair & reached for name in pair} - reached
        reached, more = reached | new, bool(new)
    return [f"nothing holds {name}" for name in boards if name not in reached]


def _fitting(piece: Piece) -> list[str]:
    return [f"{f.name}: the thickest board does not go in" for f in piece.fits if shared(f.tongue, f.board) > 0.5]


def _standing(piece: Piece, boards: dict[str, Manifold], whole: Manifold) -> list[str]:
    """The centre of mass stands over what lies on the table, and that of each resting board over what carries it."""
    low, _ = box_of(whole)
    said = [] if abs(low[2]) < GAP else [f"{piece.name} begins {low[2]:.2f} mm above the table"]
    if inside_by(whole.slice(float(low[2]) + GAP), centroid(whole)) < UPRIGHT:
        said.append(f"{piece.name} falls over")
    for rest in piece.rests:
        own = boards[rest.board]
        under = [(own.translate([0.0, 0.0, -GAP]) ^ boards[name]).project() for name in rest.on]
        carried = CrossSection.compose([part for part in under if not part.is_empty()]) if under else CrossSection()
        if inside_by(carried, centroid(own)) < UPRIGHT:
            said.append(f"{rest.board} falls off what it rests on")
    return said
