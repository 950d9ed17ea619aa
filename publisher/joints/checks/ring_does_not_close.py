"""Joins that close a ring of panels and do not meet."""

from math import acos, asin, atan2, cos, degrees, pi, radians

from publisher.basics import Check, Findings, checked
from publisher.basics.wording import figures_apart, listed, say_mm, trimmed
from publisher.design import Join
from publisher.geometry import Edge
from publisher.joints.assembled import Assembled, MatedPanels
from publisher.joints.panels import ANGLE, RING_GAP, exchanged_edges, matings_of, meets


@checked(
    "joints/ring-does-not-close",
    "Rings of panels close",
    f"signed turns must sum to 360° and edge vectors to zero, or the last joint stays open: within {ANGLE:g}° and {RING_GAP:g} mm",
    may_be_empty=True,
)
def ring_does_not_close(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure every join where its panels stand: a ring closes when its turns sum to 360° and its edges to zero, so that
    the join that no panel was placed by meets as well."""
    looked_at = 0
    for mated in subject.panels:
        cure = ""
        for mating in mated.matings:
            looked_at += 1
            if meets(mating):
                continue
            join = mating.join
            turned = abs(mating.corner - join.corner)
            if turned > ANGLE:
                stand, said = figures_apart(mating.corner, join.corner, 2)
                what = f"stand at {stand}° and not at the {said}° of this join"
            else:
                what = f"are {mating.gap:.2f} mm apart"
            cure = cure or _exchange(mated) or _cure(mated)
            yield check.found(
                f"the panels do not close: with all other joins made, {join.a} and {join.b} {what}",
                subject=mated.assembly.plan.name,
                hint=cure,
                place=join.place,
                value=turned if turned > ANGLE else mating.gap,
                limit=ANGLE if turned > ANGLE else RING_GAP,
            )
    return looked_at


def _exchange(mated: MatedPanels) -> str:
    """Return which two edges of a panel are exchanged, where all joins meet with them in each other's place; '' where none are."""
    open_joins = [mating.join for mating in mated.matings if not meets(mating)]
    names = tuple(dict.fromkeys(ref.panel for join in open_joins for ref in (join.a, join.b)))
    ways = exchanged_edges(mated.assembly, names)
    best = next((way for way in ways if all(meets(mating) for mating in matings_of(way[2]))), None)
    return f"two edges of {best[0]} look exchanged: with edges: {best[1]} all joins meet" if best is not None else ""


def _cure(mated: MatedPanels) -> str:
    """Say the corners that close the ring where its lengths leave no choice, and how many of them were left out."""
    mitres = [join for join in mated.assembly.plan.joins if join.joint in ("mitre", "fold")]
    shaped = [shaped_corner(mated, join) for join in mitres]
    known = sorted({corner for corner in shaped if corner is not None})
    if known and None not in shaped:
        return _cure_of_shapes(mated, known)
    lengths = closing_lengths(mated)
    said = _cure_of_taper(mated) if lengths is None else _cure_of_lengths(mated, lengths, mitres)
    return said or "check the lengths and corner angles round this ring of panels: turns must add up to 360°"


def _cure_of_taper(mated: MatedPanels) -> str:
    """Say at which corners panels of a spire close; '' where they do not all taper alike, or close at none."""
    taper = taper_of(mated)
    corner = spire_corner(len(mated.matings), taper) if taper is not None else None
    if corner is None:
        return ""
    return f"{len(mated.matings)} panels that taper by {taper:.2f}° close at corners of {trimmed(corner, 4)}°"


def _cure_of_lengths(mated: MatedPanels, lengths: dict[str, float], mitres: list[Join]) -> str:
    """Say at which corners panels of these lengths close, or that they do at none; '' where more than one way is left."""
    ring, sizes = len(lengths), sorted(lengths.values())
    if sizes[-1] >= sum(sizes[:-1]):
        others = " + ".join(say_mm(size) for size in sizes[:-1])
        return f"no corners close this ring: {others} do not reach along the longest side, {say_mm(sizes[-1])}"
    corners = triangle(*lengths.values()) if ring == 3 else None
    if corners is not None:
        joins = [join for join in mated.assembly.plan.joins if {join.a.panel, join.b.panel} <= set(lengths)]
        each = ", ".join(f"{join.a} – {join.b} {corners[_third(join, lengths)]:.2f}°" for join in joins)
        return f"three panels as long as these close at {each}"
    if sizes[-1] - sizes[0] >= RING_GAP:
        return ""
    free = sum(join.unsaid for join in mitres)
    unsaid = f"; {free} of the corners are unsaid and taken as 90°, corners: equal gives them this" if free else ""
    return f"{ring} panels of one length close at corners of {trimmed(180.0 - 360.0 / ring, 4)}°{unsaid}"


def _cure_of_shapes(mated: MatedPanels, corners: list[float]) -> str:
    """Say in which ring panels close whose shapes make these corners; of several, that they follow by themselves."""
    closing = panels_of(corners[0], taper_of(mated)) if corners[-1] - corners[0] < ANGLE else None
    if closing is not None and closing != len(mated.matings):
        return (
            f"panels of this shape close in a ring of {closing}, and this one has {len(mated.matings)}: "
            "join as many, or change the number of sides of their shape"
        )
    each = listed([f"{trimmed(corner, 4)}°" for corner in corners])
    return f"the shapes of these panels make corners of {each}: leave corner out, and they follow"


def shaped_corner(mated: MatedPanels, join: Join) -> float | None:
    """Return the corner that the bevels of both shapes make (degrees); None where one of them asks for none."""
    panels = [mated.assembly.panel(ref.panel) for ref in (join.a, join.b)]
    edges = [p.part.edge(r.edge) for p, r in zip(panels, (join.a, join.b), strict=True) if p is not None]
    asked = [edge.shaped for edge in edges if edge is not None]
    return 180.0 - sum(asked) if len(asked) == 2 and all(asked) else None


def _third(join: Join, lengths: dict[str, float]) -> int:
    """Return which of three panels a join does not hold."""
    return next(i for i, name in enumerate(lengths) if name not in (join.a.panel, join.b.panel))


def triangle(a: float, b: float, c: float) -> tuple[float, float, float] | None:
    """Return the angles (degrees) that lie opposite to three sides, by the law of cosines; None when they do not meet."""
    if 2.0 * max(a, b, c) >= a + b + c:
        return None
    sides = ((a, b, c), (b, a, c), (c, a, b))
    found = [degrees(acos((q * q + r * r - p * p) / (2.0 * q * r))) for p, q, r in sides]
    return found[0], found[1], found[2]


def spire_corner(panels: int, taper: float) -> float | None:
    """Return the inside angle (degrees) between neighbours of a spire of equal panels; None when they do not reach round.

    ``taper``: degrees between the two joined edges of a panel. Round the tip the panels cut a sphere in a regular polygon
    with sides as long as the taper, and its angles are those between the panels: sin(A/2) = cos(180°/n)/cos(taper/2).
    """
    sine = cos(pi / panels) / cos(radians(taper) / 2.0)
    return 2.0 * degrees(asin(sine)) if sine < 1.0 else None


def panels_of(corner: float, taper: float | None) -> int | None:
    """Return how many equal panels with this ``taper`` (None: unknown) close at this inside angle (degrees); None when no ring does."""
    if taper is None:
        return None
    corners = {n: spire_corner(n, taper) for n in range(3, 101)}  # as many sides as a shape may have
    return next((n for n, closing in corners.items() if closing is not None and abs(closing - corner) < ANGLE), None)


def taper_of(mated: MatedPanels) -> float | None:
    """Return the angle (degrees) between the two joined edges of every panel of a ring; None where they differ or there is none."""
    ring = _ring(mated)
    if ring is None:
        return None
    tapers = []
    for one, other in ring.values():
        a, b = ((e.nominal_end[0] - e.nominal_start[0], e.nominal_end[1] - e.nominal_start[1]) for e in (one, other))
        tapers.append(degrees(atan2(abs(a[0] * b[1] - a[1] * b[0]), -(a[0] * b[0] + a[1] * b[1]))))
    return tapers[0] if max(tapers) - min(tapers) < ANGLE else None


def _ring(mated: MatedPanels) -> dict[str, list[Edge]] | None:
    """Return the panels of an assembly that is one ring, each with its two joined edges, in the order of the joins."""
    ends: dict[str, list[Edge]] = {}
    for mating in mated.matings:
        for ref in (mating.join.a, mating.join.b):
            panel = mated.assembly.panel(ref.panel)
            edge = panel.part.edge(ref.edge) if panel is not None else None
            if edge is None or mating.join.inset or mating.join.at is not None:
                return None
            ends.setdefault(ref.panel, []).append(edge)
    if len(ends) < 3 or len(ends) != len(mated.matings) or any(len(edges) != 2 for edges in ends.values()):
        return None
    return ends


def closing_lengths(mated: MatedPanels) -> dict[str, float] | None:
    """Return the panels of an assembly that is one ring, each with its length (mm) between its two joined edges, in the order
    of the joins; None for anything else, and where those edges are not parallel."""
    ends = _ring(mated)
    if ends is None:
        return None
    lengths = {}
    for name, (one, other) in ends.items():
        (ax, ay), (bx, by) = one.nominal_start, one.nominal_end
        way = (bx - ax) / one.nominal_length, (by - ay) / one.nominal_length
        apart = [abs((x - ax) * way[1] - (y - ay) * way[0]) for x, y in (other.nominal_start, other.nominal_end)]
        if abs(apart[0] - apart[1]) > RING_GAP:
            return None
        lengths[name] = apart[0]
    return lengths
