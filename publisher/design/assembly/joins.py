"""Joins of panels: which edges meet, by which joint, at which corner."""

from collections.abc import Mapping
from dataclasses import replace

from publisher.basics import Place, Point, Rule, record
from publisher.basics.wording import listed, mm_apart, say_mm, trimmed
from publisher.brief import Table, Value
from publisher.design.language import Scope, pick_hint, read_count
from publisher.design.parts import KnownParts
from publisher.design.records import EdgeRef, Join, Joint, PanelPlace, Rest
from publisher.design.rules import plans as rules

#: What each joint must and may say beside its edges.
JOINT_OPTIONS = {
    "butt": (("runs_through",), ("corner", "inset", "flush")),
    "rabbet": (("rabbet_on",), ("corner", "flush")),
    "mitre": ((), ("corner", "flush")),
    "fold": ((), ("corner",)),
    "tab_and_slot": (("tabs_on", "tabs", "play"), ("corner", "inset", "loosest", "flush")),
    "cross_lap": (("at", "play"), ("corner", "loosest")),
}
_LACKING = {
    "runs_through": "write runs_through: {a}, or {b}: that panel keeps its full length, and the other ends against its face",
    "rabbet_on": "write rabbet_on: {a}, or {b}: that panel has the step, and its outside paper covers the other’s edge",
    "tabs_on": "write tabs_on: {a}, or {b}: that panel has the tabs, and the other the slots",
    "tabs": "write how many tabs there are, such as tabs: 2",
    "play": "write play: 0.3 mm, or how much wider a slot is than the board that goes into it",
    "at": "write at: [30 mm, 30 mm]: where on {a}, from the left end of its edge, the slot is, and where on {b}",
}
"""What to do about an option that a joint must have; ``a`` and ``b`` are the places that meet."""
_JOINT_MEANINGS = {
    "butt": "a square edge against the other board, which runs through",
    "rabbet": "a square edge in a step of the other board, whose outside paper covers it",
    "mitre": "both edges bevelled, so that they meet at the corner",
    "fold": "one piece of board, folded along the edge",
    "tab_and_slot": "tabs of one board through slots of the other",
    "cross_lap": "two boards on edge, each slotted by half, that cross",
}
#: The option that names the leading panel, where a joint has one.
LEADING = {"butt": "runs_through", "rabbet": "rabbet_on", "tab_and_slot": "tabs_on"}
_ALL_OPTIONS = ("runs_through", "rabbet_on", "at", "tabs_on", "tabs", "play", "inset", "loosest", "flush")
JOINTS: dict[str, Joint] = {
    "butt": "butt",
    "rabbet": "rabbet",
    "mitre": "mitre",
    "fold": "fold",
    "tab_and_slot": "tab_and_slot",
    "cross_lap": "cross_lap",
}
MOST_TABS = 100
ANGLE_DUST = 1e-6


@record
class JointInfo:
    """A way in which edges meet: its meaning, and the fields that a join of it must and may have beside its edges."""

    name: str
    meaning: str
    needed: tuple[str, ...]
    may: tuple[str, ...]


def joint_infos() -> tuple[JointInfo, ...]:
    """Return every joint."""
    return tuple(JointInfo(name, _JOINT_MEANINGS[name], *JOINT_OPTIONS[name]) for name in JOINTS)


