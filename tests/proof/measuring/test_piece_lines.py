"""Lines of a piece on its print: those under words, beyond the window or along a cut are not asked for."""

import numpy as np
import pytest

from publisher.basics import Box, OutlinePromise, PieceLine, Pose, PrintPromise
from publisher.proof.measuring.outlines import StrokeSegments
from publisher.proof.measuring.piece_lines import PieceLines, lines_shown
from publisher.proof.reading import TextLine

RING = ((0.0, 0.0), (80.0, 0.0), (80.0, 60.0), (0.0, 60.0))
FOLD, GLUE = ((0.0, 40.0), (80.0, 40.0)), ((0.5, 0.0), (0.5, 60.0))
PIECE = PrintPromise("wall", "A", "foam", 5.0, (RING,), lines=(PieceLine("fold", FOLD), PieceLine("glue", GLUE)))
LABEL = Box(30.0, 30.0, 50.0, 50.0)


def lines(window: Box | None = None, words: tuple[TextLine, ...] = (), labels: tuple[Box, ...] = ()) -> PieceLines:
    return PieceLines(PIECE, OutlinePromise(1, "wall", "A", 1, Pose(), (RING,), window), words, labels)


def strokes(*drawn: tuple[tuple[float, float], tuple[float, float]]) -> StrokeSegments:
    ends = np.array(drawn).reshape(-1, 2, 2)
    return StrokeSegments(ends[:, 0], ends[:, 1], np.zeros(len(ends), dtype=int), np.zeros(len(ends)))


def test_words_labels_windows_and_cuts_take_their_part() -> None:
    assert len(lines().tried(("fold", 0))) == 41 and len(lines().tried(("glue", 0))) == 0  # all of it along the cut
    assert len(lines().tried(("draw", 0))) == 0
    inside = lines(labels=(LABEL,)).tried(("fold", 0))[:, 0]
    assert not ((inside > 28.0) & (inside < 52.0)).any() and len(inside) > 25
    assert lines(window=Box(20.0, 0.0, 60.0, 60.0)).tried(("fold", 0))[:, 0].min() >= 22.0
    under = lines(words=(TextLine("words", 10.0, 39.0, 30.0, 39.0, 2.4),)).tried(("fold", 0))[:, 0]
    assert not ((under > 10.0) & (under < 30.0)).any()


@pytest.mark.parametrize(("drawn", "met"), [((FOLD,), 41), ((), 0), ((((0.0, 40.3), (80.0, 40.3)),), 0)])
def test_points_of_a_line_that_have_a_stroke_are_counted(
    drawn: tuple[tuple[tuple[float, float], tuple[float, float]], ...], met: int
) -> None:
    own = lines()
    outline = OutlinePromise(1, "wall", "A", 1, Pose(), (RING,))
    fold, _ = lines_shown(((outline, own, strokes(*drawn)),))
    assert (fold.kind, fold.tried, fold.met) == ("fold", 41, met)


def test_each_fold_is_counted_by_itself_and_lines_to_draw_together() -> None:
    folds = (FOLD, ((0.0, 20.0), (80.0, 20.0)))
    draws = (((10.0, 5.0), (70.0, 5.0)), ((10.0, 10.0), (70.0, 10.0)))
    own = (*(PieceLine("fold", one) for one in folds), *(PieceLine("draw", one) for one in draws))
    piece = PrintPromise("wall", "A", "foam", 5.0, (RING,), lines=own)
    outline = OutlinePromise(1, "wall", "A", 1, Pose(), (RING,))
    shown = lines_shown(((outline, PieceLines(piece, outline, (), ()), strokes(FOLD)),))
    assert sorted((one.kind, one.tried, one.met) for one in shown) == [
        ("draw", 62, 0),
        ("fold", 41, 0),
        ("fold", 41, 41),
    ]
