"""What a number may mean on a page: sizes of the pieces there, limits, counts; not those of pieces that stand elsewhere."""

from dataclasses import replace
from typing import Any

from publisher.basics import FigurePromise
from publisher.proof.measuring.figures_said import figures_in
from publisher.proof.measuring.known_figures import known_figures


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
