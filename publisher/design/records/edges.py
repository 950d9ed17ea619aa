"""What joins do to the edges of a part. Millimetres and degrees."""

from publisher.basics import Place, record


@record
class TabRow:
    """Tabs on an edge: tab i of ``count`` is centred at (i + 1/2)/count of the edge's nominal length L and is
    L/(2·count) long; it sticks out ``depth`` mm beyond the shortened edge (= thickness of the other board). Where this edge or
    the mate's has too little board at an end, the row ends there sooner, tabs and gaps still equal."""

    count: int
    depth: float


@record
class SlotRow:
    """Slots beside an edge that take the tabs of a mate. The mate's outside face lies ``inset`` mm inwards from the
    edge; the slot spans from ``inset - play/2`` to ``inset + mate + play/2`` mm from the edge (``mate`` = measured thickness of the
    mate) and each is L/(2·count) + play long, centred as the tabs are along the **joint line**: the line parallel to
    the edge at ``inset``, inside the nominal outline, L its length. ``inset`` 0 makes open notches in the edge. Where the
    tabs end sooner, so do the slots."""

    count: int
    inset: float
    mate: float
    play: float


@record
class JointLine:
    """Where mates meet a panel beside one of its edges, and the letters that belong there.

    The mate's outside face lies ``inset`` mm inwards from the edge, its board is ``mate`` mm thick; ``inset`` 0 is the edge
    itself. ``forward``: the letters follow each other the way the edge runs; on the mate, whose edge runs the other way, they
    do not, so that both show the same order.
    """

    inset: float
    mate: float
    matches: tuple[str, ...]
    forward: bool = True


@record
class LapSlot:
    """An open slot in which another panel crosses this one: half as deep as the panel is high there, ``mate + play`` mm wide.

    Its middle lies ``at`` mm from the edge's left end (of an upright edge: its lower end), along the nominal edge.
    ``matches``: the letters of the joins that it belongs to.
    """

    at: float
    mate: float
    play: float
    matches: tuple[str, ...]


@record
class Rabbet:
    """Foam cut away along an edge: ``width`` mm (= measured thickness of the other board), down to ``paper`` mm of paper
    that stays on the outside face."""

    width: float
    paper: float


@record
class EdgeTreatment:
    """What joins do to one edge of a part.

    ``take_off``: mm by which the panel is shorter at this edge than its nominal size (butt: thickness of the panel that
    runs through; tabs: thickness of the other board, the tabs then reach the nominal edge; rabbet: the paper of the
    other). ``bevel``: degrees from square; the outline is drawn on the outside face. ``as_shaped``: the corner is unsaid, so
    that an edge whose shape asks for a bevel keeps that one. ``matches``: the letters printed on
    both edges of each join; ``lines``: the same letters by the line at which each join lies, nearest to the edge first. ``laps``: slots for
    panels that cross this one. ``rabbet``: foam cut away behind the paper. ``slant``: degrees by which the edge is cut out of its
    line, rising into the panel along its run (below zero: against it), so that it stands upright on a slope. ``to_slope``: it
    is bevelled so that what rests on it lies on its whole width.
    """

    edge: str
    take_off: float
    bevel: float
    tabs: TabRow | None
    slots: tuple[SlotRow, ...]
    matches: tuple[str, ...]
    place: Place
    lines: tuple[JointLine, ...] = ()
    laps: tuple[LapSlot, ...] = ()
    rabbet: Rabbet | None = None
    as_shaped: bool = False
    slant: float = 0.0
    to_slope: bool = False

    def bevel_of(self, shaped: float) -> float:
        """Return the bevel (degrees) of an edge whose shape asks for ``shaped``, 0 for none."""
        return shaped if self.as_shaped and shaped else self.bevel


@record
class EndSwap:
    """A way in which a part lies upon itself, turned or turned over: each of its ``edges`` with the one that it comes to lie on, and each
    slot that crosses an edge (edge, mm along it) with the one that it comes to."""

    part: str
    edges: tuple[tuple[str, str], ...]
    laps: tuple[tuple[tuple[str, float], tuple[str, float]], ...] = ()
