"""What a number may mean on a page: sizes of the pieces there, limits, counts; not those of pieces that stand elsewhere."""

from dataclasses import replace
from typing import Any

from publisher.basics import CompassPromise, FigurePromise, OutlinePromise, Pose, PrintPromise, Promises, SizesPromise
from publisher.proof.measuring.figures_said import figures_in
from publisher.proof.measuring.known_figures import cut_out, known_figures


def known(kit: Any, page: int, text: str) -> list[bool]:
    promises = kit.good().promises
    found = known_figures(promises, page, frozenset())
    return [found.knows(said) for said in figures_in(text)]


def test_sizes_and_counts_of_the_pieces_on_a_page(kit: Any) -> None:
    assert known(kit, 2, "cut 14 + 1 spare, 90.0 × 60.0 mm, 5.00 mm") == [True] * 5
    assert known(kit, 2, "cut 13, 91.0 × 61.0 mm, 3.00 mm, 45°") == [False] * 5
    assert known(kit, 3, "90.0 × 60.0 mm of another page’s piece")[1] is False


def test_squares_are_read_off_between_their_limits(kit: Any) -> None:
    promises = kit.good().promises
    limited = replace(promises, figures=(FigurePromise("least scale of a print", 0.995, "share"),))
    found = known_figures(limited, 2, frozenset())
    assert [found.knows(said) for said in figures_in("99.5 mm, 49.8 mm (1.961 in), 99.4 mm")] == [
        True,
        True,
        True,
        False,
    ]


def test_a_smaller_square_is_read_by_the_tenths_of_that_of_100_mm(kit: Any) -> None:
    """99.892 % of 100 mm is read as 99.9 mm, of 30 mm as 29.97 mm; 29.95 and 29.99 mm are no end of it."""
    promises = kit.good().promises
    (calibration, *_) = [line for line in promises.lengths if line.purpose == "calibration" and line.length < 100.0]
    side = calibration.length
    limited = replace(promises, figures=(FigurePromise("least scale of a print", 0.99892, "share"),))
    found = known_figures(limited, 2, frozenset())
    said = (f"{0.999 * side:.2f} mm", f"{0.9975 * side:.2f} mm")
    assert [found.knows(one) for text in said for one in figures_in(text)] == [True, False]


def test_cards_that_are_cut_out_are_pieces_without_strips_and_nested_ones() -> None:
    big, hole = (
        ((0.0, 0.0), (90.0, 0.0), (90.0, 60.0), (0.0, 60.0)),
        ((50.0, 5.0), (50.0, 55.0), (85.0, 55.0), (85.0, 5.0)),
    )
    small = ((0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0))
    outlines = (
        OutlinePromise(1, "wall", "A", 1, Pose(), (big, hole)),
        OutlinePromise(1, "nested", "B", 1, Pose(10.0, 10.0), (small,)),
        OutlinePromise(1, "in an opening", "C", 1, Pose(60.0, 10.0), (small,)),
        OutlinePromise(1, "beside", "D", 1, Pose(100.0, 10.0), (small,)),
    )
    strip = CompassPromise(1, "round", "E", (0.0, 0.0), ((50.0, 0.0),), (50.0,), 1.0, ())
    prints = tuple(PrintPromise(one.part, one.letter, "foam", 5.0, one.rings) for one in outlines)
    round_one = PrintPromise("round", "E", "foam", 5.0, (small,))
    promises = replace(Promises("", "", (), (), outlines, (), (), ()), compasses=(strip,), prints=(*prints, round_one))
    assert cut_out(promises) == 3
    kerb = PrintPromise("kerb", "F", "foam", 5.0, (small,))
    measured = SizesPromise("sizes:kerb", "kerb", "F", 20.0, 20.0)
    assert cut_out(replace(promises, prints=(*promises.prints, kerb), sizes=(measured,))) == 3


def test_what_is_taped_may_be_off_as_its_print_may_be(kit: Any) -> None:
    """Half a per cent of sides of 90 and 60 mm."""
    limited = replace(kit.good().promises, figures=(FigurePromise("least scale of a print", 0.995, "share"),))
    found = known_figures(limited, 2, frozenset())
    assert [found.knows(said) for said in figures_in("0.4 mm, 0.3 mm, 0.7 mm")] == [True, True, False]
