"""Breaks that are drawn for every kind of design, in its spec and in its solids alike: a support removed, a support lowered, an angle, a
layer or a thing moved beside. The solids decide which of them make it untrue."""

from collections.abc import Iterator
from copy import deepcopy
from dataclasses import replace
from itertools import combinations
from math import hypot
from typing import Any

import numpy as np
import yaml
from manifold3d import Manifold

from tests.random_designs.design import Design, Piece, Spec, mm
from tests.random_designs.dice import Dice
from tests.random_designs.judge import GAP, UPRIGHT, untruths
from tests.random_designs.solids import box_of, centroid, inside_by, united

REMOVED, LOWERED, TURNED, BESIDE, SHORTER = (
    "a support removed",
    "a support lowered",
    "a part turned",
    "the top layer beside the stack",
    "a part between two shorter",
)

LEVEL = 0.1  # of a way: as much of it may climb


def broken(true: Design, dice: Dice) -> dict[str, Design]:
    """Return designs with one break each, by its name: the first of each kind, in an order drawn, that the solids refuse."""
    made: dict[str, Design] = {}
    for name, twins in (
        (REMOVED, _removed(true, dice)),
        (LOWERED, _lowered(true, dice)),
        (TURNED, _turned(true, dice)),
        (BESIDE, _beside(true, dice)),
        (SHORTER, _shorter(true, dice)),
    ):
        found = next((twin for twin in twins if _surely_untrue(twin)), None)
        if found is not None:
            made[name] = found
    return made


def _surely_untrue(twin: Design) -> bool:
    """Tell whether a twin is untrue, and not by standing hardly: one that only falls over does so by as much as it should stand."""
    said = untruths(twin)
    if not all(text.endswith("falls over") for text in said):
        return True
    wholes = [united([solid for _, solid in piece.boards]) for piece in twin.pieces]
    return bool(said) and any(inside_by(w.slice(float(box_of(w)[0][2]) + GAP), centroid(w)) < -UPRIGHT for w in wholes)


def _with(true: Design, spec: Spec, piece: Piece) -> Design:
    text = yaml.safe_dump(spec, sort_keys=False, default_flow_style=None, width=140, allow_unicode=True)
    pieces = tuple(piece if one.name == piece.name else one for one in true.pieces)
    return replace(true, spec=text, pieces=pieces, needs=(), facts=())


def _drawn(true: Design, dice: Dice) -> Iterator[tuple[Spec, Piece, str]]:
    """Yield the spec, anew each time, each assembly of boards or things that has solids, and each of its boards, in an order drawn."""
    every = [(piece, name) for piece in true.pieces for name, _ in piece.boards]
    dice.random.shuffle(every)
    for piece, name in every:
        spec: Spec = yaml.safe_load(true.spec)
        spec.pop("needs", None)
        assembly = spec.get("assembly", {}).get(piece.name, {})
        if name in {**assembly.get("panels", {}), **assembly.get("things", {})}:
            yield spec, piece, name


def _removed(true: Design, dice: Dice) -> Iterator[Design]:
    """Take out one board or thing that is not the first on the table, with all that is said of it."""
    for spec, piece, name in _drawn(true, dice):
        own = spec["assembly"][piece.name]
        if name in (str(own.get("stands_on", "")).partition(".")[0], own.get("lies_on_table")):
            continue
        for kind in ("panels", "things"):
            own.get(kind, {}).pop(name, None)
        things: Spec = own.get("things", {})
        if any(thing.get("on_top_of") == [name] for thing in things.values()):
            continue  # nothing would say where that stands
        boards = dict(piece.boards)
        for other, thing in things.items():
            if name in thing.get("on_top_of", ()):
                thing["on_top_of"] = [one for one in thing["on_top_of"] if one != name]
                below = _middle(united([boards[one] for one in thing["on_top_of"]]))  # it stays where it was
                thing["at"] = [mm(a - b) for a, b in zip(_middle(boards[other]), below, strict=True)]
        if "joins" in own:
            own["joins"] = [kept for join in own["joins"] if (kept := _join_without(join, name)) is not None]
        _drop_unused(spec)
        # what is glued on by a broad face does not fall off: it falls with all
        glued = {other for other, thing in things.items() if not thing.get("lifts_off")}
        left = _piece_without(piece, name)
        yield _with(true, spec, replace(left, rests=tuple(rest for rest in left.rests if rest.board not in glued)))


