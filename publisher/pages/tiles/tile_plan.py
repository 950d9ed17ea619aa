"""How a part that fits no page is laid on tile pages: orientation, frame, turn and cutting with the fewest pages."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import field, replace

import shapely
from shapely.affinity import translate

from publisher.basics import Box, Line, Point, Pose, record, remembered_few
from publisher.basics.wording import LengthUnit, say_size
from publisher.geometry import Part, polygon
from publisher.pages.sheet import LEAST_SQUARE, PAGE_SQUARE, Context, Frame
from publisher.pages.templates import PART_AWAY, Sample, mark_notes, page_frame, quiet_lines
from publisher.pages.tiles.seam_marks import TileSeam, seams
from publisher.pages.tiles.seams import OVERLAP, ROOMY, TRIM, Cell, Cutting, Obstacle, cut, tiles_needed
from publisher.pages.type import SPACE, Note, as_polygon

TURNS = (0.0, 90.0)
MAP_FROM = 3  # tiles of one copy that have a map of their own
SHORT_EDGE = 25.0  # mm: tabs, notches, ends
LEAST_TILE_AREA = 40.0  # mm: a window area with a shorter side is not worth a page


@record
class Stage:
    """A page laid out for tiles: the area in which windows stand, and the area for map and words, beside the square."""

    frame: Frame
    area: Box
    info: Box


@record
class TilePlace:
    """Where a tile stands: the frame of its page, what carries laid coordinates there, the page's key, and the area that is kept
    for map and words; None on a page that tiles share."""

    frame: Frame
    shift: Point
    key: str
    info: Box | None = None


@record
class Tiling:
    """A copy cut into tiles: how it is turned, its laid outline, its tiles and where they stand, and the seams with their marks."""

    sample: Sample
    turn: float
    laid: shapely.Polygon
    cutting: Cutting
    places: tuple[TilePlace, ...] = ()  # in the order of the cutting's cells
    seams: tuple[TileSeam, ...] = ()
    lines: shapely.Geometry = field(default_factory=shapely.GeometryCollection)  # laid: all that words keep off
    notes: tuple[Note, ...] = ()  # laid: the words of the marks

    @property
    def mapped(self) -> bool:
        """Whether it has a page with a map: where tiles lie in rows and columns, and no row of them says all."""
        return len(self.cutting.cells) >= MAP_FROM and min(self.cutting.rows, self.cutting.columns) > 1

    @property
    def name(self) -> str:
        """The name in match marks: the part's letter, with the copy where every copy is printed."""
        part = self.sample.part
        return f"{part.letter}.{self.sample.copy} " if self.sample.copy else part.letter

    def taped(self, unit: LengthUnit) -> str:
        """Return in words how large the taped template is."""
        drawn = Box(*self.laid.bounds)
        return say_size(drawn.width, drawn.height, unit)

    def sizes(self, unit: LengthUnit) -> str:
        """Return in words how large the taped template is, and the piece that is cut along a pencil line round it."""
        piece = self.sample.part.outline
        own = Box(*polygon(piece, Pose(turn=self.turn, mirrored=self.sample.mirrored)).bounds)
        said = self.taped(unit)
        if self.sample.part.trace_allowance <= 0.0:
            return said
        return f"{said}; the piece cut on the pencil line {say_size(own.width, own.height, unit)}"

    def place(self, cell: Cell) -> TilePlace:
        """Return where a tile stands."""
        return self.places[self.cutting.cells.index(cell)]

    def key(self, cell: Cell) -> str:
        """Return the key of the page that shows a tile."""
        return self.place(cell).key

    def shift(self, cell: Cell) -> Point:
        """Return what carries laid coordinates to the tile's page."""
        return self.place(cell).shift

    def lines_on(self, cell: Cell) -> shapely.Geometry:
        """Return, on the tile's page, the lines that words keep off: outlines, marks, and the words of the marks."""
        x, y = self.shift(cell)
        return translate(self.lines, x, y)

    def notes_on(self, cell: Cell) -> tuple[Note, ...]:
        """Return, on the tile's page, the words of the marks that its window shows whole."""
        x, y = self.shift(cell)
        window = cell.window
        return tuple(replace(n, x=n.x + x, y=n.y + y) for n in self.notes if n.box.beyond(window) <= 0.0)

    def pose(self, cell: Cell) -> Pose:
        """Return the part's pose on the tile's page."""
        return Pose(*self.shift(cell), self.turn, self.sample.mirrored)

    def window(self, cell: Cell) -> Box:
        """Return the tile's window on its page."""
        return cell.window.moved(*self.shift(cell))


