"""Things on things: two piers of board, a beam across them, a cap on the beam that lifts off."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from tests.random_designs.design import Base, Design, Piece, Rest, Spec, Touch, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.solids import block, box_of, united


@dataclass(frozen=True, slots=True)
class Piers:
    """Sizes in mm; x along the beam, from the middle of all. ``fewer``: layers that the second pier lacks."""

    base: Base
    layers: int
    pier: tuple[float, float]
    apart: float  # from middle to middle
    beam: tuple[float, float]
    beam_at: float
    cap: tuple[float, float]
    cap_at: tuple[float, float]  # from the middle of the beam
    fewer: int = 0


def draw(dice: Dice) -> Piers:
    """Return piers whose beam reaches over a good part of both, and a cap whose middle lies on the beam."""
    base = dice.base("Random piers")
    pier = (dice.size(40.0, 80.0), dice.size(40.0, 80.0))
    apart = dice.size(pier[0] + 20.0, pier[0] + 120.0)
    beam = (dice.size(apart + 0.2 * pier[0], apart + 0.9 * pier[0]), dice.size(30.0, 60.0))
    cap = (
        dice.size(30.0, 60.0),
        dice.size(max(16.0, 3.2 * base.t), min(40.0, 8.0 * base.t)),
    )  # half of it holds; no more than four boards hang over
    room = (beam[0] / 2 - 1.0, beam[1] / 2 - 1.0)
    cap_at = (
        dice.size(-0.4 * room[0], 0.4 * room[0]),
        round(room[1] - dice.above("cap to rim", 0.02, 0.8 * room[1]), 3),
    )
    return Piers(base, dice.count(2, 6), pier, apart, beam, dice.size(-5.0, 5.0), cap, cap_at)


def design(plan: Piers) -> Design:
    """Return spec and solids."""
    parts: Spec = {
        name: {"shape": "rectangle", "with": {"width": mm(size[0]), "height": mm(size[1])}}
        for name, size in (("slab", plan.pier), ("plank", plan.beam), ("cover", plan.cap))
    }
    second = "low" if plan.fewer else "pier"
    assembly: Spec = {
        "pier": {"stack": [{"part": "slab", "count": plan.layers}]},
        **({"low": {"stack": [{"part": "slab", "count": plan.layers - plan.fewer}]}} if plan.fewer else {}),
        "beam": {"stack": [{"part": "plank"}]},
        "cap": {"stack": [{"part": "cover"}]},
        "all": {
            "things": {
                "west": {"assembly": "pier", "at": [mm(-plan.apart / 2), "0 mm"]},
                "east": {"assembly": second, "at": [mm(plan.apart / 2), "0 mm"]},
                "beam": {"assembly": "beam", "on_top_of": ["west", "east"], "at": [mm(plan.beam_at), "0 mm"]},
                "cap": {
                    "assembly": "cap",
                    "on_top_of": ["beam"],
                    "at": [mm(v) for v in plan.cap_at],
                    "lifts_off": True,
                },
            }
        },
    }
    piece = _piece(plan)
    low, high = box_of(united([solid for _, solid in piece.boards]))
    truth = float(high[2] - low[2])
    needs = (need("all.height", plan.base, truth),)
    facts = tuple((f"all.{n}", float(v)) for n, v in zip(("width", "depth", "height"), high - low, strict=True))
    spec = frame(plan.base, parts, assembly, needs, max(plan.beam[0], plan.pier[0]))
    # nobody stands on it: its solids stand by themselves, and a figure at the rim of a cap tips most of them
    spec = spec.replace("sizes: {", "sizes: {figure_mass: 0.001, ", 1)
    return Design("piers", 0, plan, spec, (), (piece,), needs, facts, "thing", plan.base)


def _piece(plan: Piers) -> Piece:
    t = plan.base.t
    w, d = plan.pier[0] / 2, plan.pier[1] / 2
    heights = {"west": t * plan.layers, "east": t * (plan.layers - plan.fewer)}
    middles = {"west": -plan.apart / 2, "east": plan.apart / 2}
    boards = [(n, block((x - w, -d, 0.0), (x + w, d, heights[n]))) for n, x in middles.items()]
    # the beam's middle is put over the middle of both piers
    left, right = plan.beam_at - plan.beam[0] / 2, plan.beam_at + plan.beam[0] / 2
    z = max(heights.values())
    boards.append(("beam", block((left, -plan.beam[1] / 2, z), (right, plan.beam[1] / 2, z + t))))
    x, y = plan.beam_at + plan.cap_at[0], plan.cap_at[1]
    a, b = plan.cap[0] / 2, plan.cap[1] / 2
    boards.append(("cap", block((x - a, y - b, z + t), (x + a, y + b, z + 2 * t))))

    def shared(low: float, high: float, wide: float, other: float) -> float:
        return max(0.0, min(low + wide, other) - max(low, high))

    deep = min(plan.beam[1], plan.pier[1])
    touches = [
        Touch(n, "beam", (0.0, 0.0, -1.0), max(1.0, deep * shared(m - w, left, 2 * w, right)))
        for n, m in middles.items()
    ]
    on = (min(x + a, right) - max(x - a, left)) * (min(y + b, plan.beam[1] / 2) - max(y - b, -plan.beam[1] / 2))
    touches.append(Touch("beam", "cap", (0.0, 0.0, -1.0), max(1.0, on)))
    return Piece("all", tuple(boards), tuple(touches), (), (Rest("beam", ("west", "east")), Rest("cap", ("beam",))))


def faults(plan: Piers, dice: Dice) -> dict[str, Piers]:
    """Return piers that do not carry the beam, a cap that falls off it, two things in one place, or a need not met."""
    beside = (plan.beam[0] - plan.apart + plan.pier[0]) / 2 + dice.size(1.0, 5.0)  # its end lies past the whole pier
    return {
        "piers of unequal height": replace(plan, fewer=1),
        "a beam beside its pier": replace(plan, beam_at=round(beside, 3)),
        "a cap that falls off": replace(
            plan, cap_at=(plan.cap_at[0], round(plan.beam[1] / 2 + dice.size(0.5, 3.0), 3))
        ),
        "piers in one place": replace(plan, apart=round(plan.pier[0] - dice.size(1.0, 10.0), 3)),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }


def smaller(plan: Piers) -> Iterator[Piers]:
    """Return piers with fewer layers and rounder sizes."""
    if plan.layers > 2:
        yield replace(plan, layers=2)
    for name in ("apart", "beam_at"):
        value = round(getattr(plan, name) / 10.0) * 10.0
        if value != getattr(plan, name):
            yield replace(plan, **{name: value})
