"""The shapes of a stack's layers, by closed forms of our own. Mm and degrees."""

from dataclasses import dataclass
from math import cos, radians, sin, sqrt

from manifold3d import CrossSection

from tests.random_designs.solids import Point

FINE = 720  # corners of a full circle where sizes are taken: 0.002 mm off at a radius of 200 mm
COARSE = 36  # corners of a full circle in solids, all of which have the same ones


@dataclass(frozen=True, slots=True)
class Layer:
    """One part: its shape and sizes as the spec has them (mm, degrees, counts)."""

    shape: str
    sizes: tuple[tuple[str, float], ...]

    def __getitem__(self, name: str) -> float:
        return dict(self.sizes)[name]


def outline(layer: Layer, fine: int) -> list[Point]:
    """Return the outline of a layer by its closed form, anticlockwise, with ``fine`` corners to a full circle."""
    if layer.shape == "disc":
        return _round(layer["radius"], 0.0, 360.0, fine)[:-1]
    if layer.shape == "regular_polygon":
        n = round(layer["sides"])
        return [_polar(layer["radius"], -90.0 - 180.0 / n + k * 360.0 / n) for k in range(n)]
    if layer.shape == "rectangle":
        w, h = layer["width"], layer["height"]
        return [(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)]
    if layer.shape == "hill":
        return [
            (layer["length"] / 2 * cos(radians(a)), layer["width"] / 2 * sin(radians(a)))
            for a in _angles(0.0, 360.0, fine)[:-1]
        ]
    return _step(layer, fine)


def _step(layer: Layer, fine: int) -> list[Point]:
    """Return a core and one step from the angle 0; the notch's straight side lies on the angle of the turn, its other side at 45°."""
    core, reach, turn, notch = layer["core_radius"], layer["reach"], abs(layer["turn"]), layer["notch"]
    ring = [*_round(reach, 0.0, layer["step_angle"], fine), *_round(core, layer["step_angle"], 360.0, fine)]
    if layer["turn"] < 0.0:
        ring = [(x, -y) for x, y in reversed(ring)]
    if notch:
        tip = _polar(reach - notch, turn)
        way = _polar(1.0, turn - 45.0)
        dot = tip[0] * way[0] + tip[1] * way[1]
        far = -dot + sqrt(dot * dot - (reach - notch) ** 2 + reach**2)
        wedge = [tip, (tip[0] + 1.01 * far * way[0], tip[1] + 1.01 * far * way[1]), _polar(reach * 1.01, turn)]
        if layer["turn"] < 0.0:
            wedge = [(x, -y) for x, y in reversed(wedge)]
        cut = CrossSection([ring]) - CrossSection([wedge])
        return [(float(x), float(y)) for x, y in max(cut.to_polygons(), key=len)]
    return ring


def _polar(radius: float, angle: float) -> Point:
    return (radius * cos(radians(angle)), radius * sin(radians(angle)))


def _angles(first: float, last: float, fine: int) -> list[float]:
    n = max(2, round(fine * (last - first) / 360.0))
    return [first + (last - first) * k / n for k in range(n + 1)]


def _round(radius: float, first: float, last: float, fine: int) -> list[Point]:
    return [_polar(radius, angle) for angle in _angles(first, last, fine)]
