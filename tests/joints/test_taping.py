import pytest

from publisher.joints.taping import tape_over


@pytest.mark.parametrize(
    ("height", "strips"), [(30.0, 1), (40.0, 1), (40.1, 2), (85.0, 2), (85.1, 3)]
)  # strips of 50 mm that lie 5 mm over each other reach 50, 95, 140 mm; the piece and twice 5 mm
def test_tape_runs_along_the_longer_side_in_as_many_strips_as_cover_it(height: float, strips: int) -> None:
    assert tape_over(290.0, height) == tape_over(height, 290.0) == pytest.approx(strips * 300.0)
