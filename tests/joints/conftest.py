"""Parts built by hand, so that joints is tested against plain geometry and not against the room before it."""

from collections.abc import Callable
from dataclasses import replace
from math import acos, ceil, cos, degrees, inf, pi, radians, sin
from types import SimpleNamespace
from typing import Literal

import pytest
import shapely

from publisher.basics import Arc, Line, LineKind, Path, PathEdge, Place, Point, Purpose, polyline
from publisher.brief import SpecFile
from publisher.design import (
    Board,
    Design,
    EdgeRef,
    Join,
    Kind,
    NeedPlan,
    PanelPlace,
    PanelPlan,
    PicturePlan,
    Rest,
    SheetSize,
    StackPlan,
    StackRow,
    StepPlan,
    TextPlan,
)
from publisher.geometry import Edge, Lap, Mark, Opening, Part, Region
from publisher.joints.assembled import Assembled, mate
from publisher.joints.facts import part_facts
from publisher.joints.panels import facts as panel_facts
from publisher.joints.panels.place import place_panels
from publisher.joints.stacks import facts as stack_facts
from publisher.joints.stacks.facts import report_on
from publisher.joints.stacks.layers import lay_all

HERE = Place("spec.yaml", 1, 1)


def arc(centre: Point, radius: float, first: float, last: float, sagitta: float = 0.005) -> list[Point]:
    """Points of an arc from ``first`` to ``last`` degrees, both ends, flattened to ``sagitta`` mm."""
    steps = max(1, ceil(abs(radians(last - first)) / (2 * acos(1 - sagitta / radius))))
    at = [radians(first + (last - first) * i / steps) for i in range(steps + 1)]
    return [(centre[0] + radius * cos(a), centre[1] + radius * sin(a)) for a in at]


