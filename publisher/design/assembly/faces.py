"""Panels on faces of other panels, as the spec says them: a sign on a wall, a kerb on a deck, a chimney on a roof."""

from publisher.basics import Place
from publisher.basics.wording import trimmed
from publisher.brief import Table, Value
from publisher.design.assembly.joins import JoinReader
from publisher.design.records import EdgeRef, FaceSeat, Lining, PanelPlan, WhichFace
from publisher.design.rules import plans as rules

STEEPEST_SLOPE = 75.0  # degrees: the bevel of an edge on a steeper face is flatter than a knife is led
STANDING = ("edge", "slope", "opening")  # what only a panel that stands on an edge says


def read_seat(table: Table, reader: JoinReader) -> FaceSeat | None:
    """Return a panel that ``lies_on`` or ``stands_on`` another one; None after a finding."""
    key = "lies_on" if table.get("lies_on") is not None else "stands_on"
    panel, host = (_place(table, name, reader) for name in ("place", key))
    if panel is None or host is None:
        return None
    if panel == host:
        reader.refuse(rules.EDGE_ITSELF, f"{panel} is put on itself", "name another place", table.place)
        return None
    fault = _fault(table, key)
    if fault is not None:
        what, hint, place = fault
        reader.refuse(rules.FACE, f"{panel}: {what}", hint, place)
        return None
    turn = _angle(table.value("turn"), reader)
    slope = _angle(table.value("slope"), reader) if table.value("slope") is not None else None
    if slope is not None and not 0.0 < slope <= STEEPEST_SLOPE:
        reader.refuse(
            rules.FACE,
            f"{panel} stands on a slope of {trimmed(slope, 2)}°",
            f"the slope is the angle of the face out of the level: more than 0 and at most {STEEPEST_SLOPE:g} deg",
            table.place,
            slope,
            STEEPEST_SLOPE if slope > STEEPEST_SLOPE else 0.0,
        )
        return None
    face: WhichFace = "inside" if table.text("face") == "inside" else "outside"
    edge = table.text("edge") if key == "stands_on" else ""
    return FaceSeat(panel, host, face, edge, reader.point(table), turn, slope, table.place, table.text("opening"))


def _place(table: Table, key: str, reader: JoinReader) -> str | None:
    """Return the name of a place of this assembly; None after a finding."""
    value = table.value(key)
    name = value.text.strip() if value else ""
    if name in reader.parts:
        return name
    what = f"there is no place “{name}” in this assembly" if name else f"{key} names no place"
    reader.refuse_place(name, what, value.place if value else table.place)
    return None


def _fault(table: Table, key: str) -> tuple[str, str, Place] | None:
    """Return what a seat says and must not, or does not say and must; with what to do."""
    if key == "stands_on" and not table.text("edge"):
        return "stands_on does not say on which edge", "say edge: bottom, or lies_on: for its whole face", table.place
    wrong = next((e for e in table.entries if key == "lies_on" and e.key in STANDING), None)
    if wrong is not None:
        return f"{wrong.key} means nothing for a part that lies on its face", "remove it, or say stands_on", wrong.place
    in_it = next((e for e in table.entries if table.text("opening") and e.key in ("at", "slope")), None)
    if in_it is not None:
        return (
            f"{in_it.key} means nothing for a post in an opening, which stands in its middle",
            "remove it",
            in_it.place,
        )
    if table.text("face") == "inside" and table.get("slope") is not None:
        return "slope goes with the outside of a face", "remove face: inside, or slope", table.place
    return None


def _angle(value: Value | None, reader: JoinReader) -> float:
    return 0.0 if value is None else reader.scope.number(value, reader.subject, "angle") or 0.0


def check_seats(plan: PanelPlan, reader: JoinReader) -> None:
    """Find a panel that is put in two places, or whose edge both stands on a face and is joined to another edge."""
    joined = {ref for join in plan.joins for ref in (join.a, join.b)}
    put: set[str] = set()
    for seat in plan.seats:
        if seat.edge and EdgeRef(seat.panel, seat.edge) in joined:
            what = f"the edge {seat.panel}.{seat.edge} stands on {seat.host} and is joined to another edge"
            reader.refuse(rules.EDGE_TWICE, what, "an edge meets one thing: remove one of both", seat.place)
        if seat.placed and seat.panel in put:
            what = f"{seat.panel} is put in a second place by at or an opening"
            reader.refuse(rules.FACE, what, "at places it once; leave at out where it only touches", seat.place)
        put |= {seat.panel} if seat.placed else set()


def read_lining(table: Table, reader: JoinReader) -> Lining | None:
    """Return a bent part that ``bends_along`` curved edges; None after a finding."""
    panel = _place(table, "place", reader)
    edges = [reader.edge(node, table.place) for node in table.row("bends_along") if isinstance(node, Value)]
    found = tuple(edge for edge in edges if edge is not None)
    if panel is None or not found or len(found) < len(edges):
        return None
    if any(edge.panel == panel for edge in found):
        reader.refuse(rules.EDGE_ITSELF, f"{panel} bends along itself", "name edges of other panels", table.place)
        return None
    return Lining(panel, found, table.place)
