"""Lines of a picture that close up in one bit are left out, the heaviest and longest first."""

import shapely

from publisher.joints.act_pictures.lines import CLOSES, opened


def test_a_fine_line_close_beside_a_heavy_one_goes() -> None:
    heavy, far = shapely.LineString([(0, 0), (20, 0)]), shapely.LineString([(0, 3), (20, 3)])
    near = shapely.LineString([(2, 0.5), (18, 0.5)])
    kept = opened({"added_contour": [heavy], "there": [near, far]})
    assert kept["added_contour"] == [heavy] and kept["there"] == [far]


def test_a_line_that_leaves_the_heavy_one_stays() -> None:
    heavy, off = shapely.LineString([(0, 0), (20, 0)]), shapely.LineString([(2, 0.5), (18, 6)])
    assert opened({"added_contour": [heavy], "there": [off]})["there"] == [off]


def test_what_is_kept_leaves_a_quarter_of_a_millimetre_of_white() -> None:
    """Half of both strokes and 0.25 mm, of the finest line beside each kind."""
    widths = {"added_contour": 0.7, "added": 0.35, "there_contour": 0.25, "there": 0.18}
    for weight, clear in CLOSES.items():
        assert clear - widths[weight] / 2 - widths["there"] / 2 >= 0.2
