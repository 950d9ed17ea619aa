"""What is registered once for every shape, opening and surface: parameters with kind, default, range and meaning.

Comes in: parameters as planned. Goes out: complete values in range, each with the place where the designer wrote it.
Never: draw.
"""

from publisher.basics.wording import written_angle as deg
from publisher.basics.wording import written_length as mm
from publisher.geometry.registry.entry import (
    LOWER_LEFT,
    ON_AXIS,
    SIDES,
    Shape,
    ShapeKind,
    angle,
    choice,
    cornered,
    count,
    edges_of,
    just_one,
    length,
    nothing_to_check,
    rectangle,
    shape_kind,
)
from publisher.geometry.registry.given_parameters import Values, checked, known_words_hint
