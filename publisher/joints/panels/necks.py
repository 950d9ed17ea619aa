"""Where what carries a deck alone is narrow: the area on which the deck lies, and the post under it down to its foot. Mm, N."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

import numpy as np
import shapely

from publisher.basics import record
from publisher.joints.necks import LEAST_SECTION, Neck, neck_of
from publisher.joints.outlines import Array, united
from publisher.joints.panels.decks import UNDER
from publisher.joints.panels.interference import section_of
from publisher.joints.panels.place import Panel
from publisher.joints.panels.solids import corners_of
from publisher.joints.panels.space import PanelFrame

UPRIGHT = 0.5
"""Share of its normal that a board has upwards, at most, that stands and does not lie."""

MOST_HEIGHTS = 60
"""At so many heights a post is cut, at most: of the corners of its outline every second one, or third …"""


@record
class CarriedOver:
    """What a level board bears on what is under it: places of figures (n, 2) in plan, one figure's load (N), and the weight (N) of
    all that lies there, in the middle of that (2,); ``glued`` to what is under it or loose there."""

    places: Array
    load: float
    weight: float
    middle: Array
    glued: bool = True


@record
class PostNeck:
    """The names of the boards that carry a deck there, and how they bend."""

    carriers: tuple[str, ...]
    neck: Neck
    boards: tuple[Panel, ...]


def necks_under(
    deck: Panel, over: CarriedOver, boards: Sequence[Panel], borne: Callable[[Panel], CarriedOver] | None = None
) -> Iterator[PostNeck]:
    """Yield the necks under a level board, from the top down, as far as one board alone carries the next: a post, or layers.
    ``borne``: what a level board bears of its own, its weight among it, which loads those under it; None: nothing.

    A board that others hold at its side bends between them, and is judged as a deck; several that carry one together are judged
    where they touch it.
    """
    others = [board for board in boards if board.name != deck.name]
    under = _under(deck, others)
    if over.glued and under:
        yield from _neck([board for board, _ in under], united([area for _, area in under]), over)
    if len(under) != 1:
        return
    carrier, below = under[0][0], replace(over, glued=True)
    if abs(float(carrier.frame.outward[2])) >= UPRIGHT:
        yield from necks_under(carrier, _with(below, None if borne is None else borne(carrier)), others, borne)
        return
    for height in _heights(carrier, _extent(deck)[0]):
        yield from _neck([carrier], _level(carrier, height), below)


def _with(over: CarriedOver, own: CarriedOver | None) -> CarriedOver:
    """Return what lies on a board together with what that bears of its own."""
    if own is None:
        return over
    weight = over.weight + own.weight
    middle = (over.weight * over.middle + own.weight * own.middle) / weight if weight else over.middle
    return replace(over, places=np.vstack([over.places, own.places]), weight=weight, middle=middle)


def _under(deck: Panel, others: list[Panel]) -> list[tuple[Panel, shapely.Geometry]]:
    """Return the boards that a level one lies on, or that go through it, each with where it does; none where another holds its side."""
    low, high = _extent(deck)
    own = _level(deck, (low + high) / 2.0)
    region = _filled(own)
    beside = (shapely.difference(_level(board, (low + high) / 2.0), region) for board in others)
    if any(side.area >= LEAST_SECTION and shapely.dwithin(side, region, UNDER) for side in beside):
        return []
    through = {
        board.name for board in others if _extent(board)[1] > low + UNDER
    }  # what ends under an opening carries nothing there
    cuts = (
        (board, shapely.intersection(_level(board, low - UNDER), region if board.name in through else own))
        for board in others
    )
    return [(board, area) for board, area in cuts if area.area >= LEAST_SECTION]


def _neck(carriers: list[Panel], area: shapely.Geometry, over: CarriedOver) -> Iterator[PostNeck]:
    neck = neck_of(area, over.places, over.load, over.weight, over.middle)
    if neck is not None:
        yield PostNeck(tuple(board.name for board in carriers), neck, tuple(carriers))


def _heights(post: Panel, top: float) -> list[float]:
    """Return the heights just over and under the corners of a post, below what it carries."""
    own = np.unique(np.round(post.frame.carry(corners_of(post.part))[:, 2], 2))
    own = own[:: max(1, -(-len(own) // MOST_HEIGHTS))]
    every = np.concatenate([own - UNDER, own + UNDER])
    low, _ = _extent(post)
    return sorted(float(height) for height in every if low < height < top)


def _extent(board: Panel) -> tuple[float, float]:
    heights = board.frame.carry(corners_of(board.part))[:, 2]
    return float(heights.min()), float(heights.max())


def _filled(region: shapely.Geometry) -> shapely.Geometry:
    """Return an area without its openings: a post that goes through one is held there as one under it is."""
    return shapely.union_all([shapely.Polygon(piece.exterior) for piece in shapely.get_parts(region)])


def _level(board: Panel, height: float) -> shapely.Geometry:
    """Return the level section of a board at a height, in plan."""
    return section_of(board, PanelFrame(np.eye(3), np.array([0.0, 0.0, height])), 0.0)
