"""What steps say in words stands boards that no mark of a template places, and lays on lids; what faces show seats what lies there."""

import numpy as np
import pytest
import shapely

from tests.rehearsal.lids import with_lids
from tests.rehearsal.measured import measured_parts
from tests.rehearsal.notes import Note
from tests.rehearsal.on_faces import with_seated
from tests.rehearsal.pages import Line, ReadPage
from tests.rehearsal.parts import ReadPart
from tests.rehearsal.sentences import Ends, Levels, Reaches, Turned, sentences_of
from tests.rehearsal.standing import Stood, boards_of, stand
from tests.rehearsal.thin_lines import Thin

TOP = Note("top", "top", 30, 30, (0.0, 1.0))


def part(letter: str, area: shapely.Polygon, *notes: Note, count: int = 1, thin: tuple[Thin, ...] = ()) -> ReadPart:
    """Return a part of 5 mm board as if it had been read."""
    return ReadPart(letter, area, (1,), count, thickness=5.0, notes=notes, thin=thin)


def lines(*texts: str, title: str = "Steps 8 to 10") -> ReadPage:
    """Return a page of these lines, one under another."""
    head = Line(title, 11, 270, 60.0, 4.6, bold=True)
    return ReadPage(9, (head, *(Line(text, 24, 200 - 4 * n, 60.0, 2.7, bold=False) for n, text in enumerate(texts))))


def test_sentences_of_steps_are_read_over_the_ends_of_lines() -> None:
    page = lines(
        "B and C end at the inside face",
        "of A at a and b.",
        "One D ends at the inside face of the next.",
        "A and the next A lie in one plane, edge to edge.",
        "E stands out 5/16 in (8 mm) over A, measured along its underside.",
        "E ends level with the outside of B and C.",
        "F ends 0.12 in (3 mm) inside the outside of A.",
    )
    said = sentences_of((page,))
    marks = frozenset("ab")
    assert said.ends[:2] == (Ends("B", "A", marks), Ends("C", "A", marks))
    assert set(said.ends[2:]) == {Ends("D", "D"), Ends("A", "A", in_line=True)}
    assert set(said.reaches) == {
        Reaches("E", "A", 8.0),
        Reaches("E", "B", 0.0),
        Reaches("E", "C", 0.0),
        Reaches("F", "A", -3.0),
    }
    assert sentences_of((lines("B ends at the inside face of A.", title="Buy and cut"),)).ends == ()


def test_sentences_of_what_is_level_turned_and_past_both_ends_are_read() -> None:
    said = sentences_of(
        (
            lines(
                "A, B and C stand level",
                "at the foot. D and E are level at the top at a.",
                "Turn B so that its “a” lies over the “a” of A.",
                "F stands out 0.13 in (3.4 mm) over both ends of A and B.",
            ),
        )
    )
    assert said.levels == (Levels(frozenset("ABC"), "foot"), Levels(frozenset("DE"), "top", frozenset("a")))
    assert said.turned == (Turned("B", "A", "a"),)
    assert said.reaches == (Reaches("F", "A", 3.4, True), Reaches("F", "B", 3.4, True))


def test_parts_of_which_either_face_may_look_out_are_read() -> None:
    page = lines("The outside face of C looks outwards. Either face of A, B", "and D may be its outside.")
    assert sentences_of((page,)).either == frozenset("ABD")
    assert sentences_of((lines("The outside face of C looks outwards."),)).either == frozenset()


@pytest.mark.parametrize(("end", "low"), [("foot", 0.0), ("top", 10.0)])
def test_edges_of_unequal_length_begin_where_words_say(end: str, low: float) -> None:
    """A wall of 30 mm at each end of one of 40 mm: it begins at its foot, or ends at its top."""
    high = part("A", shapely.box(0, 0, 100, 40), TOP)
    low_one = part("B", shapely.box(0, 0, 60, 30), TOP, count=2)
    levels = (Levels(frozenset("AB"), end),)
    (stood,), left = stand(boards_of((high, low_one), 0.0), (Ends("B", "A"),), levels)
    assert (len(stood), left) == (3, ())
    root = next(one for one in stood if one.board.letter == "A")
    for one in (one for one in stood if one.board.letter == "B"):
        corners = np.linalg.inv(root.matrix) @ one.matrix @ np.array([(0, y, 0, 1.0) for y in (0, 30)]).T
        assert np.allclose(sorted(corners[1]), (low, low + 30.0))