def _middle(solid: Manifold) -> tuple[float, float]:
    low, high = box_of(solid)
    return (float(low[0] + high[0]) / 2, float(low[1] + high[1]) / 2)


def _join_without(join: Spec, name: str) -> Spec | None:
    def says(ref: object) -> bool:
        return str(ref).partition(".")[0] == name

    if any(
        says(ref) for ref in (*join.get("edges", ()), join.get("place"), join.get("stands_on"), join.get("lies_on"))
    ):
        return None
    kept = dict(join)
    for key in ("rests_on", "bends_along"):
        if key in kept:
            kept[key] = [ref for ref in kept[key] if not says(ref)]
            if not kept[key]:
                return None
    return kept


def _drop_unused(spec: Spec) -> None:
    """Leave out assemblies that nothing is made of, and parts that none has any more."""
    assemblies: Spec = spec["assembly"]
    used = {thing["assembly"] for own in assemblies.values() for thing in own.get("things", {}).values()}
    for name in [n for n, own in assemblies.items() if used and "things" not in own and n not in used]:
        del assemblies[name]
    parts = {part for own in assemblies.values() for part in own.get("panels", {}).values()}
    parts |= {row["part"] for own in assemblies.values() for row in own.get("stack", ())}
    for name in [n for n, part in spec["parts"].items() if n not in parts and "count" not in part]:
        if not any(part.get("like") == name for part in spec["parts"].values()):
            del spec["parts"][name]


def _piece_without(piece: Piece, name: str) -> Piece:
    return replace(
        piece,
        boards=tuple(board for board in piece.boards if board[0] != name),
        touches=tuple(touch for touch in piece.touches if name not in (touch.a, touch.b)),
        fits=tuple(fit for fit in piece.fits if name not in fit.holds),
        rests=tuple(
            replace(rest, on=tuple(other for other in rest.on if other != name))
            for rest in piece.rests
            if rest.board != name
        ),
    )


def _lowered(true: Design, dice: Dice) -> Iterator[Design]:
    """Make one upright board lower that carries another: that lies askew, or over a gap."""
    by = dice.size(1.0, 5.0)
    for spec, piece, name in _drawn(true, dice):
        own, boards = spec["assembly"][piece.name], dict(piece.boards)
        over = [touch.a for touch in piece.touches if touch.way[2] > 0.9 and touch.b == name]
        over += [touch.b for touch in piece.touches if touch.way[2] < -0.9 and touch.a == name]
        carries = over and len(boards) > 1 + len(over)  # what a lone wall carries comes down with it, and is as true
        part = own.get("panels", {}).get(name)
        plan = deepcopy(spec["parts"].get(part, {}))
        if (
            not carries
            or plan.get("shape") not in ("wall_panel", "rectangle")
            or "openings" in plan
            or "surface" in plan
        ):
            continue
        low, high = box_of(boards[name])
        tall = float(plan["with"]["height"].removesuffix(" mm"))
        if abs(tall - float(high[2] - low[2])) > true.base.t + 0.01:
            continue
        plan["with"]["height"] = mm(tall - by)
        spec["parts"][f"{part}_lower"], own["panels"][name] = plan, f"{part}_lower"
        _drop_unused(spec)
        yield _with(
            true, spec, _changed(piece, name, boards[name].trim_by_plane((0.0, 0.0, -1.0), by - float(high[2])))
        )