def least_tiles(context: Context, part: Part) -> int:
    """Return how many tiles a part needs by its surrounding rectangle, on the stage that takes fewest."""
    left, bottom, right, top = polygon(part.template).bounds
    sizes = ((right - left, top - bottom), (top - bottom, right - left))
    return min(
        tiles_needed(wide, stage.area.width) * tiles_needed(tall, stage.area.height)
        for stage in stages(context)
        for wide, tall in sizes
    )


@record
class LaidCopy:
    """A copy laid at one turn, ready to be cut: its outline, the words of its marks, what marks of seams keep off, and what seams do."""

    sample: Sample
    turn: float
    outline: shapely.Polygon
    notes: tuple[Note, ...]
    quiet: shapely.Geometry
    obstacles: tuple[Obstacle, ...]

    def cut(self, width: float, height: float, paper: float = ROOMY) -> Tiling | None:
        """Return it cut for windows of at most width × height mm, its tiles not placed yet; None where it cannot be cut so."""
        cutting = cut(self.outline, self.obstacles, width, height, paper)
        return Tiling(self.sample, self.turn, self.outline, cutting) if cutting else None

    def with_seams(self, context: Context, found: Tiling) -> Tiling:
        """Return a tiling of it with its seams, and with the lines and words that others keep off. Words that a seam would part, or
        the next tile cover, find a place on one tile."""
        pose = Pose(turn=self.turn, mirrored=self.sample.mirrored)
        cells = found.cutting.cells
        notes, quiet = self.notes, self.quiet
        if any(all(note.box.beyond(cell.area) > 0.0 for cell in cells) for note in notes):
            tiles = tuple(as_polygon(cell.area) for cell in cells)
            notes = mark_notes(self.sample.part, pose, context.type, (), tiles)
            quiet = _quiet(self.sample.part, pose, notes)
        lines = shapely.union_all([self.outline.boundary, quiet_lines(self.sample.part, pose), *_areas(notes)])
        return replace(found, seams=seams(found.cutting, self.outline, quiet), lines=lines, notes=notes)


@remembered_few
def lay(context: Context, sample: Sample, turn: float) -> LaidCopy:
    """Lay a copy at a turn (degrees, whole quarters)."""
    pose = Pose(turn=turn, mirrored=sample.mirrored)
    notes = mark_notes(sample.part, pose, context.type)
    quiet = _quiet(sample.part, pose, notes)
    outline = polygon(sample.part.template, pose)
    return LaidCopy(sample, turn, outline, notes, quiet, _obstacles(sample.part, pose, quiet))


def _quiet(part: Part, pose: Pose, notes: Iterable[Note]) -> shapely.Geometry:
    """Return what marks of seams keep off: lines of marks and their words, but no lines of a surface."""
    return shapely.union_all([quiet_lines(part, pose, surface=False), *_areas(notes)])


def _areas(notes: Iterable[Note]) -> list[shapely.Polygon]:
    return [note.area() for note in notes]


def tiling(context: Context, sample: Sample) -> Tiling:
    """Return the cutting of a part on pages of its own that takes fewest of them, then keeps its seams off what matters most.

    Raises ValueError when no cutting has fewer than a million tiles.
    """
    laid = {turn: lay(context, sample, turn) for turn in TURNS}
    best: tuple[tuple[float, ...], Tiling, Stage] | None = None
    for order, (turn, stage) in enumerate(_worth_cutting(context, {t: one.outline for t, one in laid.items()})):
        found = laid[turn].cut(stage.area.width, stage.area.height)
        if found is None:
            continue
        upright = 2.0 if turn else 0.0  # a part reads best as it stands
        key = (float(len(found.cutting.cells)), found.cutting.cost + upright, float(order))
        if best is None or key < best[0]:
            best = (key, found, stage)
    if best is None:
        raise ValueError(f"part {sample.part.id} cannot be cut into tiles for {context.paper.name}")
    _, found, stage = best
    places = tuple(_alone(sample, stage, cell) for cell in found.cutting.cells)
    return laid[found.turn].with_seams(context, replace(found, places=places))


