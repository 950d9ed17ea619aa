"""Paths as lines and arcs: closed forms."""

from publisher.basics import Arc, Line, circle, closed_path
from publisher.geometry import Region
from publisher.pages.record.paths import region_paths


def test_whole_circles_are_arcs_that_go_round_once_the_way_they_are_drawn() -> None:
    region = Region(circle((100.0, 50.0), 30.0, "rim"), (circle((100.0, 50.0), 10.0, "hole", ccw=False),))
    sweeps = [sum(edge["sweep"] for edge in path["edges"]) for path in region_paths(region)]  # type: ignore[index, call-overload, misc]
    assert sweeps == [360, -360]


def test_a_quarter_disc_is_two_lines_and_an_arc_of_90_degrees() -> None:
    foot, back = Line("foot", (0.0, 0.0), (20.0, 0.0)), Line("back", (0.0, 20.0), (0.0, 0.0))
    bow = Arc("bow", (20.0, 0.0), (0.0, 20.0), (0.0, 0.0), 20.0, 90.0)
    assert region_paths(Region(closed_path((foot, bow, back)))) == [
        {
            "start": [0, 0],
            "edges": [
                {"name": "foot", "to": [20, 0]},
                {"name": "bow", "to": [0, 20], "centre": [0, 0], "radius": 20, "sweep": 90},
                {"name": "back", "to": [0, 0]},
            ],
        }
    ]