def _shorter(true: Design, dice: Dice) -> Iterator[Design]:
    """Make one board shorter that touches another at either end: a gap opens at one of them."""
    by = dice.size(1.0, 5.0)
    for spec, piece, name in _drawn(true, dice):
        own, solid = spec["assembly"][piece.name], dict(piece.boards)[name]
        part = own.get("panels", {}).get(name)
        plan = deepcopy(spec["parts"].get(part, {}))
        if plan.get("shape") not in ("wall_panel", "rectangle") or "openings" in plan or "surface" in plan:
            continue
        ends = [
            (np.array(t.way), t.a) if t.b == name else (-np.array(t.way), t.b)
            for t in piece.touches
            if name in (t.a, t.b)
        ]
        level = [end for end in ends if abs(end[0][2]) < LEVEL]
        opposite = (
            one[0]
            for one, other in combinations(level, 2)
            if float(one[0] @ other[0]) < LEVEL - 1.0 and _hang(piece, name, one[1], other[1])
        )
        way = next(opposite, None)
        if way is None:
            continue
        along = solid.to_mesh().vert_properties[:, :3] @ way
        sides = [
            side
            for side in ("width", "height")
            if min(
                abs(float(plan["with"][side].removesuffix(" mm")) - float(np.ptp(along)) - k * true.base.t)
                for k in range(3)
            )
            < 0.02
        ]
        if len(sides) != 1:
            continue
        plan["with"][sides[0]] = mm(float(plan["with"][sides[0]].removesuffix(" mm")) - by)
        spec["parts"][f"{part}_shorter"], own["panels"][name] = plan, f"{part}_shorter"
        _drop_unused(spec)
        cut = [
            solid.trim_by_plane(tuple(-end), by - float((along if end is way else -along).max())) for end in (way, -way)
        ]
        twins = [_with(true, spec, _changed(piece, name, one)) for one in cut]
        if all(map(_surely_untrue, twins)):  # whichever end it stays at
            yield twins[0]


def _hang(piece: Piece, without: str, a: str, b: str) -> bool:
    """Tell whether two boards hang together by what touches without a third: that cannot draw them nearer to each other."""
    reached, more = {a}, True
    while more:
        new = {
            n for t in piece.touches if without not in (t.a, t.b) and {t.a, t.b} & reached for n in (t.a, t.b)
        } - reached
        reached, more = reached | new, bool(new)
    return b in reached


def _changed(piece: Piece, name: str, solid: Manifold) -> Piece:
    return replace(piece, boards=tuple((n, solid if n == name else own) for n, own in piece.boards))


def _turned(true: Design, dice: Dice) -> Iterator[Design]:
    """Turn a thing, or a board that is put on a face, about its own middle."""
    by = dice.size(25.0, 90.0)
    for spec, piece, name in _drawn(true, dice):
        own = spec["assembly"][piece.name]
        said: list[Any] = [own["things"][name]] if name in own.get("things", {}) else []
        said += [
            join for join in own.get("joins", ()) if join.get("place") == name and "at" in join and "slope" not in join
        ]
        if not said:
            continue
        before = float(str(said[0].get("turn", "0 deg")).removesuffix(" deg"))
        said[0]["turn"] = f"{before + by:g} deg"
        solid = dict(piece.boards)[name]
        low, high = box_of(solid)
        if "things" not in own and float(high[2] - low[2]) > true.base.t + 0.1:
            continue  # on a slope it turns in that
        x, y = _middle(solid)
        anywhere = tuple(
            replace(touch, area=min(touch.area, 1.0)) for touch in piece.touches
        )  # turned it touches on less
        yield _with(
            true,
            spec,
            _changed(
                replace(piece, touches=anywhere),
                name,
                solid.translate((-x, -y, 0)).rotate((0, 0, by)).translate((x, y, 0)),
            ),
        )


def _beside(true: Design, dice: Dice) -> Iterator[Design]:
    """Shift the top layer of a stack off it."""
    for piece in true.pieces:
        spec: Spec = yaml.safe_load(true.spec)
        spec.pop("needs", None)
        own = spec.get("assembly", {}).get(piece.name, {})
        rows: list[Spec] = own.get("stack", [])
        if not rows or "layers" in spec["parts"][rows[-1]["part"]]:
            continue
        low, high = box_of(united([solid for _, solid in piece.boards]))
        far = round(2 * hypot(*(float(v) for v in (high - low)[:2])) + dice.size(1.0, 20.0), 3)
        last = rows[-1]
        if last.get("count", 1) > 1:
            rows[-1] = {**last, "count": last["count"] - 1}
            rows.append({**last, "count": 1, "shift": [mm(far), "0 mm"]})
        else:
            rows[-1] = {**last, "shift": [mm(far), "0 mm"]}
        own.pop("brace", None)
        name, solid = max(
            (board for board in piece.boards if not board[0].startswith("brace")),
            key=lambda board: float(box_of(board[1])[1][2]),
        )
        moved = solid.translate((far, 0.0, 0.0))
        boards = tuple((n, moved if n == name else s) for n, s in piece.boards if not n.startswith("brace"))
        touches = tuple(t for t in piece.touches if not (t.a.startswith("brace") or t.b.startswith("brace")))
        yield _with(true, spec, replace(piece, boards=boards, touches=touches))
