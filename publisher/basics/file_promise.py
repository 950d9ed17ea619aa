"""What the files beside a pack must show: cut files, tables, pictures of pages. Millimetres.

Made by the rooms that worked them out, from parts and layouts and never from a file; proof reads the files and compares.
"""

from publisher.basics.pose import Point, Pose
from publisher.basics.records import record


@record
class PieceLine:
    """A line of a finished piece that is not its outline: its ``kind``, and its points (mm, in the piece's own coordinates), the first
    one repeated where it is closed."""

    kind: str
    points: tuple[Point, ...]


@record
class PieceWord:
    """Words of a cut file and the middle of their baseline (mm, in the piece's own coordinates); ``height`` of their em in mm."""

    text: str
    at: Point
    height: float


@record
class PiecePromise:
    """A finished piece, made where its shape was worked out. ``rings``: its outline, then its openings (mm, arcs flattened to a
    sagitta of 0.005); ``lines`` that are marked on it; ``words``, its letter first. None: nobody can say any more."""

    part: str
    letter: str
    name: str
    rings: tuple[tuple[Point, ...], ...]
    lines: tuple[PieceLine, ...] | None = ()
    words: tuple[PieceWord, ...] | None = ()


@record
class CutFilePromise:
    """A cut file: one piece, or a whole sheet of ``board`` called ``label``, ``width`` × ``height`` mm (0 for one piece), on which
    ``copies`` lie as their poses say: at least ``gap`` mm from each other, and ``margin`` mm inside the sheet."""

    path: str
    copies: tuple[tuple[PiecePromise, Pose], ...]
    width: float = 0.0
    height: float = 0.0
    gap: float = 0.0
    margin: float = 0.0
    board: str = ""
    label: str = ""


@record
class AlonePromise:
    """One part alone on a sheet: copies of a careful layout and of a grid, and ``most`` that anybody could lay; how the careful one is
    marked out; ``spares`` that go on beside the whole list, None where nobody asked."""

    letter: str
    name: str
    careful: int
    most: int
    known_as: str
    askew: int
    measures: int
    shared: int
    grid: int
    spares: int | None


@record
class YieldPromise:
    """What one size of sheet gives of one board, made where it was laid out: each part alone, then the whole list. ``cuts`` (mm): what
    is cut on each sheet; ``left_over``: share of the sheets. ``cuts`` is empty where the list does not go on."""

    board: str
    label: str
    width: float
    height: float
    alone: tuple[AlonePromise, ...]
    pieces: int = 0
    grid_sheets: int = 0
    bound: int = 0
    askew: int = 0
    measures: int = 0
    shared: int = 0
    left_over: float = 0.0
    cut: float = 0.0
    cuts: tuple[float, ...] = ()
    score: float = 0.0


@record
class PackFiles:
    """The files of one pack: its PDF, the record beside it ('' where none lies there), and the pictures of its pages in their order, ()
    where none were made."""

    pdf: str
    record: str
    pictures: tuple[str, ...] = ()


@record
class FilePromises:
    """All files of a variant, or of several: packs, cut files, and the table of what sheets give by its path."""

    packs: tuple[PackFiles, ...] = ()
    cut_files: tuple[CutFilePromise, ...] = ()
    tables: tuple[tuple[str, tuple[YieldPromise, ...]], ...] = ()

    @property
    def paths(self) -> frozenset[str]:
        """Every file."""
        packs = (name for pack in self.packs for name in (pack.pdf, pack.record, *pack.pictures) if name)
        return frozenset((*packs, *(one.path for one in self.cut_files), *(path for path, _ in self.tables)))

    def with_others(self, other: "FilePromises") -> "FilePromises":
        """Return these and those of another variant."""
        return FilePromises(self.packs + other.packs, self.cut_files + other.cut_files, self.tables + other.tables)
