"""Boards, parts and designs made by hand, and shapes that a stair, a disc or a frame gives."""

import json
from dataclasses import dataclass, replace
from math import cos, radians, sin
from pathlib import Path

import pytest
import shapely

from publisher.basics import Place, Point, polyline
from publisher.brief import SpecFile
from publisher.design import Board, Design, SheetSize, TextPlan
from publisher.geometry import Mark, Part, Region
from publisher.material import Piece

HERE = Place("spec.yaml", 12, 3)
NESTING = Path(__file__).parent.parent / "benchmarks" / "nesting"
Rings = tuple[tuple[Point, ...], ...]


def ring_of(line: shapely.LinearRing) -> tuple[Point, ...]:
    """Return a shapely ring's points without the repeated one."""
    return tuple((float(x), float(y)) for x, y in shapely.get_coordinates(line)[:-1])


def rings_of(polygon: shapely.Polygon) -> Rings:
    """Return a polygon's rings."""
    return (ring_of(polygon.exterior), *(ring_of(hole) for hole in polygon.interiors))


@dataclass(frozen=True)
class Shop:
    """Makers of everything that the tests of this room need."""

    place: Place = HERE
    nesting: Path = NESTING

    @staticmethod
    def box(width: float, height: float, x: float = 0.0, y: float = 0.0) -> tuple[Point, ...]:
        """A rectangle's ring."""
        return ((x, y), (x + width, y), (x + width, y + height), (x, y + height))

    @staticmethod
    def rings(polygon: shapely.Polygon) -> Rings:
        """A polygon's rings."""
        return rings_of(polygon)

    @staticmethod
    def disc(radius: float, hole: float = 0.0) -> Rings:
        """A disc or ring, flattened to a sagitta of about 0.005 mm."""
        full = shapely.Point(0, 0).buffer(radius, quad_segs=90)
        return rings_of(full.difference(shapely.Point(0, 0).buffer(hole, quad_segs=60)) if hole else full)

    @staticmethod
    def layer(core: float, reach: float, step: float) -> Rings:
        """A stair layer: a disc joined with a sector of ``step`` degrees that reaches further."""
        arc = [(reach * cos(radians(step * i / 30)), reach * sin(radians(step * i / 30))) for i in range(31)]
        whole = shapely.Point(0, 0).buffer(core, quad_segs=90).union(shapely.Polygon([(0.0, 0.0), *arc]))
        assert isinstance(whole, shapely.Polygon)
        return rings_of(whole)

    @staticmethod
    def wedge(reach: float) -> Rings:
        """A ring of five corners, for tests of what is kept, not of how it is packed: it costs little."""
        return (((0.0, 0.0), (reach, 0.0), (reach, 30.0), (40.0, 62.0), (0.0, 62.0)),)

    @staticmethod
    def piece(
        rings: Rings, count: int = 1, angles: tuple[float, ...] = (), mirrored: int = 0, name: str = "p"
    ) -> Piece:
        """A piece to pack."""
        return Piece(name, rings, angles, count, mirrored)

    @staticmethod
    def board(
        *sheets: tuple[float, float], gap: float = 1.0, margin: float = 3.0, grain: str = "none", name: str = "foam"
    ) -> Board:
        """A board sold in the given sheets."""
        sizes = tuple(SheetSize(f"{w:g} x {h:g} mm", w, h) for w, h in sheets)
        return Board(name, 5.0, 0.2, "bare", sizes, gap, margin, grain, HERE)

    @staticmethod
    def part(
        name: str,
        rings: Rings,
        count: int,
        *,
        spare: int = 0,
        mirrored: int = 0,
        turning: str = "any",
        board: str = "foam",
        marks: tuple[Mark, ...] = (),
    ) -> Part:
        """A part whose template is its outline."""

        region = Region(polyline(rings[0], True), tuple(polyline(hole, True) for hole in rings[1:]))
        return Part(
            id=name,
            letter=name[0].upper(),
            name=name.title(),
            board=board,
            thickness=5.0,
            shape="hand",
            outline=region,
            template=region,
            openings=(),
            marks=marks,
            edges=(),
            count=count,
            spare=spare,
            mirrored=mirrored,
            turning=turning,
            trace_allowance=0.0,
            place=HERE,
        )

    @staticmethod
    def design(*boards: Board, store: bytes | None = None) -> Design:
        """A design that has nothing but boards, and a store of layouts if given."""
        files = () if store is None else (SpecFile("layouts.json", "layouts", store),)
        return Design(
            slug="hand",
            variant="",
            variant_title="",
            title="Hand",
            version="1.0.0",
            designer="Ebbwater Patterns",
            licence="CC-BY-4.0",
            summary=TextPlan((), HERE),
            language="en",
            use="trace",
            sizes=(),
            boards=boards,
            parts=(),
            stacks=(),
            panels=(),
            needs=(),
            tools=(),
            materials=(),
            steps=(),
            papers=(),
            fonts=(),
            files=files,
            findings=(),
        )

    @staticmethod
    def with_store(design: Design, store: bytes) -> Design:
        """The same design with a store of layouts."""
        return replace(design, files=(SpecFile("layouts.json", "layouts", store),))

    @staticmethod
    def instance(name: str) -> dict[str, object]:
        """An open instance of the nesting literature."""
        loaded: dict[str, object] = json.loads((NESTING / f"{name}.json").read_text())
        return loaded


@pytest.fixture(scope="session")
def shop() -> Shop:
    """The makers."""
    return Shop()
