"""Posts in openings of a deck that lies on four walls: square openings along and across, and round ones.

x runs along the front, y backwards, z up; the deck's template lies as it is seen from above, over the outsides of the walls.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import cos, hypot, pi, sin

from manifold3d import Manifold

from tests.random_designs.design import Base, Design, Fit, Piece, Rest, Spec, Touch, deg, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.solids import block, plate

ROUND = 360  # corners of a round opening: what it loses by them is less than 0.002 mm
AROUND = 1.5  # of the play: how much wider a round opening is than a post from corner to corner


@dataclass(frozen=True, slots=True)
class Post:
    """A post in an opening: ``form`` is along, across or round, ``at`` the opening's middle on the deck (mm), ``turn`` degrees."""

    form: str
    at: tuple[float, float]
    turn: float


@dataclass(frozen=True, slots=True)
class Landing:
    """Sizes in mm: the deck, its height, posts as wide and high as each other. ``play`` on board and edge of a post."""

    base: Base
    long: float
    deep: float
    high: float
    wide: float
    tall: float
    play: float
    posts: tuple[Post, ...]
    narrow: float = 0.0  # by which a square opening is too narrow for the edge, a round one for both
    askew: float = 0.0  # degrees by which the posts are turned in their openings


def draw(dice: Dice) -> Landing:
    """Return a deck with posts well apart."""
    base = dice.base("Random landing")
    t = base.t
    wide = dice.size(max(12.0, 2 * t), 25.0)
    room = wide + 6 * t + 12.0
    count = dice.count(1, 3)
    long, deep = max(90.0, 14 * t) + room * count, max(60.0, 8 * t) + room
    posts = []
    for k in range(count):
        form = dice.one_of(("along", "across", "round"))
        turn = dice.size(0.0, 180.0) if form == "round" else 0.0 if form == "along" else 90.0
        at = (round(45.0 + 2 * t + room * (k + 0.5), 1), round(deep / 2 + dice.size(-5.0, 5.0), 1))
        posts.append(Post(form, at, turn))
    return Landing(
        base,
        long,
        deep,
        dice.size(max(30.0, 5 * t), 70.0),
        wide,
        dice.size(20.0 + t, 50.0),
        dice.play(base),
        tuple(posts),
    )


def design(plan: Landing) -> Design:
    """Return spec and solids."""
    t = plan.base.t
    openings: Spec = {}
    joins: list[Spec] = [
        {"edges": ["front.right", "right.left"], "joint": "butt", "runs_through": "front"},
        {"edges": ["right.right", "back.left"], "joint": "butt", "runs_through": "back"},
        {"edges": ["back.right", "left.left"], "joint": "butt", "runs_through": "back"},
        {"edges": ["left.right", "front.left"], "joint": "butt", "runs_through": "front"},
        {"place": "deck", "rests_on": ["front.top", "back.top"]},
    ]
    panels = {"front": "wall", "back": "wall", "left": "side", "right": "side", "deck": "deck"}
    for k, post in enumerate(plan.posts):
        x, y = post.at
        if post.form == "round":
            openings[f"hole_{k}"] = {"kind": "round_hole", "diameter": mm(_round(plan)), "centre": mm(x), "up": mm(y)}
        else:
            across, up = _opening(plan, post)
            openings[f"hole_{k}"] = {
                "kind": "window", "head": "square", "width": mm(across), "height": mm(up), "centre": mm(x), "sill": mm(y - up / 2),
            }  # fmt: skip
        panels[f"post_{k}"] = "post"
        turn = post.turn + (plan.askew if post.form != "round" else 0.0)
        stands: Spec = {"place": f"post_{k}", "stands_on": "deck", "edge": "bottom", "opening": f"hole_{k}"}
        joins.append({**stands, "turn": deg(turn)} if turn else stands)
    walls = {"height": mm(plan.high)}
    parts: Spec = {
        "wall": {"shape": "wall_panel", "with": {"width": mm(plan.long), **walls}},
        "side": {"shape": "wall_panel", "with": {"width": mm(plan.deep), **walls}},
        "deck": {
            "shape": "wall_panel",
            "with": {"width": mm(plan.long), "height": mm(plan.deep)},
            "openings": openings,
        },
        "post": {"shape": "rectangle", "with": {"width": mm(plan.wide), "height": mm(plan.tall)}},
    }
    assembly = {"landing": {"panels": panels, "stands_on": "front.bottom", "joins": joins}}
    height = plan.high + plan.tall
    needs = (need("landing.height", plan.base, height),)
    facts = (("landing.width", plan.long), ("landing.depth", plan.deep), ("landing.height", height))
    spec = frame(plan.base, parts, assembly, needs, max(plan.long, plan.deep))
    assert t < plan.tall
    return Design("posts", 0, plan, spec, (), (_piece(plan),), needs, facts, "post", plan.base)


