"""Parts on faces: two slopes leant against each other, with an upright post cut to the slope and a board that lies on it.

x runs along the ridge, y from the eave of the first slope to that of the second, z up. The first slope's outside rises from the x
axis; everything is lifted by what its inner edge reaches below.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import cos, radians, sin, tan

import numpy as np
from manifold3d import Manifold

from tests.random_designs.design import Base, Design, Piece, Spec, Touch, deg, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.solids import box_of, hull, united


@dataclass(frozen=True, slots=True)
class Slopes:
    """Sizes in mm and degrees. Of the post and the board: the middles of their seats on the first slope, and their turns on it."""

    base: Base
    length: float
    deep: float
    pitch: float
    post: tuple[float, float]  # width, height at its lowest corner
    post_at: tuple[float, float]
    post_turn: int  # 0, 90, 180, 270
    board: tuple[float, float]
    board_at: tuple[float, float]
    board_turn: float
    said: float = 0.0  # by how much the slope of the post is said wrong


def draw(dice: Dice) -> Slopes:
    """Return slopes that carry a post in their left half and a board in their right half, both within the rim."""
    base = dice.base("Random slopes")
    t = base.t
    length, deep, pitch = dice.size(160.0, 260.0), dice.size(90.0, 150.0), dice.size(35.0, 55.0)
    turn = 90 * dice.count(0, 3)
    if turn % 180:  # the foot runs up the slope: on a steeper one it would end in a point that breaks off
        pitch = round((35.0 + pitch) / 2.0, 1)
    steep = cos(radians(pitch))
    wide = dice.size(max(15.0, 2 * t), 30.0)
    rise = wide * tan(radians(pitch))
    post = (wide, dice.size(rise + max(20.0, 2 * t), rise + 50.0))
    half = (wide / 2, t / 2 / steep) if turn % 180 == 0 else (t / 2, wide / 2 / steep)
    post_at = _within(dice, half, (0.0, 0.0), (length / 2 - 20.0, deep), "post to rim")
    board = (dice.size(15.0, 40.0), dice.size(12.0, 30.0))
    angle = dice.size(0.0, 360.0)
    c, s = abs(cos(radians(angle))), abs(sin(radians(angle)))
    half = ((board[0] * c + board[1] * s) / 2, (board[0] * s + board[1] * c) / 2)
    board_at = _within(dice, half, (length / 2 + 20.0, 0.0), (length, deep), "board to rim")
    return Slopes(base, length, deep, pitch, post, post_at, turn, board, board_at, angle)


def _within(
    dice: Dice, half: tuple[float, float], low: tuple[float, float], high: tuple[float, float], limit: str
) -> tuple[float, float]:
    """Return a middle for a seat of these half sizes between two corners, often near the lower rim."""
    x = dice.size(low[0] + half[0] + 0.2, high[0] - half[0] - 0.2)
    return x, dice.above(limit, round(half[1] + 0.02, 2), high[1] - half[1] - 0.5)


def design(plan: Slopes) -> Design:
    """Return spec and solids."""
    parts: Spec = {
        "slope": {"shape": "wall_panel", "with": {"width": mm(plan.length), "height": mm(plan.deep)}},
        "post": {"shape": "rectangle", "with": {"width": mm(plan.post[0]), "height": mm(plan.post[1])}},
        "board": {"shape": "rectangle", "with": {"width": mm(plan.board[0]), "height": mm(plan.board[1])}},
    }
    joins: list[Spec] = [
        {"edges": ["near.top", "far.top"], "joint": "mitre", "corner": deg(180.0 - 2 * plan.pitch)},
        {
            "place": "post",
            "stands_on": "near",
            "edge": "bottom",
            "at": [mm(v) for v in plan.post_at],
            "turn": deg(plan.post_turn),
            "slope": deg(plan.pitch + plan.said),
        },
        {"place": "board", "lies_on": "near", "at": [mm(v) for v in plan.board_at], "turn": deg(plan.board_turn)},
    ]
    panels = {"near": "slope", "far": "slope", "post": "post", "board": "board"}
    piece = _piece(plan)
    low, high = box_of(united([solid for _, solid in piece.boards]))
    needs = (need("hut.height", plan.base, float(high[2] - low[2])),)
    facts = tuple((f"hut.{n}", float(v)) for n, v in zip(("width", "depth", "height"), high - low, strict=True))
    assembly = {"hut": {"panels": panels, "stands_on": "near.bottom", "joins": joins}}
    spec = frame(plan.base, parts, assembly, needs, max(plan.length, plan.deep))
    return Design("slopes", 0, plan, spec, (), (piece,), needs, facts, "face", plan.base)


def _piece(plan: Slopes) -> Piece:
    t, p = plan.base.t, radians(plan.pitch)
    lift = np.array([0.0, 0.0, t * cos(p)])
    up, out = np.array([0.0, cos(p), sin(p)]), np.array([0.0, -sin(p), cos(p)])
    across = np.array([1.0, 0.0, 0.0])

    def on(x: float, v: float, over: float = 0.0) -> np.ndarray:
        return x * across + v * up + over * out + lift

    top = plan.deep - t * tan(p)
    corners = [(0.0, 0.0), (plan.deep, 0.0), (0.0, -t), (top, -t)]
    near = hull([on(x, v, over) for x in (0.0, plan.length) for v, over in corners])
    ridge = plan.deep * cos(p)
    far = near.mirror([0.0, 1.0, 0.0]).translate([0.0, 2 * ridge, 0.0])
    c, s = cos(radians(plan.board_turn)), sin(radians(plan.board_turn))
    w, h = plan.board
    flat = [
        (plan.board_at[0] + c * a - s * b, plan.board_at[1] + s * a + c * b)
        for a in (-w / 2, w / 2)
        for b in (-h / 2, h / 2)
    ]
    board = hull([on(x, v, over) for x, v in flat for over in (0.0, t)])
    seat = plan.post[0] * t / cos(p)
    steep = t / cos(p)
    return Piece(
        "hut",
        (("near", near), ("far", far), ("post", _post(plan, float(lift[2]))), ("board", board)),
        (
            Touch("near", "far", (0.0, -1.0, 0.0), plan.length * steep),
            Touch("near", "post", tuple(-out), seat),
            Touch("near", "board", tuple(-out), w * h),
        ),
    )


def _post(plan: Slopes, lift: float) -> Manifold:
    """Return the upright post, its foot cut to the slope that is said; the middle of its foot lies on the true one."""
    t, p, cut = plan.base.t, radians(plan.pitch), radians(plan.pitch + plan.said)
    x, y, z = plan.post_at[0], plan.post_at[1] * cos(p), plan.post_at[1] * sin(p) + lift
    wide = plan.post[0]
    across, along = (wide, t) if plan.post_turn % 180 == 0 else (t, wide)
    foot = [(x + i * across / 2, y + j * along / 2, z + j * along / 2 * tan(cut)) for i in (-1, 1) for j in (-1, 1)]
    # its height is that of its outside at the lower end: downhill, or of the only end that its outside has
    low = {0: -t / 2, 90: -wide / 2, 180: t / 2, 270: -wide / 2}[plan.post_turn]
    top = z + low * tan(cut) + plan.post[1]
    return hull([*foot, *((a, b, top) for a, b, _ in foot)])


def faults(plan: Slopes, dice: Dice) -> dict[str, Slopes]:
    """Return slopes whose post or board does not lie: over the rim, for another slope, in one place; or a need not met."""
    deep = plan.deep - 0.4 * min(plan.board)  # however it is turned, half of it reaches farther
    return {
        "a board over the rim": replace(plan, board_at=(plan.board_at[0], round(deep, 3))),
        "a post over the rim": replace(plan, post_at=(-0.2, plan.post_at[1])),
        "a slope said wrong": replace(plan, said=dice.one_of((-1, 1)) * dice.size(2.0, 8.0)),
        "a board where the post stands": replace(plan, board_at=plan.post_at),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }


def smaller(plan: Slopes) -> Iterator[Slopes]:
    """Return slopes with rounder sizes."""
    for name in ("length", "deep", "pitch", "board_turn"):
        for step in (10.0, 1.0):
            value = max(0.0 if name == "board_turn" else step, round(getattr(plan, name) / step) * step)
            if value != getattr(plan, name):
                yield replace(plan, **{name: value})
                break
    if plan.post_turn:
        yield replace(plan, post_turn=0)
