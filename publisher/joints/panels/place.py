"""Panels placed in space by their joins and rests, starting from the one that stands on the table."""

from collections.abc import Iterable
from dataclasses import replace

from publisher.basics import Place, record, remembered_few
from publisher.design import EdgeRef, FaceSeat, Join, Lining, PanelPlan, Rest
from publisher.geometry import Part, polygon
from publisher.joints.panels.bent import facets_of, frame_at, frame_from
from publisher.joints.panels.edges import edge_line, lap_line, mating_lines
from publisher.joints.panels.linings import lined
from publisher.joints.panels.lying import lying
from publisher.joints.panels.seats import seated
from publisher.joints.panels.settle import settled
from publisher.joints.panels.space import PanelFrame, flat, joined, let_in, letting_in, standing


@record
class Panel:
    """A panel in its place."""

    name: str
    part: Part
    frame: PanelFrame
    rests: bool
    place: Place
    seated: bool = False  # it is put on a face of another


@record
class PanelAssembly:
    """The panels that could be placed, in the order of the spec; the names of those that could not."""

    plan: PanelPlan
    panels: tuple[Panel, ...]
    unplaced: tuple[str, ...]

    @property
    def boards(self) -> tuple[Panel, ...]:
        """The panels as they stand: what is bent is several flat facets, all with the name of its place."""
        return flat_boards(self.panels)

    @property
    def solid(self) -> tuple[Panel, ...]:
        """The boards, and the plates behind seams of split ones."""
        return _solid_boards(self.panels)

    def panel(self, name: str) -> Panel | None:
        """Return the panel at this place, or None."""
        return next((p for p in self.panels if p.name == name), None)


@remembered_few
def flat_boards(panels: tuple[Panel, ...], *, patterned: bool = False) -> tuple[Panel, ...]:
    """Return panels with their bent ones as flat facets, each with the name of the place; ``patterned`` for pictures."""
    return tuple(
        replace(panel, part=part, frame=frame)
        for panel in panels
        for part, frame in facets_of(panel.part, panel.frame, patterned=patterned)
    )


@remembered_few
def _solid_boards(panels: tuple[Panel, ...]) -> tuple[Panel, ...]:
    return (*flat_boards(panels), *plates_on(panels))


def plates_on(panels: Iterable[Panel]) -> tuple[Panel, ...]:
    """Return the plates behind the seams of panels: each lies on the inside face of its own."""
    return tuple(
        Panel(
            f"{panel.name}'s plate",
            seam.plate,
            PanelFrame(panel.frame.axes, panel.frame.point(seam.at, panel.part.thickness)),
            False,
            panel.place,
        )
        for panel in panels
        if panel.part.bending is None
        for seam in panel.part.seams
        if seam.plate is not None
    )


def boards_of(panels: Iterable[Panel]) -> list[tuple[Part, PanelFrame]]:
    """Return each panel's part and frame."""
    return [(panel.part, panel.frame) for panel in panels]


def place_panels(plan: PanelPlan, parts: dict[str, Part]) -> PanelAssembly:
    """Place every panel that a chain of joins or rests leads to from ``stands_on``.

    Joins place before rests; what they hold together stands on all of its edges that can lie on the table. A panel placed
    once stays, and the joins that close a ring are checked, not used.
    """
    part_at = {p.name: parts[p.part] for p in plan.places if p.part in parts}
    plan = replace(plan, joins=tuple(_with_corner(join, part_at) for join in plan.joins))
    frames = _on_the_table(plan, part_at)
    rested: set[str] = set()
    put: set[str] = set()
    while True:
        if (more := _by_join(plan.joins, part_at, frames) or _by_rest(plan.rests, part_at, frames)) is not None:
            name, frame, rests = more
            rested.update((name,) if rests else ())
        elif (lies := _by_seat(plan.seats, part_at, frames) or _by_lining(plan.linings, part_at, frames)) is not None:
            name, frame = lies
            put.add(name)
        else:
            break
        frames[name] = frame
    panels = tuple(
        Panel(p.name, part_at[p.name], frames[p.name], p.name in rested, p.place, p.name in put)
        for p in plan.places
        if p.name in frames
    )
    return PanelAssembly(plan, panels, tuple(p.name for p in plan.places if p.name not in frames))


