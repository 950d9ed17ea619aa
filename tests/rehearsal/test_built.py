"""What is put up of a read pack: which faces of a board may look either way is said in words."""

import pytest
import shapely

from tests.rehearsal.built import built_of
from tests.rehearsal.notes import Note
from tests.rehearsal.pack import ReadPack
from tests.rehearsal.parts import ReadPart
from tests.rehearsal.sentences import Sentences

UP = Note("top", "top", 30, 30, (0.0, 1.0))
OF_WALL = (UP, Note("match", "a", 4, 20), Note("match", "b", 96, 20))
OF_SIDE = (UP, Note("match", "b", 4, 20), Note("match", "a", 56, 20))


@pytest.mark.parametrize("either", [frozenset(), frozenset("B")])
def test_either_face_of_a_board_looks_out_where_words_allow_it(either: frozenset[str]) -> None:
    """A ring of two walls and two sides."""
    walls = ReadPart("A", shapely.box(0, 0, 100, 40), (1,), 2, thickness=5.0, notes=OF_WALL)
    sides = ReadPart("B", shapely.box(0, 0, 60, 40), (1,), 2, thickness=5.0, notes=OF_SIDE)
    (stood,) = built_of(ReadPack((), (walls, sides), 0.0, (), said=Sentences(either=either))).assemblies
    assert len(stood) == 4
    assert {one.board.letter for one in stood if one.either} == either
