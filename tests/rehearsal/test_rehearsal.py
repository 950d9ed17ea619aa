"""A pack is read from its pictures as it is meant, and one that is spoiled is not; the reader knows nothing but pictures."""

import ast
from pathlib import Path

import pytest
import shapely

from publisher import api
from publisher.pages import Pack
from publisher.press import write_pdf
from tests.rehearsal.compare import Held, held
from tests.rehearsal.laid_on import apart
from tests.rehearsal.pack import read_pack
from tests.rehearsal.planted import PLANTED
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
MAKERS = {"truth.py", "tried.py", "planted.py", "__main__.py", "test_rehearsal.py"}


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
                assert not maker or module.name == "compare.py", f"{module.name} imports {name}"
    raster = (Path(__file__).parent / "raster.py").read_text(encoding="utf-8")
    assert "get_textpage" not in raster and "get_objects" not in raster
