"""All engines behind one function: what a careful layout reaches beside a grid of bounding boxes."""

from dataclasses import replace

import pytest

from publisher.material import engines
from publisher.material.ease import ease, offcut_area
from publisher.material.engines import EFFORTS, Desk, solve
from publisher.material.fitting import grid_count
from publisher.material.problem import MOST_ON_SHEETS, Problem, alone, frames
from tests.searches.profile import PROFILE


def alone_count(shop, rings, sheet, *, gap=1.0, margin=0.0, angles=(), effort="quick", grain="none"):
    """Return the copies of one part alone, and the grid count."""
    board = shop.board(sheet, gap=gap, margin=margin, grain=grain)
    piece = shop.piece(rings, angles=angles)
    problem = alone(piece, board, board.sheets[0])
    packed = solve(problem, Desk(EFFORTS[effort]))
    room = problem.free()
    return sum(map(len, packed.sheets)), grid_count(piece, room.width, room.height, gap, problem.frames)


def sheets_needed(shop, rings, sheet, count):
    """Return the sheets of a list of one part."""
    board = shop.board(sheet)
    problem = Problem((shop.piece(rings, count),), board, board.sheets[0], frames("none"), False)
    return len(solve(problem, Desk(EFFORTS["quick"])).sheets)


def test_eight_a_sheet_by_care_against_six(shop) -> None:
    """Common practice, no source: careful layout of a stair layer gives 8 a sheet where a careless one gave 6, and 22 layers
    (24 make a full turn of 15° each) then need 3 sheets, not 4. Such a layer is a core of radius 55 with a step of 30° that
    reaches 155, on board of 16 × 20 in."""
    layer, sheet = shop.layer(55.0, 155.0, 30.0), (406.4, 508.0)
    careful, grid = alone_count(shop, layer, sheet, margin=3.0)
    assert grid == 6
    assert careful >= 8
    assert sheets_needed(shop, layer, sheet, 22) == 3
    assert -(-22 // grid) == 4


def test_the_reference_layer(shop) -> None:
    """A disc of radius 55 joined with a 30° step to 105, gap 1, on 508 × 762: a grid of boxes gives 18, the best known
    layouts 27 at any turn and 25 in quarter turns (engines compared in 2026). Reached here at the quickest effort: 24 and 24."""
    layer = shop.layer(55.0, 105.0, 30.0)
    any_turn, grid = alone_count(shop, layer, (508.0, 762.0))
    quarters, _ = alone_count(shop, layer, (508.0, 762.0), angles=(0.0, 90.0, 180.0, 270.0))
    assert grid == 18
    assert 24 <= any_turn <= 33  # 33 by area: more than that means that the judge is blind
    assert 24 <= quarters <= 33


@pytest.mark.search
@pytest.mark.skipif(not PROFILE.large, reason="the improver searches for up to 15 s: python -m tests.searches by_care")
def test_the_reference_layer_by_care(shop) -> None:
    """27 at any turn by our own lattices alone; 25 in quarter turns by the improver, whose time is made generous here: its
    answer is the first that is short enough, so a slow machine comes to the same."""
    layer = shop.layer(55.0, 105.0, 30.0)
    board = shop.board((508.0, 762.0), margin=0.0)
    careful = EFFORTS["careful"]
    own = solve(alone(shop.piece(layer), board, board.sheets[0]), Desk(replace(careful, seeds=())))
    assert 27 <= len(own.sheets[0]) <= 33
    asked = solve(
        alone(shop.piece(layer, angles=(0.0, 90.0, 180.0, 270.0)), board, board.sheets[0]),
        Desk(replace(careful, seconds=15)),
    )
    assert 25 <= len(asked.sheets[0]) <= 33


def test_rectangles_exactly(shop) -> None:
    """12 of 50 × 100 on 200 × 300 without gap, by careful layout and by grid."""
    assert alone_count(shop, (shop.box(50.0, 100.0),), (200.0, 300.0), gap=0.0) == (12, 12)


def test_a_part_that_fits_only_askew(shop) -> None:
    """A bar of 480 × 5 on A3: one askew at least, none in a grid."""
    careful, grid = alone_count(shop, (shop.box(480.0, 5.0),), (297.0, 420.0))
    assert careful >= 1
    assert grid == 0


def test_grain_is_kept(shop) -> None:
    """A bar of 200 × 20 on a sheet 100 × 300: across the grain's direction there is no place for it."""
    bar = (shop.box(200.0, 20.0),)
    assert alone_count(shop, bar, (100.0, 300.0), grain="along", angles=(0.0, 180.0))[0] == 0
    assert alone_count(shop, bar, (100.0, 300.0), grain="across", angles=(0.0, 180.0))[0] == 4
    assert alone_count(shop, bar, (100.0, 300.0), grain="none", angles=(0.0,))[0] == 4


def test_more_effort_never_gives_less(shop) -> None:
    """A careful search keeps at least what a quick one finds."""
    layer = shop.layer(30.0, 92.0, 40.0)
    quick, _ = alone_count(shop, layer, (508.0, 762.0), margin=3.0)
    careful, _ = alone_count(shop, layer, (508.0, 762.0), margin=3.0, effort="careful")
    assert careful >= quick


def test_a_mixed_list(shop) -> None:
    """34 reference layers, 14 rectangles 60 × 200, 9 rings 50/35 (81.7 % of two sheets): three sheets of 508 × 762."""
    board = shop.board((508.0, 762.0), margin=0.0)
    pieces = (
        shop.piece(shop.layer(55.0, 105.0, 30.0), 34, name="layer"),
        shop.piece((shop.box(60.0, 200.0),), 14, name="bar"),
        shop.piece(shop.disc(50.0, 35.0), 9, name="ring"),
    )
    packed = solve(Problem(pieces, board, board.sheets[0], frames("none"), False), Desk(EFFORTS["quick"]))
    assert len(packed.sheets) <= 3
    assert sum(map(len, packed.sheets)) == 57


def test_thousands_of_copies_are_laid_in_rows(shop) -> None:
    """5 000 tiles of 20 × 20 and 3 of 100 × 100 in reasonable time: whole sheets of rows first."""
    board = shop.board((508.0, 762.0))
    pieces = (
        shop.piece((shop.box(20.0, 20.0),), 5000, name="tile"),
        shop.piece((shop.box(100.0, 100.0),), 3, name="slab"),
    )
    packed = solve(Problem(pieces, board, board.sheets[0], frames("none"), False), Desk(EFFORTS["quick"]))
    assert sum(map(len, packed.sheets)) == 5003
    # 23 × 36 tiles a sheet: 502 = 23·20 + 22·1 + 20, 756 = 36·20 + 36·1 (one gap to spare)
    assert len(packed.sheets) <= 5000 // (23 * 36) + 2


def test_a_wrong_engine_is_passed_over(shop, monkeypatch) -> None:
    """An engine that lays copies on each other is caught before its layout is used: the next one's is, or each copy has a sheet."""
    board = shop.board((100.0, 100.0))
    real = engines.best_packing

    def heaped(*args: object) -> object:
        packed = real(*args)  # type: ignore[arg-type]
        pose = packed.sheets[0][0].pose
        return replace(packed, sheets=tuple(tuple(replace(i, pose=pose) for i in s) for s in packed.sheets))

    monkeypatch.setattr(engines, "best_packing", heaped)
    monkeypatch.setattr(engines, "rows_first", lambda *_: None)
    for rings, sheets in (((shop.box(20.0, 20.0),), 1), (shop.disc(10.0), 3)):
        problem = Problem((shop.piece(rings, 3),), board, board.sheets[0], (0.0,), False)
        packed = solve(problem, Desk(EFFORTS["quick"]))
        assert problem.flaws(packed.sheets) == ()
        assert len(packed.sheets) == sheets


@pytest.mark.parametrize("count", [None, 5])
def test_what_fits_only_askew_is_laid_askew(shop, count) -> None:
    """A strip of 780 × 20 on 508 × 762 (its diagonal is 915.8), one of 450 × 20 on A3, and one so narrow that more go
    on than are tried one by one; alone and in a list."""
    for size, sheet in (
        ((780.0, 20.0), (508.0, 762.0)),
        ((20.0, 450.0), (297.0, 420.0)),
        ((307.98, 3.0), (300.0, 200.0)),
    ):
        board = shop.board(sheet)
        piece = shop.piece((shop.box(*size),), count or 1)
        one = alone(piece, board, board.sheets[0])
        problem = one if count is None else Problem((piece,), board, board.sheets[0], frames("none"), False)
        packed = solve(problem, Desk(EFFORTS["quick"]))
        assert problem.flaws(packed.sheets) == ()
        assert len(packed.sheets[0]) >= 2


@pytest.mark.parametrize(
    ("side", "copies"),
    [(84.66, 54), (84.666, 54), (508.0 / 6, 54), (84.6667, 40), (84.667, 40), (84.67, 40)],
)
def test_no_tolerance_adds_a_copy(shop, side, copies) -> None:
    """Squares on 20 × 30 in without gap: 508 / 6 = 84.666… goes six times; a hair more goes five times, by eight up."""
    assert alone_count(shop, (shop.box(side, side),), (508.0, 762.0), gap=0.0)[0] == copies


def test_very_small_parts_are_laid_in_rows_at_once(shop) -> None:
    """Discs of radius 1 mm: rows of as many as anyone would cut, judged once for each pair that lies alike."""
    copies, grid = alone_count(shop, shop.disc(1.0), (508.0, 762.0), margin=3.0)
    assert grid > 40_000
    assert copies == MOST_ON_SHEETS


def test_density_on_request(shop) -> None:
    """Of layouts with as many sheets the easier is taken, or the one that leaves the larger offcut; they are stored apart."""
    board = shop.board((300.0, 200.0), margin=0.0)
    pieces = tuple(
        shop.piece((shop.box(*size),), count, name=f"p{size[0]}")
        for size, count in (((70, 45), 5), ((40, 30), 6), ((95, 20), 3))
    )
    found = {}
    for prefer in ("ease", "density"):
        problem = Problem(pieces, replace(board, prefer=prefer), board.sheets[0], frames("none"), False)
        packed = solve(problem, Desk(EFFORTS["quick"]))
        found[prefer] = (problem.key(), ease(pieces, packed.sheets, offcut_area(problem, packed.sheets)))
    assert found["ease"][0] != found["density"][0]
    assert found["ease"][1].order <= found["density"][1].order
    assert found["density"][1].offcut >= found["ease"][1].offcut