def ring_of(*runs: tuple[str, list[Point], Point | None, float]) -> Path:
    """A closed path from stretches (name, points with both ends, centre, radius) that follow each other."""
    edges: list[PathEdge] = []
    for name, points, centre, radius in runs:
        if centre is None:
            edges += polyline(points, name=name).edges
        elif points[0] == pytest.approx(points[-1], abs=1e-9):  # a full turn has no two ends: two halves have
            half = points[len(points) // 2]
            edges += [Arc.between(name, a, b, centre, radius) for a, b in ((points[0], half), (half, points[0]))]
        else:
            edges.append(Arc.between(name, points[0], points[-1], centre, radius))
    return Path(tuple(edges))


def part_of(
    part_id: str,
    outer: Path,
    *,
    holes: tuple[Path, ...] = (),
    thickness: float = 5.0,
    openings: tuple[Opening, ...] = (),
    marks: tuple[Mark, ...] = (),
    edges: tuple[Edge, ...] = (),
    count: int = 1,
) -> Part:
    region = Region(outer, holes)
    letter = part_id[0].upper()
    return Part(
        part_id,
        letter,
        part_id,
        "foam",
        thickness,
        "",
        region,
        region,
        openings,
        marks,
        edges,
        count,
        0,
        0,
        "any",
        0.0,
        HERE,
    )


def disc(part_id: str = "plinth", radius: float = 92.0, thickness: float = 5.0, sagitta: float = 0.005) -> Part:
    """A disc about the origin."""
    points = arc((0.0, 0.0), radius, 0, 360, sagitta)
    return part_of(part_id, ring_of(("rim", points, (0.0, 0.0), radius)), thickness=thickness)


def stair_layer(
    core: float = 30.0,
    reach: float = 92.0,
    sweep: float = 40.0,
    *,
    joints: int = 0,
    notch_at: float | None = None,
    thickness: float = 5.0,
    sagitta: float = 0.005,
    part_id: str = "step",
) -> Part:
    o = (0.0, 0.0)
    cs, sn = cos(radians(sweep)), sin(radians(sweep))
    rim: list[tuple[str, list[Point], Point | None, float]] = [("rim", arc(o, reach, 0, sweep, sagitta), o, reach)]
    if notch_at is not None:
        half = degrees(1.0 / reach)
        a, b = arc(o, reach, 0, notch_at - half, sagitta), arc(o, reach, notch_at + half, sweep, sagitta)
        tip = ((reach - 4) * cos(radians(notch_at)), (reach - 4) * sin(radians(notch_at)))
        rim = [("rim", a, o, reach), ("notch", [a[-1], tip, b[0]], None, 0.0), ("rim", b, o, reach)]
    ring = ring_of(
        ("front", [(core, 0.0), (reach, 0.0)], None, 0.0),
        *rim,
        ("back", [(reach * cs, reach * sn), (core * cs, core * sn)], None, 0.0),
        ("core", arc(o, core, sweep, 360, sagitta), o, core),
    )
    ticks = []
    for i in range(joints):
        at = 2 * pi * i / joints
        if degrees(at) >= sweep - 1e-9 or i == 0:
            ticks.append(
                Mark(
                    LineKind.DRAW,
                    Purpose.JOINT_TICK,
                    polyline(((core * cos(at), core * sin(at)), ((core - 4) * cos(at), (core - 4) * sin(at)))),
                )
            )
    return part_of(part_id, ring, marks=tuple(ticks), thickness=thickness)


def rectangle(part_id: str, left: float, bottom: float, right: float, top: float, *, thickness: float = 5.0) -> Part:
    """A plain rectangle, anticlockwise from the lower left."""
    return polygon(part_id, [(left, bottom), (right, bottom), (right, top), (left, top)], thickness=thickness)


def polygon(
    part_id: str,
    corners: list[Point],
    names: tuple[str, ...] = (),
    *,
    holes: tuple[tuple[Point, ...], ...] = (),
    thickness: float = 5.0,
    marks: tuple[Mark, ...] = (),
) -> Part:
    """A straight-edged part; its edges are named e0, e1, … unless told."""
    count = len(corners)
    names = names or tuple(f"e{i}" for i in range(count))
    outer = Path(tuple(Line(names[i], corners[i], corners[(i + 1) % count]) for i in range(count)))
    edges = tuple(
        Edge(names[i], corners[i], corners[(i + 1) % count], corners[i], corners[(i + 1) % count]) for i in range(count)
    )
    paths = tuple(polyline(h, True, "hole") for h in holes)
    return part_of(part_id, outer, holes=paths, edges=edges, thickness=thickness, marks=marks)


def hole(points: tuple[Point, ...], name: str) -> Path:
    """A straight hole whose edges have one name."""
    return polyline(points, True, name)


def board(
    thickness: float = 5.0,
    faces: str = "bare",
    spread: float = 0.2,
    bending: float | None = None,
    mass: float | None = None,
) -> Board:
    """A board called foam."""
    sheets = (SheetSize("20 x 30 in", 508.0, 762.0),)
    return Board("foam", thickness, spread, faces, sheets, 1.0, 3.0, "none", HERE, bending, mass)


def stack(
    name: str, *rows: tuple[str, int, float, tuple[float, float]], on: str = "", turn: float = 0.0, loose: bool = False
) -> StackPlan:
    """A stack from (part, count, turn, shift)."""
    return StackPlan(name, tuple(StackRow(*row, HERE) for row in rows), on, turn, loose, HERE)


def design(
    *,
    stacks: tuple[StackPlan, ...] = (),
    panels: tuple[PanelPlan, ...] = (),
    needs: tuple[NeedPlan, ...] = (),
    boards: tuple[Board, ...] = (),
    pictures: tuple[PicturePlan, ...] = (),
    files: tuple[SpecFile, ...] = (),
) -> Design:
    words = TextPlan((), HERE)
    steps = tuple(StepPlan(words, "glue", words, (), (), picture, HERE) for picture in pictures)
    return Design(
        "test", "", "", "Test", "1.0.0", "", "", words, "en", "paste", (), boards or (board(),), (), stacks, panels,
        needs, (), (), steps, (), (), files, (),
    )  # fmt: skip


def join(
    a: str,
    b: str,
    joint: Literal["butt", "mitre", "tab_and_slot"] = "mitre",
    corner: float = 90.0,
    *,
    inset: float = 0.0,
    play: float = 0.3,
    loosest: float = 0.6,
    tabs: int = 2,
) -> Join:
    """A join of ``place.edge`` with ``place.edge``; the second has the tabs, the first runs through."""
    one, other = EdgeRef(*a.split(".")), EdgeRef(*b.split("."))
    through = one.panel if joint == "butt" else ""
    tabbed = other.panel if joint == "tab_and_slot" else ""
    return Join(one, other, joint, corner, through, tabbed, tabs if tabbed else 0, inset, play, loosest, "a", HERE)


def crossing(a: str, b: str, first: float, second: float, *, play: float = 0.3) -> Join:
    """Two panels that cross ``first`` and ``second`` mm from the left ends of their edges; the second is let into the first."""
    one, other = EdgeRef(*a.split(".")), EdgeRef(*b.split("."))
    return Join(one, other, "cross_lap", 90.0, "", "", 0, 0.0, play, 0.6, "a", HERE, (first, second))


def rib(part_id: str, width: float, height: float, edge: str, *at: float, wide: float = 5.3) -> Part:
    """A rib with slots half its height deep, open at its top or its bottom edge."""
    half = height / 2
    plain = wall(part_id, width, height)
    slots = [
        shapely.box(x - wide / 2, half if edge == "top" else 0, x + wide / 2, height if edge == "top" else half)
        for x in at
    ]
    cut = shapely.difference(shapely.box(0, 0, width, height), shapely.union_all(slots))
    points = [(float(x), float(y)) for x, y in shapely.normalize(cut).exterior.reverse().coords[:-1]]
    laps = tuple(Lap(x, (x, half), height, wide, ("a",)) for x in at)
    edges = tuple(replace(e, laps=laps) if e.name == edge else e for e in plain.edges)
    return part_of(part_id, ring_of(("rim", [*points, points[0]], None, 0.0)), edges=edges)


def crate(second: float = 70.0, height: float = 40.0) -> tuple[PanelPlan, dict[str, Part]]:
    """Two long and two short ribs that cross: an egg-crate. The short ones are crossed at 30 and 70 mm, or the first
    at 30 and ``second`` mm."""
    last = "short" if second == 70 else "other"
    plan = panels(
        "crate", {"l1": "long", "l2": "long", "s1": "short", "s2": last}, "l1.bottom",
        crossing("l1.top", "s1.bottom", 50, 30), crossing("l1.top", "s2.bottom", 110, 30),
        crossing("l2.top", "s1.bottom", 50, second), crossing("l2.top", "s2.bottom", 110, 70),
    )  # fmt: skip
    ribs = {name: rib(name, 100, height, "bottom", 30, at) for name, at in (("other", 70), ("short", second))}
    return plan, {"long": rib("long", 160, 40, "top", 50, 110), **{name: ribs[name] for name in ("short", last)}}


def panels(
    name: str, places: dict[str, str], stands_on: str, *joins: Join, rests: tuple[tuple[str, tuple[str, ...]], ...] = ()
) -> PanelPlan:
    """A panel assembly."""
    return PanelPlan(
        name,
        tuple(PanelPlace(place, part, HERE) for place, part in places.items()),
        EdgeRef(*stands_on.split(".")),
        joins,
        tuple(Rest(panel, tuple(EdgeRef(*e.split(".")) for e in on), HERE) for panel, on in rests),
        HERE,
    )


def wall(part_id: str, width: float, height: float, *, thickness: float = 5.0) -> Part:
    """A rectangular panel with the edges bottom, right, top, left."""
    corners = [(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)]
    return polygon(part_id, corners, ("bottom", "right", "top", "left"), thickness=thickness)


def need(
    fact: str, least: float | None = None, most: float | None = None, kind: Kind = "length", adjust: str = ""
) -> NeedPlan:
    """A need."""
    return NeedPlan(fact, least, most, kind, adjust, HERE)


def assembled(plan: Design, *parts: Part) -> Assembled:
    """A design put together by hand as far as the checks look at it."""
    by_id, boards = {p.id: p for p in parts}, {b.id: b for b in plan.boards}
    _, whole = lay_all(plan.stacks, by_id)
    reports = [report_on(s, by_id, boards, inf, HERE, figure=plan.figure) for s in whole if s.layers]
    mated = [mate(place_panels(p, by_id), boards, plan.figure) for p in plan.panels]
    facts = [f for p in parts for f in part_facts.facts_of(p)]
    facts += [f for r in reports for f in stack_facts.facts_of(r, by_id, boards)]
    facts += [f for m in mated for f in panel_facts.facts_of(m.assembly, m.balance)]
    return Assembled(plan, parts, tuple(reports), tuple(mated), tuple(facts))


@pytest.fixture(scope="session")
def make() -> SimpleNamespace:
    """All the builders."""
    return SimpleNamespace(
        arc=arc, ring=ring_of, part=part_of, hole=hole, disc=disc, stair_layer=stair_layer, rectangle=rectangle, polygon=polygon,
        board=board, stack=stack, design=design, here=HERE, join=join, panels=panels,
        wall=wall, need=need, assembled=assembled, crossing=crossing, rib=rib, crate=crate,
    )  # fmt: skip


Maker = Callable[..., Part]
