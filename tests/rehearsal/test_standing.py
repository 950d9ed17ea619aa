"""Boards stand by edges, glue strips and mitres as their templates say."""

from dataclasses import replace

import numpy as np
import pytest
import shapely

from tests.rehearsal.joins import Solid, shared, shared_board
from tests.rehearsal.notes import Note
from tests.rehearsal.parts import ReadPart
from tests.rehearsal.roofs import with_roofs
from tests.rehearsal.standing import Stood, boards_of, stand
from tests.rehearsal.thin_lines import Thin


def part(letter: str, area: shapely.Polygon, *notes: Note, count: int = 1, thin: tuple[Thin, ...] = ()) -> ReadPart:
    """Return a part of 5 mm board as if it had been read."""
    return ReadPart(letter, area, (1,), count, thickness=5.0, notes=notes, thin=thin)


def normals(stood: tuple[Stood, ...]) -> list[list[float]]:
    """Return where the outside faces look, in the frame of the first board."""
    return [(one.matrix[:3, 2].round(6) + 0.0).tolist() for one in stood]


def test_a_ring_of_mitred_walls_closes() -> None:
    """Six walls of one part, bevelled by 30 degrees at both sides: a hexagon over their outsides."""
    wall = part("A", shapely.box(0, 0, 40, 100), Note("bevel", "30", 3, 50), Note("bevel", "30", 37, 50), count=6)
    (stood,), left = stand(boards_of((wall,), 0.0))
    assert (len(stood), left) == (6, ())
    middles = np.array([(one.matrix @ (20.0, 50.0, 0.0, 1.0))[:3] for one in stood])
    centre = middles.mean(axis=0)
    assert np.allclose(np.hypot(*(middles - centre)[:, [0, 2]].T), 20.0 / np.tan(np.radians(30.0)))


def test_a_wall_stands_between_the_glue_lines_of_its_letter() -> None:
    """A wall of 80 mm on the inside of a deck, its outside over the line that is nearer to the rim, 20 mm from it."""
    lines = tuple(Thin("glue", np.array(((x, 1.5), (x, 78.5)))) for x in (20.0, 25.0))
    deck = part("A", shapely.box(0, 0, 200, 80), Note("match", "d", 22.5, 40), thin=lines)
    wall = part("B", shapely.box(0, 0, 80, 50), Note("match", "d", 40, 45))
    (stood,), _ = stand(boards_of((deck, wall), 0.0))
    root, other = stood if stood[0].board.letter == "A" else stood[::-1]
    corners = (
        np.linalg.inv(root.matrix) @ other.matrix @ np.array([(x, y, 0.0, 1.0) for x in (0, 80) for y in (0, 50)]).T
    )
    assert np.allclose(corners[0], 20.0)
    assert np.allclose((corners[2].min(), corners[2].max()), (-55.0, -5.0))


def test_of_two_plain_edges_that_board_runs_through_with_which_all_close() -> None:
    """Two long walls of 100 mm over the ends of two short ones of 60 mm, and a deck of 100 × 70 mm that lies on all."""
    top = Note("top", "top", 30, 30, (0.0, 1.0))
    long = part("A", shapely.box(0, 0, 100, 40), Note("match", "a", 4, 20), Note("match", "b", 96, 20), top, count=2)
    short = part("B", shapely.box(0, 0, 60, 40), Note("match", "b", 4, 20), Note("match", "a", 56, 20), top, count=2)
    (stood,), left = stand(boards_of((long, short), 0.0))
    assert (sorted(one.board.letter for one in stood), left) == (["A", "A", "B", "B"], ())
    assert sorted(normals(stood)) == sorted([[0, 0, 1], [0, 0, -1], [1, 0, 0], [-1, 0, 0]])


def test_boards_in_one_place_are_found() -> None:
    box = shapely.box(0, 0, 40, 40)
    beside = np.eye(4)
    beside[2, 3] = 5.0
    assert shared_board((np.eye(4), box, 5.0), (np.eye(4), box, 5.0)) == pytest.approx(1.0)
    assert shared_board((np.eye(4), box, 5.0), (beside, box, 5.0)) == 0.0


