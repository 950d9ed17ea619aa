"""Registered shapes by name."""

from publisher.basics import Place
from publisher.design import Family, Parameter
from publisher.geometry.making.named_shapes import kind_of, named_shape

HERE = Place("spec.yaml", 3, 5)


def test_by_name() -> None:
    kind = kind_of("disc")
    assert kind is not None and kind.info.name == "disc" and kind_of("dics") is None
    radius = (Parameter("radius", 20.0, "20 mm", HERE),)
    shape, found = named_shape("disc", radius, "part p", HERE, 5.0)
    assert shape is not None and found == () and shape.edges[0].name == "rim"


def test_a_layer_knows_its_number() -> None:
    sizes = {"length": 100.0, "width": 100.0, "inset": 10.0}
    given = tuple(Parameter(name, value, f"{value} mm", HERE) for name, value in sizes.items())
    widths = []
    for layer in (1, 2, 3):
        shape, found = named_shape("hill", given, "part p", HERE, 5.0, Family("hill", layer, 3))
        assert shape is not None and not found
        widths.append(max(curve.start[0] for curve in shape.outer.edges))
    assert [round(width) for width in widths] == [50, 40, 30]