def _on_the_table(plan: PanelPlan, part_at: dict[str, Part]) -> dict[str, PanelFrame]:
    """Return the frames of all panels that joins hold together with the one that stands on the table; none where that cannot."""
    start = _first(plan, part_at)
    if start is None:
        return {}
    frames = {plan.stands_on.panel: start}
    while (more := _by_join(plan.joins, part_at, frames)) is not None:
        frames[more[0]] = more[1]
    return settled(plan.stands_on, plan.joins, part_at, frames) if plan.stands_on.edge else frames


def _first(plan: PanelPlan, part_at: dict[str, Part]) -> PanelFrame | None:
    """Return the frame of the panel that stands or lies on the table: a plate lies with its outside up, or with the inside to
    which the panels at its edges turn."""
    name = plan.stands_on.panel
    if plan.stands_on.edge:
        line = edge_line(part_at, plan.stands_on)
        return None if line is None else standing(line)
    part = part_at.get(name)
    if part is None or part.bending is not None:  # what is bent lies on no face
        return None
    left, low, right, high = polygon(part.outline).bounds
    joined_to = any(name in (join.a.panel, join.b.panel) for join in plan.joins)
    return flat((left, low), (right, high), part.thickness, inside_up=joined_to)


def _with_corner(join: Join, part_at: dict[str, Part]) -> Join:
    """Return a mitre whose corner is unsaid with the one that its bevels make: 180 less both."""
    a, b = (part_at[ref.panel].edge(ref.edge) if ref.panel in part_at else None for ref in (join.a, join.b))
    if not join.unsaid or a is None or b is None:
        return join
    return replace(join, corner=180.0 - a.bevel - b.bevel)


def _by_join(
    joins: tuple[Join, ...], part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> tuple[str, PanelFrame, bool] | None:
    """Return the first panel that a join places against one that stands already."""
    for join in joins:
        a_placed, b_placed = join.a.panel in frames, join.b.panel in frames
        if a_placed == b_placed:
            continue
        if join.at is not None:
            upper, lower = lap_line(part_at, join.a, join.at[0]), lap_line(part_at, join.b, join.at[1])
            if upper is None or lower is None:
                continue
            if a_placed:
                return join.b.panel, let_in(frames[join.a.panel], upper, lower), False
            return join.a.panel, letting_in(frames[join.b.panel], lower, upper), False
        lines = mating_lines(part_at, join)
        if lines is None:
            continue
        line, edge = lines
        if a_placed:
            made = joined(_at(join.a, part_at, frames), line, edge, join.corner)
            return join.b.panel, frame_from(part_at[join.b.panel], made, join.b.edge), False
        made = joined(_at(join.b, part_at, frames), edge, line, join.corner)
        return join.a.panel, frame_from(part_at[join.a.panel], made, join.a.edge), False
    return None


def _at(ref: EdgeRef, part_at: dict[str, Part], frames: dict[str, PanelFrame]) -> PanelFrame:
    return frame_at(part_at[ref.panel], frames[ref.panel], ref.edge)


def _by_rest(
    rests: tuple[Rest, ...], part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> tuple[str, PanelFrame, bool] | None:
    """Return the first panel that rests on edges of panels that stand already."""
    for rest in rests:
        frame = lying(rest, part_at, frames) if rest.panel not in frames else None
        if frame is not None:
            return rest.panel, frame, True
    return None


def _by_seat(
    seats: tuple[FaceSeat, ...], part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> tuple[str, PanelFrame] | None:
    """Return the first panel that is put on a face of one that stands already."""
    for seat in seats:
        if seat.panel in frames or seat.host not in frames or seat.panel not in part_at:
            continue
        frame = seated(seat, part_at[seat.panel], part_at[seat.host], frames[seat.host])
        if frame is not None:
            return seat.panel, frame
    return None


def _by_lining(
    linings: tuple[Lining, ...], part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> tuple[str, PanelFrame] | None:
    """Return the first bent part whose curved edges stand already."""
    for lining in linings:
        if lining.panel not in frames and lining.panel in part_at:
            frame = lined(lining, part_at[lining.panel], part_at, frames)
            if frame is not None:
                return lining.panel, frame
    return None