def _alone(sample: Sample, stage: Stage, cell: Cell) -> TilePlace:
    """Return where a tile stands on a page of its own: its window in the middle of the stage's area."""
    area, window = stage.area, cell.window
    shift = (
        round((area.left + area.right - window.left - window.right) / 2, 3),
        round((area.bottom + area.top - window.bottom - window.top) / 2, 3),
    )
    key = f"tiles:{sample.part.id}:{max(sample.copy, 1)}:{cell.row}:{cell.column}"
    return TilePlace(stage.frame, shift, key, stage.info)


def _worth_cutting(context: Context, laid: Mapping[float, shapely.Polygon]) -> Iterator[tuple[float, Stage]]:
    """Yield the turns and stages on which a part may take fewest pages: by the count of its surrounding rectangle, or by one
    more, as windows over empty corners fall away. A large calibration square is kept wherever it costs no page."""
    options: list[tuple[int, float, float, Stage]] = []
    for stage in stages(context):
        for turn in TURNS:
            left, bottom, right, top = laid[turn].bounds
            count = tiles_needed(right - left, stage.area.width) * tiles_needed(top - bottom, stage.area.height)
            square = stage.frame.calibration.width if stage.frame.calibration else 0.0
            options.append((count, square, turn, stage))
    least = min(count for count, *_ in options)
    comfort = max(square for count, square, *_ in options if count == least)
    most = least + 1 if least > 4 else least
    for count, square, turn, stage in options:
        if square == comfort and count <= most:
            yield turn, stage


def _obstacles(part: Part, pose: Pose, quiet: shapely.Geometry) -> tuple[Obstacle, ...]:
    """Return what seams keep off: openings and slots above all, then tabs, notches and other short straight edges, then marks."""
    found = [Obstacle(Box.round(pose.apply_all(h.points)).grown(4.0), 10.0) for h in part.template.holes]
    for edge in part.template.outer.edges:
        if isinstance(edge, Line) and edge.length < SHORT_EDGE:
            found.append(Obstacle(Box.round(pose.apply_all((edge.start, edge.end))).grown(3.0), 3.0))
    for mark in shapely.get_parts(quiet):
        box = Box(*mark.bounds)
        if max(box.width, box.height) < 60.0:
            found.append(Obstacle(box.grown(OVERLAP - TRIM), 1.0))
    return tuple(found)


def stages(context: Context) -> Iterator[Stage]:
    """Yield the ways to lay out a tile page: words and map in a band beside the calibration square, or in a column over it."""
    for square in (PAGE_SQUARE, LEAST_SQUARE):
        for landscape in (True, False):
            frame = page_frame(context.paper, landscape, square, "lower_right")
            live, kept = frame.live, frame.blocked[0]
            bottom = live.bottom + SPACE
            left, top = frame.text.left, frame.text.top
            yield from _worth(
                Stage(
                    frame,
                    Box(live.left, kept.top + PART_AWAY / 2, live.right, live.top - PART_AWAY + 1.0),
                    Box(left, bottom, kept.left - PART_AWAY, kept.top),
                ),
                Stage(
                    frame,
                    Box(
                        live.left, live.bottom + PART_AWAY - 1.0, kept.left - PART_AWAY / 2, live.top - PART_AWAY + 1.0
                    ),
                    Box(kept.left + SPACE, kept.top + PART_AWAY, frame.text.right, top),
                ),
            )


def _worth(*found: Stage) -> Iterator[Stage]:
    yield from (s for s in found if min(s.area.width, s.area.height) >= LEAST_TILE_AREA)
