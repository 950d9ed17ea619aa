"""What sayings hang on, read from what other rooms promised."""

from dataclasses import replace

import pytest

from publisher.basics import Box, FigurePromise, LengthPromise, PagePromise, PrintPromise, Promises
from publisher.proof.measuring.circumstances import holds

RING = ((0.0, 0.0), (80.0, 0.0), (80.0, 60.0), (0.0, 60.0))
WALL = PrintPromise("wall", "A", "foam", 5.0, (RING,), traced=True)
BOARD = (
    FigurePromise("thickness of foam", 5.0, "length"),
    FigurePromise("thickness of foam in shops", 4.8, "length"),
    FigurePromise("thickness of foam, at most off", 5.2, "length"),
    FigurePromise("thickness of foam that is taken", 4.7, "length"),
)
BESIDE = FigurePromise("pencil beside the card", 0.4, "length")
PROMISES = replace(
    Promises("", "en", (), (), (), (), (), ()), prints=(WALL,), figures=(*BOARD, BESIDE), used=("pins", "craft_knife")
)


@pytest.mark.parametrize("name", ["traced", "not slot", "one board", "taken", "beside card", "uses pins", "not holes"])
def test_what_holds_of_a_file(name: str) -> None:
    assert holds(PROMISES, name)


@pytest.mark.parametrize("name", ["not traced", "slot", "not one board", "steps", "uses filler", "measured", "bevel"])
def test_what_does_not(name: str) -> None:
    assert not holds(PROMISES, name)


def test_a_pencil_on_the_very_edge_of_the_card_is_not_beside_it() -> None:
    assert not holds(replace(PROMISES, figures=(*BOARD, replace(BESIDE, value=0.0))), "beside card")


def test_two_boards_are_not_one() -> None:
    assert not holds(
        replace(PROMISES, figures=(*BOARD, FigurePromise("thickness of card", 1.0, "length"))), "one board"
    )


def test_a_name_that_is_none_is_refused() -> None:
    with pytest.raises(KeyError):
        holds(PROMISES, "fine weather")


@pytest.mark.parametrize(("least", "over"), [(0.995, True), (0.984, True), (0.982, False), (0.96, False)])
def test_readings_from_98_have_a_row_of_their_own_where_the_limit_lies_over_them(least: float, over: bool) -> None:
    scales = (
        FigurePromise("least scale of a print", least, "ratio"),
        FigurePromise("greatest scale of a print", 1.005, "ratio"),
    )
    assert holds(replace(PROMISES, figures=(*BOARD, *scales)), "limit over 98") == over
    assert not holds(PROMISES, "limit over 98")


@pytest.mark.parametrize(
    ("kinds", "more"), [(("cover", "print_check"), False), (("print_check", "templates"), True), ((), True)]
)
def test_pages_beside_the_print_check_print_true(kinds: tuple[str, ...], more: bool) -> None:
    pages = tuple(
        PagePromise(n, 210.0, 297.0, str(n), kind, Box(6.0, 12.0, 204.0, 285.0), True, true_size=kind != "cover")
        for n, kind in enumerate(kinds, 1)
    )
    assert holds(replace(PROMISES, pages=pages), "more true pages") is more


@pytest.mark.parametrize(
    ("share", "side", "square", "fine"),
    [(0.995, 101.6, True, True), (0.99, 101.6, True, False), (0.998, 101.6, True, False), (0.995, 100.0, False, True)],
)
def test_readings_of_a_square_of_4_in_go_by_the_marks_that_tell_what_is_allowed(
    share: float, side: float, square: bool, fine: bool
) -> None:
    scales = (
        FigurePromise("least scale of a print", share, "share"),
        FigurePromise("greatest scale of a print", 2.0 - share, "share"),
    )
    line = LengthPromise(2, (0.0, 0.0), (side, 0.0), side, "dimension", "4 in")
    promises = replace(PROMISES, figures=(*BOARD, *scales), lengths=(line,))
    assert holds(promises, "square of 4 in") == square and holds(promises, "marks of 1/64 in") == fine
