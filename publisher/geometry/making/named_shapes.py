"""Registered shapes made from their names and sizes; what does not fit them is found in words."""

from dataclasses import replace

from publisher.basics import Finding, Path, Place
from publisher.design import Family, Parameter
from publisher.geometry.registry import Shape, ShapeKind, checked
from publisher.geometry.shapes import SHAPES


def kind_of(name: str) -> ShapeKind | None:
    """Return the registered shape with this name, or None."""
    return next((kind for kind in SHAPES if kind.info.name == name), None)


def named_shape(
    name: str,
    parameters: tuple[Parameter, ...],
    subject: str,
    place: Place,
    thickness: float,
    family: Family | None = None,
    outline: Path | None = None,
) -> tuple[Shape | None, tuple[Finding, ...]]:
    """Return the shape (mm), or None and the findings that say why not. ``outline``: the drawing that a layered shape takes."""
    kind = next(kind for kind in SHAPES if kind.info.name == name)
    layer, layers = (family.layer, family.layers) if family else (1, 1)
    values, found = checked(f"shape {name}", kind.info.parameters, parameters, subject, place, thickness)
    values = replace(values, layer=layer, layers=layers, outline=outline)
    found = found or tuple(kind.check(values))
    return (None if found else kind.build(values)), found
