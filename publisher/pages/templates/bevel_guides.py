"""Bevel guides: a triangle to cut out and glue on a scrap of board, so that it stands and the blade leans along its slope.

It is low: a blade that lies along it must still reach through the board, and no blade is long.

A guide stands in free room of a page that shows a part with so steep a bevel; where there is none, the words at the edge must do.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from math import cos, radians, tan

import shapely

from publisher.basics import Box, Layer, LengthPromise, Path, TextPromise, polyline, record
from publisher.basics.wording import listed, said_angle
from publisher.geometry import Part
from publisher.joints import STEEP_BEVEL
from publisher.pages.model import Stroke
from publisher.pages.sheet import Body
from publisher.pages.templates.label_room import LabelRoom
from publisher.pages.type import CUT, LEAST, Block, Setter

GUIDE_TALL, GUIDE_LEAST = 12.0, 4.0  # mm: enough to lean on, and as little as still guides
BLADE_OUT = 30.0  # mm that a blade of a craft knife comes out without bending: along the guide and through the board
GUIDE_WORDS = 34.0  # mm, measure of the words beside the triangle
GUIDE_GAP = 2.5  # mm between them
GUIDE_CLEAR = 1.0  # mm more than words keep off parts: its lines are cut, and are not to be taken for those of a part


@record
class BevelGuide:
    """A guide in its place: the bevel in degrees from square, the letters of the parts that it is for, its box on the page, and
    how ``tall`` it is (mm): a blade along it comes through their board."""

    bevel: float
    letters: tuple[str, ...]
    box: Box
    tall: float = GUIDE_TALL

    @property
    def title(self) -> str:
        """What stands beside it."""
        return f"Bevel guide {self.bevel:g}° for {listed(self.letters)}"


@record
class GuideBlock:
    """The size of a guide with its words in mm."""

    width: float
    height: float
    ease: float = 1.0


def bevel_guides(setter: Setter, parts: Iterable[Part], paper: shapely.Geometry) -> tuple[BevelGuide, ...]:
    """Return a guide for each steep bevel of these parts that has room on free paper."""
    wanted: dict[float, list[str]] = {}
    thick: dict[float, float] = {}
    for part in parts:
        for bevel in dict.fromkeys(said_angle(edge.bevel) for edge in part.edges):
            if bevel >= STEEP_BEVEL and part.letter not in wanted.setdefault(bevel, []):
                wanted[bevel].append(part.letter)
                thick[bevel] = max(thick.get(bevel, 0.0), part.thickness)
    found = []
    for bevel, letters in sorted(wanted.items()):
        tallest = guide_height(bevel, thick[bevel])
        bare = BevelGuide(bevel, tuple(letters), Box(0.0, 0.0, 0.0, 0.0), tallest)
        wide = tallest * tan(radians(bevel)) + GUIDE_GAP + GUIDE_WORDS
        tall = max(tallest, _words(setter, bare, 0.0, 0.0).height)
        place = LabelRoom(paper, clear=GUIDE_CLEAR).best((GuideBlock(wide, tall),))
        if place is not None:
            (x, y) = place[1]
            guide = replace(bare, box=Box(x, y, x + wide, y + tall))
            found.append(guide)
            paper = paper.difference(shapely.box(*guide.box.grown(GUIDE_GAP).sides))
    return tuple(found)


def guide_height(bevel: float, thickness: float) -> float:
    """Return how tall (mm) a guide is, so that a blade along it that is out by at most ``BLADE_OUT`` comes through a board; the least where
    no blade is so long."""
    return min(GUIDE_TALL, max(GUIDE_LEAST, BLADE_OUT * cos(radians(bevel)) - thickness))


def _words(setter: Setter, guide: BevelGuide, x: float, top: float) -> Block:
    head = setter.paragraph(guide.title, LEAST.bold(), x, top, GUIDE_WORDS, layer=Layer.NOTES)
    said = "Cut it out, glue it on a scrap of board and trim that along a rule, so that it stands."
    rest = setter.paragraph(said, LEAST, x, top - head.height, GUIDE_WORDS, layer=Layer.NOTES)
    return Block((*head.drawn, *rest.drawn), head.height + rest.height)


def guide_drawn(setter: Setter, guide: BevelGuide, page: int) -> Body:
    """Return a guide with its promises: an upright leg of its height and a level one of that times tan(bevel). It is cut, so its
    lines are cut lines."""
    box, level = guide.box, guide.tall * tan(radians(guide.bevel))
    foot, end, tip = (box.left, box.bottom), (box.left + level, box.bottom), (box.left, box.bottom + guide.tall)
    sides: tuple[Path, ...] = tuple(_sides((foot, end, tip)))
    words = _words(setter, guide, box.left + level + GUIDE_GAP, box.top)
    lengths = (
        LengthPromise(page, foot, tip, guide.tall, "dimension"),
        LengthPromise(page, foot, end, level, "dimension"),
    )
    stroke = Stroke(CUT, sides, Layer.OUTLINES, None, "figure")
    return Body((stroke, *words.drawn), lengths=lengths, texts=(TextPromise(page, guide.title),))


def _sides(corners: tuple[tuple[float, float], ...]) -> Iterator[Path]:
    for one, two in zip(corners, (*corners[1:], corners[0]), strict=True):
        yield polyline((one, two))
