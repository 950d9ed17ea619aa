"""What prints must show of pieces, and the numbers that words may say, come from the pieces and the boards themselves."""

from dataclasses import replace
from types import SimpleNamespace

from publisher.basics import LineKind, Purpose, WordPromise, polyline
from publisher.geometry import Fold, Mark
from publisher.joints.promised_numbers import figures_of, prints_of
from publisher.joints.put_together import put_together


def test_a_piece_is_promised_with_its_words_and_the_sizes_that_it_names(make: SimpleNamespace) -> None:
    at = polyline(((3.0, 4.0),))
    letter = Mark(LineKind.REFERENCE, Purpose.MATCH, at, name="left", text="a")
    place = Mark(LineKind.REFERENCE, Purpose.NAME, at, name="front", text="front edge 2")
    wall = replace(make.wall("wall", 120, 50), marks=(letter, place), folds=(Fold(90.0, 7.5),))
    (piece,) = prints_of((wall,))
    assert piece.words == (WordPromise("a", (3.0, 4.0), "letter"),) and piece.names == ("front edge 2",)
    assert piece.lengths == (7.5,) and piece.angles == (90.0,)
    assert piece.rings == tuple(path.points for path in wall.template.paths) and piece.thickness == wall.thickness


def test_boards_limits_and_the_pencil_are_figures(make: SimpleNamespace) -> None:
    wall = replace(make.wall("wall", 120, 50), trace_allowance=0.4)
    design = make.design()
    joined = put_together(design, (wall,))
    values = {(figure.kind, round(figure.value, 4)) for figure in figures_of(design, (wall,), joined)}
    board = design.boards[0]
    assert ("length", board.thickness) in values and ("length", round(board.thickness + board.spread, 4)) in values
    assert {("length", 0.4), ("length", 0.8), ("share", joined.budget.least), ("share", joined.budget.most)} <= values
    gap = f"gap between pieces on {board.id}"
    for use in ("trace", "paste"):
        names = {figure.name for figure in figures_of(replace(design, use=use), (wall,), joined)}
        assert (gap in names) is (
            use == "paste"
        )  # so far apart at most prints are cut, and no print is cut out to trace


def test_lines_of_a_piece_are_promised_by_what_they_are(make: SimpleNamespace) -> None:
    line, ring = polyline(((1.0, 1.0), (9.0, 1.0))), polyline(((1.0, 1.0), (9.0, 1.0), (9.0, 9.0)), True)
    marks = (
        Mark(LineKind.FOLD, Purpose.BEND, line),
        Mark(LineKind.DRAW, Purpose.CLIMB, line),
        Mark(LineKind.REFERENCE, Purpose.LAP, ring),
        Mark(LineKind.GLUE, Purpose.LAP, ring),
        Mark(LineKind.REFERENCE, Purpose.NAME, polyline(((3.0, 4.0),)), text="here"),
    )
    (piece,) = prints_of((replace(make.wall("wall", 120, 50), marks=marks),))
    assert [one.kind for one in piece.lines] == ["fold", "arrow", "lap", "glue"]
    assert piece.lines[2].points == ring.travelled and piece.strips == ()
