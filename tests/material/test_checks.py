"""Every check of the room, seen to pass and seen to fail."""

from dataclasses import replace

import pytest

from publisher.basics import Severity, run_checks
from publisher.material import RULES
from publisher.material.checks import CHECKS, BoardList


def found(todo):
    """Return (check, severity) of the findings."""
    return [(f.check, f.severity) for f in run_checks(CHECKS, todo)]


@pytest.fixture
def good(shop):
    """Two parts that fit both sheets of their board."""
    parts = (shop.part("wall", (shop.box(100.0, 60.0),), 4), shop.part("disc", shop.disc(40.0), 2))
    board = shop.board((297.0, 420.0), (508.0, 762.0))
    return BoardList(board, board.sheets, parts)


@pytest.mark.keeps(
    "material/board-without-sheets",
    "material/sheet-without-room",
    "material/part-larger-than-sheets",
    "material/part-larger-than-sheet",
    "material/too-many-copies",
)
def test_a_good_list(good) -> None:
    """No check complains."""
    assert found(good) == []


def test_ids_are_those_of_the_room() -> None:
    """All ids start with the room's name, each once, every field filled; each check is of a rule."""
    assert all(r.id.startswith("material/") and r.title and r.rationale for r in RULES)
    assert len({r.id for r in RULES}) == len(RULES)
    assert {c.id for c in CHECKS} <= {r.id for r in RULES}


@pytest.mark.breaks("material/board-without-sheets")
def test_no_sheets(good) -> None:
    """A board without a sheet on sale: a warning that says what to write."""
    (finding,) = run_checks(CHECKS, BoardList(good.board, (), good.parts))
    assert (finding.check, finding.severity) == ("material/board-without-sheets", Severity.WARNING)
    assert "sheets:" in finding.hint
    assert finding.place is not None


@pytest.mark.breaks("material/sheet-without-room")
def test_margins_that_eat_the_sheet(shop, good) -> None:
    """3 mm at each edge of a strip 6 mm wide; a gap larger than the sheet is no trouble: one part lies alone."""
    board = shop.board((6.0, 300.0), (508.0, 762.0))
    assert ("material/sheet-without-room", Severity.ERROR) in found(BoardList(board, board.sheets, good.parts))
    wide = shop.board((508.0, 762.0), gap=900.0)
    assert found(BoardList(wide, wide.sheets, good.parts)) == []


@pytest.mark.breaks("material/part-larger-than-sheets")
def test_a_part_larger_than_all_sheets_by_a_hundredth(shop) -> None:
    """502.01 inside 508 - 6, in quarter turns: an error that says by how much, and which sheet would do."""
    board = shop.board((297.0, 420.0), (508.0, 508.0))
    part = shop.part("side", (shop.box(502.01, 100.0),), 1, turning="quarter")
    (finding,) = run_checks(CHECKS, BoardList(board, board.sheets, (part,)))
    assert (finding.check, finding.severity) == ("material/part-larger-than-sheets", Severity.ERROR)
    assert finding.value == pytest.approx(0.01)
    assert "0.01 mm" in finding.message
    assert "508 x 508 mm" in finding.message
    assert "a sheet of 508.0 mm (20.00 in)" in finding.hint
    assert "write “split: {at: 251 mm, from: left, plate: 60 mm}” on the part" in finding.hint
    assert finding.place == shop.place
    exact = shop.part("side", (shop.box(502.0, 100.0),), 1, turning="quarter")
    assert found(BoardList(board, board.sheets[1:], (exact,))) == []


def test_what_to_write_where_one_seam_does_not_do(shop) -> None:
    """Over three sheets long: a list of seams. A piece that is still too long: one more seam on the whole part."""
    board = shop.board((508.0, 508.0))
    part = shop.part("side", (shop.box(1600.0, 100.0),), 1)
    (finding,) = run_checks(CHECKS, BoardList(board, board.sheets, (part,)))
    assert "split: [{at: 400 mm" in finding.hint
    piece = shop.part("side_1", (shop.box(900.0, 100.0),), 1)
    (finding,) = run_checks(CHECKS, BoardList(board, board.sheets, (replace(piece, whole="side"),)))
    assert "give “split” of the part side one more seam" in finding.hint


@pytest.mark.breaks("material/part-larger-than-sheet")
def test_a_part_larger_than_one_sheet(shop) -> None:
    """480 long: not on A3, but on 508 × 762; a warning for A3 only, that names the other."""
    board = shop.board((297.0, 420.0), (508.0, 762.0))
    part = shop.part("side", (shop.box(480.0, 100.0),), 1)
    (finding,) = run_checks(CHECKS, BoardList(board, board.sheets, (part,)))
    assert (finding.check, finding.severity) == ("material/part-larger-than-sheet", Severity.WARNING)
    assert "297 x 420 mm" in finding.message
    assert "508 x 762 mm" in finding.hint


@pytest.mark.breaks("material/too-many-copies")
def test_too_many_copies(shop, good) -> None:
    """A hundred thousand copies are a slip of the pen; twenty thousand are laid out."""
    many = shop.part("brick", (shop.box(9.0, 3.0),), 100_000)
    (finding,) = run_checks(CHECKS, BoardList(good.board, good.sheets, (many,)))
    assert (finding.check, finding.severity) == ("material/too-many-copies", Severity.ERROR)
    assert "100,000" in finding.message
    enough = shop.part("brick", (shop.box(9.0, 3.0),), 20_000)
    assert found(BoardList(good.board, good.sheets, (enough,))) == []
