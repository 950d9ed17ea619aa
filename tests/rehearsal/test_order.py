"""Acts that add something to what does not stand yet are said, and numbers that do not rise."""

import shapely

from tests.rehearsal.acts import Act, Added, every_act, misnumbered
from tests.rehearsal.notes import Note
from tests.rehearsal.order import too_early, touching_pairs
from tests.rehearsal.outlines import Outline
from tests.rehearsal.pages import Line, ReadPage
from tests.rehearsal.parts import ReadPart
from tests.rehearsal.standing import Stood, boards_of, stand

UP = Note("top", "top", 30, 30, (0.0, 1.0))


def ring() -> tuple[Stood, ...]:
    """Return two walls over the ends of two sides: walls touch sides, and no wall the other."""
    walls, sides = (
        tuple(Note("match", text, x, 20) for text, x in of)
        for of in ((("a", 4.0), ("b", 96.0)), (("b", 4.0), ("a", 56.0)))
    )
    wall = ReadPart("A", shapely.box(0, 0, 100, 40), (1,), 2, thickness=5.0, notes=(UP, *walls))
    side = ReadPart("B", shapely.box(0, 0, 60, 40), (1,), 2, thickness=5.0, notes=(UP, *sides))
    (stood,), _ = stand(boards_of((wall, side), 0.0))
    return stood


def act(number: int, *added: tuple[int, str], on_thin: bool = False) -> Act:
    """Return an act that adds so many of each part."""
    return Act(1, "Glue", number, tuple(Added(n, letter, 0.0, 0.0) for n, letter in added), on_thin=on_thin)


def test_walls_of_a_ring_touch_its_sides_alone() -> None:
    stood = ring()
    pairs = {tuple(sorted(stood[n].board.letter for n in pair)) for pair in touching_pairs(stood)}
    assert (len(touching_pairs(stood)), pairs) == (4, {("A", "B")})


def test_acts_in_their_order_are_no_fault() -> None:
    acts = (act(1, (1, "A"), (2, "B"), on_thin=True), act(2, (1, "A"), on_thin=True))
    assert list(too_early(acts, (ring(),))) == []


def test_what_is_added_to_nothing_is_said() -> None:
    """The picture shows a wall alone go on something; nothing stands."""
    acts = (act(1, (1, "A"), on_thin=True), act(2, (1, "A"), (2, "B"), on_thin=True))
    assert list(too_early(acts, (ring(),))) == ["page 1, “Glue” 1: what it is added to does not stand yet"]


def test_what_touches_nothing_that_stands_is_said() -> None:
    acts = (act(1, (1, "A")), act(2, (1, "A")), act(3, (2, "B")))
    assert list(too_early(acts, (ring(),))) == ["page 1, “Glue” 2: nothing that it touches stands yet"]


def words(text: str, x: float, y: float, em: float = 4.6) -> Line:
    """Return bold words of a page."""
    return Line(text, x, y, 10.0, em, bold=True)


def steps(numbers: tuple[str, str, str], *drawn: Outline) -> ReadPage:
    """Return a page of one step with three pictures in two rows."""
    at = ((24.0, 150.0), (114.0, 150.2), (24.0, 90.0))
    heads = (words("Step 8", 11, 278), words("Glue", 24, 264))
    labels = (words("1 × A", 40, 140, 2.7), words("1 × B", 130, 140, 2.7))
    return ReadPage(9, (*heads, *labels, *(words(n, *xy) for n, xy in zip(numbers, at, strict=True))), outlines=drawn)


def test_numbers_of_acts_rise_row_by_row() -> None:
    assert list(misnumbered((steps(("1", "2", "3")),))) == []
    assert list(misnumbered((steps(("2", "1", "3")),))) == ["page 9: the acts of “Glue” are numbered 2, 1, 3"]
    assert list(misnumbered((steps(("1", "3", "2")),))) == ["page 9: the acts of “Glue” are numbered 1, 3, 2"]


def test_a_picture_with_something_thin_under_its_only_piece_needs_what_stands() -> None:
    """Within the first picture a contour of 40 mm and under it another one; in the second the thin lines are those of the piece itself."""
    drawn = (
        Outline("thick", 40, 120, 80, 135),
        Outline("thin", 42, 100, 82, 118),
        Outline("thick", 130, 120, 170, 135),
        Outline("thin", 131, 121, 169, 134),
    )
    first, second = every_act((steps(("1", "2", "3"), *drawn),))
    assert (first.needs_standing, second.needs_standing) == (True, False)
    assert (first.counts["A"], second.counts["B"]) == (1, 1)