@pytest.mark.parametrize("through", ["A", "B"])
def test_words_say_which_board_runs_through_where_no_edge_bears_a_letter(through: str) -> None:
    """A ring of two boards of 100 mm and two of 60 mm, 40 mm high: over its outsides the one is 100 × 70 mm, the other 110 × 60 mm."""
    long, short = (
        part("A", shapely.box(0, 0, 100, 40), TOP, count=2),
        part("B", shapely.box(0, 0, 60, 40), TOP, count=2),
    )
    other = "B" if through == "A" else "A"
    (stood,), left = stand(boards_of((long, short), 0.0), (Ends(other, through),))
    assert (len(stood), left) == (4, ())
    low, high = extent(stood)
    assert np.allclose(
        sorted(high - low), sorted((40.0, *((100.0, 70.0) if through == "A" else (110.0, 60.0)))), atol=0.01
    )


def extent(stood: tuple[Stood, ...]) -> tuple[np.ndarray, np.ndarray]:
    """Return the corners of the box round boards."""
    points = []
    for one in stood:
        left, bottom, right, top = one.board.area.bounds
        corners = [(x, y, z, 1.0) for x in (left, right) for y in (bottom, top) for z in (0.0, -one.board.thickness)]
        points.append((one.matrix @ np.array(corners).T)[:3])
    every = np.hstack(points)
    return every.min(axis=1), every.max(axis=1)


def test_a_lid_lies_as_far_over_each_wall_as_is_said_and_nowhere_where_that_cannot_be() -> None:
    walls = (part("A", shapely.box(0, 0, 100, 40), TOP, count=2), part("B", shapely.box(0, 0, 60, 40), TOP, count=2))
    lid = part("C", shapely.box(0, 0, 106, 74))
    boards = boards_of((*walls, lid), 0.0)
    stood, _ = stand([board for board in boards if board.letter != "C"], (Ends("B", "A"),))
    (whole,) = with_lids(stood, boards, (Reaches("C", "A", 2.0), Reaches("C", "B", 3.0)))
    assert [one.board.letter for one in whole].count("C") == 1
    low, high = extent(whole)
    assert np.allclose(sorted(high - low), (45.0, 74.0, 106.0), atol=0.01)
    (none,) = with_lids(stood, boards, (Reaches("C", "A", 9.0), Reaches("C", "B", 3.0)))
    assert [one.board.letter for one in none].count("C") == 0


def test_a_kerb_lies_in_its_seat_and_a_post_stands_in_its_opening() -> None:
    """On a deck of 100 × 60 mm: a strip of 8 mm along its lower rim, and an opening of 15 × 5.3 mm."""
    opening = shapely.box(40, 30, 55, 35.3)
    thin = (Thin("line", np.array([(x, 8.0) for x in np.linspace(1, 99, 9)])),)
    notes = (Note("seat", "E", 20, 4), Note("seat", "F", 47, 40))
    deck = part("A", shapely.box(0, 0, 100, 60).difference(opening), *notes, thin=thin)
    kerb, post = (
        part("E", shapely.box(0, 0, 100, 8)),
        part("F", shapely.box(0, 0, 15, 50), Note("top", "top", 7, 44, (0.0, 1.0))),
    )
    host, *rest = boards_of((deck, kerb, post), 0.0)
    (whole,) = with_seated(((Stood(host, np.eye(4)),),), rest, (deck, kerb, post))
    by = {one.board.letter: one for one in whole}
    low, high = extent((by["E"],))
    assert np.allclose((*low, *high), (0, 0, 0, 100, 8, 5), atol=0.1)
    low, high = extent((by["F"],))
    assert np.allclose((*low, *high), (40, 30.15, -5, 55, 35.15, 45), atol=0.1)
    (bare,) = with_seated(((Stood(host, np.eye(4)),),), boards_of((part("E", shapely.box(0, 0, 60, 8)),), 0.0), (deck,))
    assert len(bare) == 1