def test_tops_that_disagree_join_nothing() -> None:
    up, down = Note("top", "top", 30, 30, (0.0, 1.0)), Note("top", "top", 30, 30, (0.0, -1.0))
    one = part("A", shapely.box(0, 0, 60, 40), Note("match", "a", 56, 20), up)
    good = part("B", shapely.box(0, 0, 50, 40), Note("match", "a", 4, 20), up)
    bad = part("B", shapely.box(0, 0, 50, 40), Note("match", "a", 4, 20), down)
    assert [len(stood) for stood in stand(boards_of((one, good), 0.0))[0]] == [2]
    assert stand(boards_of((one, bad), 0.0))[0] == ()


def test_a_letter_that_nothing_meets_is_said() -> None:
    """Two walls meet by one letter; a second letter of one of them stands alone."""
    one = part("A", shapely.box(0, 0, 60, 40), Note("match", "a", 56, 20), Note("match", "z", 4, 20))
    other = part("B", shapely.box(0, 0, 50, 40), Note("match", "a", 4, 20))
    assert stand(boards_of((one, other), 0.0))[1] == ("part A: nothing meets its letter z",)


def test_a_roof_lies_on_gables_as_pointed_as_it_is() -> None:
    """Two gables of 90 degrees, 100 mm apart over their outsides, under slopes of 60 × 120 mm that are bevelled by 45 degrees: the
    undersides of both pass through the tops of the gables, 10 mm over each."""
    gable = shapely.Polygon(((0, 0), (80, 0), (80, 50), (40, 90), (0, 50)))
    top = Note("top", "top", 30, 30, (0.0, 1.0))
    gables = part("A", gable, Note("match", "a", 76, 20), Note("match", "b", 4, 20), top, count=2)
    walls = part("B", shapely.box(0, 0, 90, 50), Note("match", "b", 86, 20), Note("match", "a", 4, 20), top, count=2)
    slope = part("C", shapely.box(0, 0, 120, 60), Note("bevel", "45", 60, 55), count=2)
    apart, _ = stand(boards_of((gables, walls, slope), 0.0))
    assert sorted(map(len, apart)) == [2, 4]
    (house,) = with_roofs(apart)
    tops = [(one.matrix @ (40.0, 90.0, 0.0, 1.0))[:3] for one in house if one.board.letter == "A"]
    for one in (one for one in house if one.board.letter == "C"):
        under = np.array([(np.linalg.inv(one.matrix) @ (*at, 1.0))[:3] for at in tops])
        assert np.allclose(under[:, 2], -5.0)
        assert np.allclose(sorted(under[:, 0]), (10.0, 110.0))


def test_boards_that_close_to_a_sharp_mitre_share_nothing() -> None:
    """A spire of three facets, bevelled by 55 degrees at both sides and by 19 at the feet, which meet nothing."""
    notes = (Note("bevel", "54.97", 42, 48), Note("bevel", "54.97", 80, 48), Note("bevel", "19", 61, 5))
    facet = part(
        "A", shapely.Polygon(((0, 0), (122, 0), (61, 108))), *notes, Note("top", "top", 61, 60, (0.0, 1.0)), count=3
    )
    (stood,), left = stand(boards_of((facet,), 0.0))
    assert (len(stood), left) == (3, ())
    tips = np.array([(one.matrix @ (61.0, 108.0, 0.0, 1.0))[:3] for one in stood])
    assert np.abs(tips - tips[0]).max() < 0.2
    solids = [Solid(one.matrix, one.board.thickness, one.board.at) for one in stood]
    assert max(shared(one, other) for one in solids for other in solids if one is not other) == 0.0
    assert shared(solids[0], replace(solids[0])) > 0.9


def test_a_bevel_is_that_of_the_edge_beside_which_its_dotted_line_runs() -> None:
    """The words stand nearer to the upper edge of a low wall, whose ends are bevelled by 26 degrees: without the lines it takes one."""
    notes = (Note("bevel", "26", 6, 26), Note("bevel", "26", 84, 26))
    dots = tuple(Thin("dots", np.array([(x, y) for y in range(1, 30)], dtype=float)) for x in (2.44, 87.56))
    for thin, meant in ((dots, {(0, 15), (90, 15)}), ((), {(45, 30), (90, 15)})):
        (board,) = boards_of((part("A", shapely.box(0, 0, 90, 30), *notes, thin=thin),), 0.0)
        bevelled = [site for site in board.sites if site.bevel is not None]
        assert {tuple(site.middle.round().astype(int)) for site in bevelled} == meant
        assert all(site.dotted == bool(thin) for site in bevelled)
