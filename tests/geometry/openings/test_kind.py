"""Where the middle of an opening stands."""

from publisher.basics import Place
from publisher.design import Parameter
from publisher.geometry.openings.kind import CENTRE, centre_of
from publisher.geometry.registry import Values

PLACE = Place("spec.yaml", 3)


def test_an_opening_stands_in_the_middle_unless_its_place_is_given() -> None:
    assert centre_of(Values("door", PLACE, (), (CENTRE,)), 60.0) == 60.0
    given = (Parameter("centre", 25.0, "25 mm", PLACE),)
    assert centre_of(Values("door", PLACE, given, (CENTRE,)), 60.0) == 25.0
