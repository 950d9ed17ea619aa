"""A pack is read from its pictures as it is meant, and one that is spoiled is not; the reader knows nothing but pictures."""

import ast
from pathlib import Path

import numpy as np
import pytest
import shapely

from publisher import api
from publisher.pages import Pack
from publisher.press import write_pdf
from tests.rehearsal.compare import Held, held
from tests.rehearsal.laid_on import apart
from tests.rehearsal.notes import Note
from tests.rehearsal.pack import read_pack, unlike_prints
from tests.rehearsal.parts import ReadPart
from tests.rehearsal.planted import PLANTED
from tests.rehearsal.standing import boards_of, stand
from tests.rehearsal.truth import true_parts

SPEC = """\
format: 2
title: Sluice
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
use: trace
sizes: {board: 5 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  gate: {name: Gate, board: foam, count: 2, shape: wall_panel, trace_allowance: 0.4 mm, with: {width: 70 mm, height: 50 mm},
         openings: {hatch: {kind: window, head: round, width: 16 mm, height: 20 mm, centre: 22 mm, sill: 9 mm}}}
  ramp: {name: Ramp, board: foam, count: 1, shape: ramp_side, trace_allowance: 0.4 mm, with: {run: 60 mm, rise: 30 mm, toe: 12 mm}}
papers: [a4]
steps: [{title: Print and cut, stage: print, say: Print page 2 first., parts: [gate, ramp]}]
"""
CAUGHT = "letters exchanged"  # the others by ``python -m tests.rehearsal --plants``
MAKERS = {
    "truth.py",
    "compare.py",
    "compare_built.py",
    "compare_standing.py",
    "tried.py",
    "planted.py",
    "__main__.py",
    "test_planted.py",
    "test_rehearsal.py",
}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A design of two parts, one with an opening, one that is another when it is turned over."""
    made = tmp_path_factory.mktemp("sluice")
    (made / "spec.yaml").write_text(SPEC, encoding="utf-8")
    return made


@pytest.fixture(scope="module")
def pack(folder: Path) -> Pack:
    """Its pack, composed."""
    return api.compose(api.work(api.read(folder)))[0][0]


def rehearsed(pack: Pack, folder: Path, tmp_path: Path) -> tuple[Held, ...]:
    """Write a pack, read it from its pictures and hold it against its design."""
    pdf = tmp_path / "pack.pdf"
    pdf.write_bytes(write_pdf(pack))
    return held(read_pack(pdf), true_parts(folder))


def test_a_pack_is_cut_from_its_pictures_as_it_is_meant(pack: Pack, folder: Path, tmp_path: Path) -> None:
    found = rehearsed(pack, folder, tmp_path)
    assert [one.letter for one in found] == ["A", "B"]
    assert all(one.reached for one in found), found


def test_a_spoiled_pack_is_not_cut_as_it_is_meant(pack: Pack, folder: Path, tmp_path: Path) -> None:
    spoiled = PLANTED[CAUGHT](pack)
    assert spoiled is not None
    assert not all(one.reached for one in rehearsed(spoiled, folder, tmp_path))


def test_an_outline_turned_over_is_another() -> None:
    """A right triangle of 40 × 30 mm: turned it is itself, turned over it is off by millimetres."""
    one = shapely.Polygon(((0, 0), (40, 0), (0, 30)))
    turned = shapely.affinity.rotate(one, 71.0, origin=(5, 5))
    assert apart(one, turned)[1] < 0.001
    assert apart(one, shapely.affinity.scale(turned, -1.0, 1.0))[1] > 1.0


def part(letter: str, area: shapely.Polygon, *notes: Note, count: int = 1) -> ReadPart:
    """Return a part of 5 mm board as if it had been read."""
    return ReadPart(letter, area, (1,), count, thickness=5.0, notes=notes)


SLOTTED = shapely.box(0, 0, 100, 80).difference(
    shapely.union_all([shapely.box(x, y, x + 5.2, y + 20) for x in (10, 84.8) for y in (10, 50)])
)
TABBED = shapely.union_all([shapely.box(0, 0, 60, 80), *(shapely.box(-5, y, 65, y + 20) for y in (10, 50))])
UP = Note("top", "top", 50, 70, (0.0, 1.0))


LEFT, RIGHT = (
    (Note("match", "a", 12, 40), Note("match", "b", 88, 40)),
    (Note("match", "b", 5, 40), Note("match", "a", 55, 40)),
)


@pytest.mark.parametrize(
    ("of_sides", "of_walls"),
    [
        (LEFT, RIGHT),
        (
            tuple(Note("match", "a", note.x, note.y) for note in LEFT),
            tuple(Note("match", "a", note.x, note.y) for note in RIGHT),
        ),
        ((), ()),
    ],
)
def test_tabs_go_into_the_slots_of_their_letter(of_sides: tuple[Note, ...], of_walls: tuple[Note, ...]) -> None:
    """Two sides of 100 × 80 mm with walls of 60 mm between them: a box 70 mm deep, for the sides stand before the walls' ends. Where
    all joints are alike they bear one letter, or none."""
    sides, walls = part("A", SLOTTED, *of_sides, UP, count=2), part("B", TABBED, *of_walls, UP, count=2)
    (stood,), left = stand(boards_of((sides, walls), 0.0))
    assert (sorted(one.board.letter for one in stood), left) == (["A", "A", "B", "B"], ())
    corners = np.array([(x, y, z, 1.0) for x in (0, 100) for y in (0, 80) for z in (0, -5)]).T
    boxes = [(one.matrix @ corners)[:3] for one in stood if one.board.letter == "A"]
    low, high = np.min(np.hstack(boxes), axis=1), np.max(np.hstack(boxes), axis=1)
    assert np.allclose(sorted(high - low), (70.0, 80.0, 100.0), atol=1e-6)


def test_a_letter_that_no_slot_bears_stands_nothing() -> None:
    sides = part("A", SLOTTED, Note("match", "a", 12, 40), UP, count=2)
    walls = part("B", TABBED, Note("match", "c", 5, 40), UP, count=2)
    stood, left = stand(boards_of((sides, walls), 0.0))
    assert stood == ()
    assert left[:2] == ("part A: 2 of 2 have no place", "part B: 2 of 2 have no place")
    assert left[2:] == ("part A: nothing meets its letter a", "part B: nothing meets its letter c")


def test_prints_of_one_part_that_bear_other_letters_are_said_to_be_unlike() -> None:
    one, other = part("B", TABBED, *RIGHT, UP), part("B", TABBED, RIGHT[0], Note("match", "z", 55, 40), UP)
    assert list(unlike_prints((one, one, part("A", SLOTTED)))) == []
    assert list(unlike_prints((one, other, part("A", SLOTTED)))) == ["B"]


def test_who_reads_knows_pictures_alone() -> None:
    """No module that reads imports the tool, nor a reader of the PDF's text or lines; PDFium gives the picture of a page."""
    readers = [p for p in Path(__file__).parent.glob("*.py") if p.name not in MAKERS]
    assert len(readers) > 8
    for module in readers:
        for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
            names = [a.name for a in node.names] if isinstance(node, ast.Import) else []
            names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            for name in names:
                tool = name.split(".")[0] in ("publisher", "pypdf", "pdfminer", "pikepdf")
                maker = name.removeprefix("tests.rehearsal.") + ".py" in MAKERS
                assert not tool, f"{module.name} imports {name}"
                assert not maker, f"{module.name} imports {name}"
    raster = (Path(__file__).parent / "raster.py").read_text(encoding="utf-8")
    assert "get_textpage" not in raster and "get_objects" not in raster
