"""The tagged structure of every demo's finished pack: two outside readers find in it what proof found, in the order of reading."""

from itertools import groupby, pairwise
from pathlib import Path

import pypdfium2
import pytest

from publisher.proof.reading.reader import read_file
from tests.outside_readers import TagRow, by_pdfium, by_pdfminer

DESIGNS = sorted(spec.parent.name for spec in (Path(__file__).parents[2] / "designs").glob("*/spec.yaml"))
INSIDE = {"Table": {"TR"}, "TR": {"TH", "TD"}, "L": {"LI"}, "LI": {"Lbl", "LBody"}}
LEAVES = {"H1", "H2", "P", "Lbl", "LBody", "TH", "TD", "Figure"}


def close(rows: list[TagRow]) -> list[TagRow]:
    """Rows whose words have no blanks: readers put them between runs as they think right."""
    return [(depth, role, alt, "".join(text.split())) for depth, role, alt, text in rows]


def without_empty(rows: list[TagRow]) -> list[TagRow]:
    """Rows without cells that hold nothing: PDFium does not see them."""
    return [row for row in rows if row[1] not in ("TH", "TD") or row[3]]


@pytest.mark.parametrize("slug", DESIGNS)
def test_outside_readers_find_the_structure_of_whole_packs(slug: str, packs: Path) -> None:
    """Of every variant on every paper, German ones as well."""
    files = sorted((packs / slug).glob("*.pdf"))
    assert {file.stem.rpartition("-")[2] for file in files} == {"a4", "letter"}
    for file in files:
        read_alike(file)


def read_alike(file: Path) -> None:
    """Compare what proof and the two other readers find in a pack."""
    data = file.read_bytes()
    ours = close([(tag.depth, tag.role, tag.alt, tag.text) for tag in read_file(data, file.name).tags])
    read, artifacts = by_pdfminer(data)
    assert close(read) == ours
    sections = [list(run) for new, run in groupby(ours[1:], key=lambda row: row[1] == "Sect") if not new]
    pages = len(pypdfium2.PdfDocument(data))
    assert len(sections) == pages
    for page, section in enumerate(sections):
        assert without_empty(close(by_pdfium(data, page))) == without_empty([*ours[:2], *section])
    named = sum(text.startswith(("page ", "Seite ")) for text in artifacts)
    assert named >= pages  # headers and footers are furniture
    well_made(ours)


def well_made(rows: list[TagRow]) -> None:
    """Look at the form: a title first on each page, lists of items, tables of rows that have as many cells, figures with words."""
    above: list[str] = []
    tables: list[list[int]] = []
    for (_, before, _, _), (depth, role, alt, text) in pairwise(rows):
        above[depth:] = [role]
        assert before != "Sect" or role == "H1", text
        assert depth < 3 or role in INSIDE[above[depth - 1]], (role, above)
        assert role in LEAVES | set(INSIDE) | {"Sect"}
        assert alt or role != "Figure"
        if role == "Table":
            tables.append([])
        elif role == "TR":
            tables[-1].append(0)
        elif role in ("TH", "TD"):
            tables[-1][-1] += 1
    assert tables
    assert all(len(set(cells)) == 1 for cells in tables)
