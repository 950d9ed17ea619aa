"""Lines and arcs: exact outlines, how they are shifted, let in, joined and cut.

Comes in: paths, points in mm. Goes out: paths and regions whose lines and arcs keep their names, centres and radii.
Never: know a shape or a part.
"""

from publisher.geometry.paths.biarcs import fitted, fitted_line
from publisher.geometry.paths.bumps import Bump, box_bump, let_in
from publisher.geometry.paths.curves import meet
from publisher.geometry.paths.line_strings import line_string, lines_left
from publisher.geometry.paths.mitred import mitred
from publisher.geometry.paths.offset import eroded, shift
from publisher.geometry.paths.regions import fault, polygon, recover
from publisher.geometry.paths.rings import Pen, area, next_of, one_before, oriented, path_length, signed_area, straight