def test_what_has_no_template_is_measured_out() -> None:
    page = lines(
        "E Kerb, cut 2 + 1 spare", "280.0 × 8.0 mm (11.02 × 0.31 in),", "foam 0.20 in (5.00 mm).", title="Buy and cut"
    )
    (kerb,) = measured_parts((page,))
    assert (kerb.letter, kerb.count, kerb.spare, kerb.thickness, kerb.area.bounds) == (
        "E",
        2,
        1,
        5.0,
        (0.0, 0.0, 280.0, 8.0),
    )


@pytest.mark.parametrize("turn", [0.0, 65.0, 200.0])
def test_a_post_in_a_round_hole_has_its_outside_in_line_with_the_lines_beside_it(turn: float) -> None:
    """A post of 20 × 50 mm, its outside 2.5 mm from the middle of a hole of 22 mm."""
    c, s = np.cos(np.radians(turn)), np.sin(np.radians(turn))
    way, out = np.array((c, s)), np.array((s, -c))
    ticks = tuple(Thin("tick", 50.0 + 2.5 * out + np.array((at, at + 4.0))[:, None] * way) for at in (12.0, -16.0))
    deck = part("A", shapely.box(0, 0, 100, 100) - shapely.Point(50, 50).buffer(11, 64), SEAT_OF_B, thin=ticks)
    post = part("B", shapely.box(0, 0, 20, 50), Note("top", "top", 10, 40, (0.0, 1.0)))
    wall = part("C", shapely.box(0, 0, 100, 40), TOP)
    boards = boards_of((deck, post, wall), 0.0)
    upright = np.array(((1.0, 0, 0, 0), (0, 0, -1.0, 5.0), (0, 1.0, 0, -45.0), (0, 0, 0, 1.0)))
    stood = (Stood(boards[0], np.eye(4)), Stood(boards[2], upright))
    ((*_, put),) = with_seated((stood,), boards, (deck, post, wall))
    assert np.allclose(put.matrix[:3, 2], (*out, 0.0))
    assert np.allclose((put.matrix @ (10.0, 0.0, -2.5, 1.0))[:3], (50.0, 50.0, -5.0))
    assert np.allclose(put.matrix[:3, 1], (0.0, 0.0, 1.0))


SEAT_OF_B = Note("seat", "B", 50.0, 66.0)


def test_a_lid_leans_on_square_edges_as_far_over_both_ends_as_words_say() -> None:
    """Walls of 40 and 90 mm, 65 mm between their outer and inner rims; the roof ends level with the high one, 5 mm past all ends."""
    low, high = part("A", shapely.box(0, 0, 120, 40), TOP), part("B", shapely.box(0, 0, 120, 90), TOP)
    roof = part("C", shapely.box(0, 0, 130, 110), TOP)
    boards = boards_of((low, high, roof), 0.0)
    back = np.array(((-1.0, 0, 0, 120.0), (0, 1.0, 0, 0), (0, 0, -1.0, -70.0), (0, 0, 0, 1.0)))
    walls = (Stood(boards[0], np.eye(4)), Stood(boards[1], back))
    far = 110.0 - np.hypot(50.0, 65.0) * 70.0 / 65.0
    said = [Reaches("C", "A", far), Reaches("C", "B", 0.0), Reaches("C", "A", 5.0, True), Reaches("C", "B", 5.0, True)]
    ((*_, put),) = with_lids((walls,), boards, said)
    assert put.board.letter == "C"
    under = put.matrix @ np.array([(x, y, -5.0, 1.0) for x in (0, 130) for y in (0, 110)]).T
    assert (under[0].min(), under[0].max()) == pytest.approx((-5.0, 125.0))
    assert under[2].min() == pytest.approx(-70.0)
    assert under[1].max() == pytest.approx(40.0 + 70.0 * 50.0 / 65.0)