class JoinReader:
    """Reads the joins of one panel assembly. Matching letters run through the assembly: a, b, c, …"""

    def __init__(
        self,
        assembly: str,
        places: tuple[PanelPlace, ...],
        known: KnownParts,
        scope: Scope,
        lost: Mapping[str, str] | None = None,
    ) -> None:
        """Keep what joins refer to. ``lost``: places whose part is unknown, with its name: that is what must be mended."""
        self.assembly = assembly
        self.lost = lost or {}
        self.subject = f"assembly {assembly}"
        self.parts = {place.name: place.part for place in places}
        self.known = known
        self.scope = scope

    def edge(self, value: Value | None, place: Place) -> EdgeRef | None:
        """Return ``place.edge``; None after a finding."""
        text = value.text.strip() if value else ""
        panel, dot, edge = text.partition(".")
        where = value.place if value else place
        if not (panel and dot and edge) or "." in edge:
            self.refuse(rules.UNKNOWN_PLACE, f"“{text}” names no edge", "write place.edge: front.bottom", where)
            return None
        if panel not in self.parts:
            self.refuse_place(panel, f"there is no place “{panel}” in this assembly", where)
            return None
        return EdgeRef(panel, edge)

    def refuse_place(self, name: str, what: str, where: Place) -> None:
        """Add the finding for a place that is not there; where its part is unknown it follows from that."""
        cause = f"name {self.lost[name]}" if name in self.lost else f"place {self.assembly}.{name}"
        hint = pick_hint(name, self.parts, "places")
        found = rules.UNKNOWN_PLACE.found(what, subject=self.subject, hint=hint, place=where, cause=cause)
        self.scope.findings.append(found)

    def rest(self, table: Table) -> Rest | None:
        """Return a panel that lies on edges; None after a finding."""
        panel = table.value("place")
        if panel is None or panel.text not in self.parts:
            name = panel.text if panel else ""
            self.refuse_place(name, f"there is no place “{name}” in this assembly", table.place)
            return None
        edges = [self.edge(node, table.place) for node in table.row("rests_on") if isinstance(node, Value)]
        found = tuple(edge for edge in edges if edge is not None)
        if any(edge.panel == panel.text for edge in found):
            self.refuse(rules.EDGE_ITSELF, f"{panel.text} rests on itself", "name edges of other panels", table.place)
            return None
        if not edges:
            self.refuse(
                rules.JOIN_OPTION, f"{panel.text} rests on nothing", "say rests_on: [front.left_slope, …]", table.place
            )
        cut, at = self.cut_to_slope(table, found), self.point(table) or (0.0, 0.0)
        return Rest(panel.text, found, table.place, cut, at, table.text("loose") == "true") if found else None

    def cut_to_slope(self, table: Table, on: tuple[EdgeRef, ...]) -> tuple[EdgeRef, ...]:
        """Return the edges of a rest that are cut to the slope; a finding for one that nothing rests on."""
        edges = [
            (self.edge(node, table.place), node.place) for node in table.row("cut_to_slope") if isinstance(node, Value)
        ]
        for edge, place in edges:
            if edge is not None and edge not in on:
                known = [str(ref) for ref in on]
                hint = f"only edges that it rests on are cut to its slope: {listed(known)}"
                self.refuse(rules.JOIN_OPTION, f"{edge} is cut to the slope, and nothing rests on it", hint, place)
        return tuple(edge for edge, _ in edges if edge in on)

    def join(self, table: Table) -> Join | None:
        """Return a join, with a as the panel that has the slots or runs through; None after a finding."""
        edges = self.edges(table)
        if edges is None:
            return None
        a, b = edges
        first, joint = a.panel, table.text("joint")
        if not self.options_fit(joint, table, a, b):
            return None
        leading = self.leading(table, LEADING.get(joint, ""), a, b)
        corner = self.corner(table, joint)
        if leading is None or corner is None:
            return None
        if leading == (a.panel if joint == "tab_and_slot" else b.panel):  # tabs go into the slots of a
            a, b = b, a
        fits = joint != "rabbet" or self.rabbet_fits(table, a)
        join = self.made(table, a, b, joint, corner, leading) if fits else None
        end = table.text("flush")
        return replace(join, flush=(first, end)) if join and end else join

    def edges(self, table: Table) -> tuple[EdgeRef, EdgeRef] | None:
        """Return the two edges of a join in the order of the spec; None after a finding."""
        nodes = [node for node in table.row("edges") if isinstance(node, Value)]
        if len(nodes) != 2:
            self.refuse(
                rules.JOIN_OPTION, "a join has two edges", "write edges: [front.right, right.left]", table.place
            )
            return None
        a, b = (self.edge(node, table.place) for node in nodes)
        if a is None or b is None:
            return None
        if a.panel == b.panel:
            what = f"the edge {a} is joined to itself" if a == b else f"{a} and {b} are edges of one panel"
            self.refuse(rules.EDGE_ITSELF, what, "a join has edges of two panels", table.place)
            return None
        return a, b

    def made(self, table: Table, a: EdgeRef, b: EdgeRef, joint: str, corner: float, leading: str) -> Join | None:
        """Return the join with its measures; a has the slots or runs through."""
        inset = self.measure(table, "inset", 0.0)
        play = self.measure(table, "play", 0.0)
        slotted = {"tab_and_slot": (b,), "cross_lap": (a, b)}.get(joint, ())
        loosest = self.measure(table, "loosest", 0.0) if slotted and table.value("loosest") else None
        thickness = self.known.thickness(self.parts[a.panel])
        if joint == "tab_and_slot" and 0 < inset < 2 * thickness - ANGLE_DUST:
            sit, twice = mm_apart(inset, 2 * thickness)
            self.refuse(
                rules.SLOT_EDGE,
                f"the slots of {a} sit {sit} from the edge; the board there is {say_mm(thickness)} thick",
                f"let the panel run {twice} or more past the slots, or say inset: 0 mm for open notches",
                table.place,
                inset,
                2 * thickness,
            )
        if loosest is not None and loosest < play - ANGLE_DUST:
            most, least = mm_apart(loosest, play)
            self.refuse(
                rules.JOIN_OPTION,
                f"loosest is {most}, less than the play of {least}",
                "loosest is the most play that still holds",
                table.place,
                loosest,
                play,
            )
        tabs = read_count(table.value("tabs"), 1, 1, MOST_TABS, f"tabs of {b}", self.scope, self.subject)
        is_tab = joint == "tab_and_slot"
        return Join(
            a=a,
            b=b,
            joint=JOINTS[joint],
            corner=corner,
            through=leading if joint in ("butt", "rabbet") else "",
            tabs_on=leading if is_tab else "",
            tabs=tabs if is_tab else 0,
            inset=inset,
            play=play if slotted else 0.0,
            loosest=loosest,
            match="",
            place=table.place,
            at=self.crossing(table) if joint == "cross_lap" else None,
            unsaid=joint == "mitre" and table.value("corner") is None,
        )

    def crossing(self, table: Table) -> tuple[float, float] | None:
        """Return how far from the left ends of both edges two panels cross; None after a finding."""
        at = [self.length(node, "at", 0.0) for node in table.row("at") if isinstance(node, Value)]
        if len(at) == 2:
            return at[0], at[1]
        what = "a cross_lap join has two places, one on each edge"
        self.refuse(rules.JOIN_OPTION, what, "write at: [60 mm, 40 mm]", table.place)
        return None

    def rabbet_fits(self, table: Table, a: EdgeRef) -> bool:
        """True when the board of the panel with the rabbet has paper that is left when its foam is cut away."""
        board = self.known.board(self.parts[a.panel])
        if board is None or (board.faces != "bare" and board.paper > 0):
            return True
        if board.faces == "bare":
            what, hint = (
                f"the board {board.id} is bare",
                "use joint: butt, or board with faces: paper_one or paper_both",
            )
        else:
            what = f"the board {board.id} does not say how thick its paper is"
            hint = "peel off a strip of the paper, measure it and write paper: 0.3 mm under the board"
        self.refuse(rules.RABBET, f"a rabbet in {a} keeps the outside paper, and {what}", hint, table.place)
        return False

    def options_fit(self, joint: str, table: Table, a: EdgeRef, b: EdgeRef) -> bool:
        """True when the joint is known and says all that it needs and nothing else."""
        what = f"{a} – {b}"
        if joint not in JOINT_OPTIONS:
            hint = pick_hint(joint, JOINT_OPTIONS, "joints")
            self.refuse(rules.JOIN_OPTION, f"{what}: there is no joint “{joint}”", hint, table.place)
            return False
        must, may = JOINT_OPTIONS[joint]
        lacking = [option for option in must if table.get(option) is None]
        for option in lacking:
            hint = _LACKING[option].format(a=a.panel, b=b.panel)
            self.refuse(rules.JOIN_OPTION, f"{what}: the {joint} join does not say {option}", hint, table.place)
        for entry in table.entries:
            if entry.key in _ALL_OPTIONS and entry.key not in must and entry.key not in may:
                hint = f"remove it: a {joint} join may say {listed((*must, *may))}"
                self.refuse(
                    rules.JOIN_OPTION, f"{what}: {entry.key} means nothing in a {joint} join", hint, entry.place
                )
        return not lacking

    def leading(self, table: Table, option: str, a: EdgeRef, b: EdgeRef) -> str | None:
        """Return the place that runs through or has the tabs; '' where no panel leads; None after a finding."""
        value = table.value(option) if option else None
        if value is None:
            return ""
        if value.text in (a.panel, b.panel):
            return value.text
        hint = f"write {a.panel} or {b.panel}"
        self.refuse(rules.UNKNOWN_PLACE, f"{option}: “{value.text}” is no place of this join", hint, value.place)
        return None

    def corner(self, table: Table, joint: str) -> float | None:
        """Return the inside angle in degrees, 90 if unsaid; None after a finding."""
        value = table.value("corner")
        corner = 90.0 if value is None else self.scope.number(value, self.subject, "angle")
        if value is None or corner is None:
            return corner
        if not 0 < corner <= 180:
            self.refuse(
                rules.CORNER,
                f"the corner is {trimmed(corner, 2)}°",
                "the inside angle between the two faces is more than 0 and at most 180 degrees",
                value.place,
                corner,
                180.0 if corner > 180 else 0.0,
            )
            return None
        if joint not in ("mitre", "fold") and abs(corner - 90) > ANGLE_DUST:
            self.refuse(
                rules.CORNER,
                f"a {joint} join at {trimmed(corner, 2)}° does not sit flush",
                "use joint: mitre, which bevels both edges, or a corner of 90 deg",
                value.place,
                corner,
                90.0,
            )
            return None
        return corner

    def point(self, table: Table) -> Point | None:
        """Return the two lengths of ``at``, either of which may be negative; None when it is not said."""
        values = [node for node in table.row("at") if isinstance(node, Value)]
        if len(values) != 2:
            return None
        across, up = (self.scope.number(value, self.subject, "length") or 0.0 for value in values)
        return across, up

    def measure(self, table: Table, key: str, default: float) -> float:
        """Return a length that is not negative; ``default`` when unsaid or after a finding."""
        return self.length(table.value(key), key, default)

    def length(self, value: Value | None, key: str, default: float) -> float:
        """Return the length that a value says."""
        length = None if value is None else self.scope.number(value, self.subject, "length")
        if value is None or length is None:
            return default
        if length < 0:
            hint = "a length here is 0 mm or more"
            self.refuse(rules.JOIN_OPTION, f"{key} is {say_mm(length)}", hint, value.place, length, 0.0)
            return default
        return length

    def refuse(
        self, rule: Rule, message: str, hint: str, place: Place, value: float | None = None, limit: float | None = None
    ) -> None:
        """Add a finding about this assembly."""
        self.scope.findings.append(
            rule.found(message, subject=self.subject, hint=hint, place=place, value=value, limit=limit)
        )
