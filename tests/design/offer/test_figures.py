"""The figure that a design is built for, by the sizes figure_base and figure_mass."""

import pytest

from publisher.basics import Finding, Place
from publisher.design.offer.figures import read_figure
from publisher.design.records import Figure, Kind, Size


def size(name: str, value: float, kind: Kind) -> Size:
    return Size(name, value, kind, f"{value:g}", Place("spec.yaml", 4, 3))


@pytest.mark.parametrize(
    ("base", "mass"),
    [(20.0, 30.0), (25.0, 30.0), (25.5, 45.0), (32.0, 45.0), (40.0, 80.0), (45.0, 150.0), (50.0, 150.0), (60.0, 150.0)],
)
def test_a_figure_weighs_what_its_base_says_and_between_two_rows_the_heavier(base: float, mass: float) -> None:
    assert read_figure((size("figure_base", base, "length"),), []) == Figure(base, mass, assumed=True)


@pytest.mark.keeps("design/figure", "design/figure-mass-unknown")
def test_what_the_designer_has_weighed_holds() -> None:
    found: list[Finding] = []
    sizes = (size("figure_base", 80.0, "length"), size("figure_mass", 400.0, "count"))
    assert read_figure(sizes, found) == Figure(80.0, 400.0, assumed=False)
    assert read_figure((), found) == Figure(25.0, 30.0)
    assert found == []


@pytest.mark.breaks("design/figure")
@pytest.mark.parametrize(("name", "value", "kind"), [("figure_mass", 80.0, "length"), ("figure_mass", -3.0, "count"),
                                                     ("figure_base", 0.0, "length"), ("figure_base", 25.0, "count")])  # fmt: skip
def test_a_size_of_another_kind_is_found(name: str, value: float, kind: Kind) -> None:
    found: list[Finding] = []
    read_figure((size(name, value, kind),), found)
    (one,) = found
    assert one.check == "design/figure"
    assert one.place is not None
    assert one.place.line == 4


@pytest.mark.breaks("design/figure-mass-unknown")
def test_a_wide_base_without_its_mass_is_warned_of() -> None:
    found: list[Finding] = []
    assert read_figure((size("figure_base", 80.0, "length"),), found).mass == 150.0
    (one,) = found
    assert "weighs; 150 g is taken" in one.message
