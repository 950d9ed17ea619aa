"""A letter that meets none where it comes to stand is said, and so is one that stands at nothing."""

from dataclasses import replace

import numpy as np
import pytest
import shapely

from tests.rehearsal.acts import Act, Added
from tests.rehearsal.meeting import strays, unlike_pictures, unmarked, unmet
from tests.rehearsal.notes import Note
from tests.rehearsal.parts import ReadPart
from tests.rehearsal.standing import Board, boards_of, stand
from tests.rehearsal.thin_lines import Thin

UP = Note("top", "top", 30, 30, (0.0, 1.0))
OF_WALL, OF_SIDE = (("a", 4.0), ("b", 96.0)), (("b", 4.0), ("a", 56.0))


def ring(*more: Note) -> tuple[Board, ...]:
    """Return two walls over the ends of two sides, with more letters on the walls."""
    walls, sides = (tuple(Note("match", text, x, 20) for text, x in of) for of in (OF_WALL, OF_SIDE))
    wall = ReadPart("A", shapely.box(0, 0, 100, 40), (1,), 2, thickness=5.0, notes=(UP, *walls, *more))
    side = ReadPart("B", shapely.box(0, 0, 60, 40), (1,), 2, thickness=5.0, notes=(UP, *sides))
    return boards_of((wall, side), 0.0)


def test_letters_meet_their_like() -> None:
    boards = ring()
    assert list(unmet(stand(boards)[0], boards)) == []
    assert list(strays(boards)) == []


@pytest.mark.parametrize("letter", ["a", "z"])
def test_a_letter_that_none_meets_where_it_stands_is_said(letter: str) -> None:
    """Both walls bear it at their tops, over which nothing lies; that another edge has it elsewhere helps nothing."""
    marked = {board.letter: board for board in ring(Note("match", letter, 50, 37))}
    (stood,), _ = stand(ring())
    own = [replace(one, board=marked[one.board.letter]) for one in stood]
    assert set(unmet((own,), tuple(marked.values()))) == {f"part A: no {letter} is where its {letter} comes to stand"}


def test_a_letter_of_what_does_not_stand_is_left_out() -> None:
    boards = ring(Note("match", "z", 50, 37))
    (stood,), _ = stand(ring())
    own = [replace(one, board=next(b for b in boards if b.letter == one.board.letter)) for one in stood]
    bent = ReadPart("C", shapely.box(0, 0, 100, 60), (1,), 1, thickness=5.0, notes=(Note("match", "z", 50, 4),))
    assert list(unmet((own,), (*boards, *boards_of((bent,), 0.0)))) == []


def test_a_letter_whose_strip_is_not_drawn_stands_at_nothing() -> None:
    """In the middle of a deck of 200 × 120 mm."""
    lines = tuple(Thin("glue", np.array(((x, 1.5), (x, 118.5)))) for x in (97.5, 102.5))
    letter = Note("match", "c", 100, 60)
    bare, drawn = (
        ReadPart("D", shapely.box(0, 0, 200, 120), (1,), 1, thickness=5.0, notes=(letter,), thin=thin)
        for thin in ((), lines)
    )
    assert list(strays(boards_of((bare,), 0.0))) == ["part D: its letter c stands at no edge"]
    assert list(strays(boards_of((drawn,), 0.0))) == []


def test_a_bevel_whose_dotted_line_is_not_drawn_is_said() -> None:
    dots = (
        Thin("dots", np.array([(x, 57.11) for x in range(1, 80)], dtype=float)),
    )  # 5 mm · tan 30° under the upper edge
    words = ("Bevel: the face underneath ends at the dotted line.",)
    for thin, said in ((dots, []), ((), ["part C: no dotted line is where its bevel of 30° ends"])):
        notes = (Note("bevel", "30", 40, 54),)
        slope = ReadPart("C", shapely.box(0, 0, 80, 60), (1,), 2, thickness=5.0, notes=notes, thin=thin, words=words)
        assert list(unmarked(boards_of((slope,), 0.0), (slope,))) == said


@pytest.mark.parametrize(
    ("letters", "said"),
    [
        (("a", "a", "b", "b"), []),
        (("a", "b", "b"), ["the letter a stands at one edge alone"]),
        (("c", "c"), ["nothing that it adds bears the letter c"]),
    ],
)
def test_letters_of_a_picture_stand_at_both_edges_and_on_what_is_added(
    letters: tuple[str, ...], said: list[str]
) -> None:
    act = Act(7, "Glue", 2, (Added(1, "A", 0.0, 0.0),), letters=letters)
    assert list(unlike_pictures((act,), ring())) == [f"page 7, “Glue” 2: {one}" for one in said]