def _opening(plan: Landing, post: Post) -> tuple[float, float]:
    edge, board = plan.wide + plan.play - plan.narrow, plan.base.t + plan.play
    return (edge, board) if post.form == "along" else (board, edge)


def _round(plan: Landing) -> float:
    return round(hypot(plan.wide, plan.base.t) + AROUND * plan.play - plan.narrow, 3)


def _piece(plan: Landing) -> Piece:
    t, long, deep, high = plan.base.t, plan.long, plan.deep, plan.high
    rings = []
    for post in plan.posts:
        x, y = post.at
        if post.form == "round":
            r = _round(plan) / 2
            rings.append([(x + r * cos(2 * pi * k / ROUND), y + r * sin(2 * pi * k / ROUND)) for k in range(ROUND)])
        else:
            a, b = (v / 2 for v in _opening(plan, post))
            rings.append([(x - a, y - b), (x + a, y - b), (x + a, y + b), (x - a, y + b)])
    deck = plate([(0.0, 0.0), (long, 0.0), (long, deep), (0.0, deep)], t, high, rings)
    boards = [
        ("front", block((0, 0, 0), (long, t, high))),
        ("back", block((0, deep - t, 0), (long, deep, high))),
        ("left", block((0, t, 0), (t, deep - t, high))),
        ("right", block((long - t, t, 0), (long, deep - t, high))),
        ("deck", deck),
    ]
    fits = []
    for k, post in enumerate(plan.posts):
        turn = post.turn + (plan.askew if post.form != "round" else 0.0)
        for thick, name in ((t, f"post {k}"), (t + plan.base.spread, "")):
            flat = Manifold.cube([plan.wide, thick, plan.tall]).translate([-plan.wide / 2, -thick / 2, 0.0])
            solid = flat.rotate([0.0, 0.0, turn]).translate([*post.at, high])
            boards += [(name, solid)] if name else []
        fits.append(Fit(f"post {k}", solid, deck, ("deck", f"post {k}")))
    side = t * high
    touches = [Touch(a, b, (0.0, y, 0.0), side) for a, y in (("front", -1.0), ("back", 1.0)) for b in ("left", "right")]
    touches += [Touch(name, "deck", (0.0, 0.0, -1.0), t * long) for name in ("front", "back")]
    return Piece("landing", tuple(boards), tuple(touches), tuple(fits), (Rest("deck", ("front", "back")),))


def faults(plan: Landing, dice: Dice) -> dict[str, Landing]:
    """Return the landing with one change that its solids refuse."""
    short = plan.play + dice.size(0.2, 2.0, 0.05)
    made = {
        "an opening too narrow": replace(plan, narrow=round(AROUND * short, 3)),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }
    if any(post.form != "round" for post in plan.posts):
        made["a post askew"] = replace(plan, askew=dice.size(10.0, 80.0))
        made["board too thick for its opening"] = replace(
            plan, play=round(max(plan.base.spread - dice.size(0.04, 0.1, 0.01), 0.0), 3)
        )
    return made


def smaller(plan: Landing) -> Iterator[Landing]:
    """Return landings with fewer posts and rounder sizes."""
    for k in range(len(plan.posts) if len(plan.posts) > 1 else 0):
        yield replace(plan, posts=(*plan.posts[:k], *plan.posts[k + 1 :]))
    for name in ("long", "deep", "high", "wide", "tall"):
        for step in (10.0, 1.0):
            value = max(step, round(getattr(plan, name) / step) * step)
            if value != getattr(plan, name):
                yield replace(plan, **{name: value})
                break
