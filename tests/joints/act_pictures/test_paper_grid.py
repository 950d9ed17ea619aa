"""Room on the paper of a picture."""

import numpy as np
import shapely

from publisher.basics import Box
from publisher.joints.act_pictures.paper_grid import grid_over


def test_lines_and_areas_take_room_and_the_rest_is_free() -> None:
    ground = grid_over(Box(0.0, 0.0, 30.0, 30.0))
    ground.mark(np.array([shapely.LineString([(0.0, 15.0), (30.0, 15.0)])]))
    ground.mark_area(shapely.box(20.0, 20.0, 28.0, 28.0))
    at = np.array([(15.0, 15.5), (15.0, 8.0), (24.0, 24.0), (1.0, 8.0)])
    on_line, free, on_area, over_edge = (ground.crossed(at, 4.0, 4.0) > 0).tolist()
    assert (on_line, free, on_area, over_edge) == (True, False, True, True)


def test_shares_of_a_box_on_an_area() -> None:
    ground = grid_over(Box(0.0, 0.0, 30.0, 30.0))
    half = ground.inside(shapely.box(0.0, 0.0, 15.0, 30.0))
    (share,) = ground.shares(half, np.array([(15.0, 15.0)]), 6.0, 6.0).tolist()
    assert 0.4 < share < 0.6
