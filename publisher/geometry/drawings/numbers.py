"""Numbers, lengths and transforms as SVG and CSS write them."""

import re
from math import cos, hypot, isfinite, radians, sin, sqrt, tan

from publisher.basics import Point
from publisher.basics.units import INCH_MM
from publisher.geometry.drawings.tree import Unreadable

Matrix = tuple[float, float, float, float, float, float]
IDENTITY: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)

# atomic: “10” is never split into “1” and “0” to make two numbers
NUMBER = re.compile(r"(?>[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)")
_SEPARATOR = re.compile(r"\s*,?\s*")
_TWO_COMMAS = re.compile(r",\s*,")
_LENGTH = re.compile(rf"({NUMBER.pattern})\s*([a-z%]*)")
# CSS Values and Units: 1 in = 96 px = 2.54 cm = 72 pt = 6 pc, 1 Q = 1/40 cm
_PX = {
    "": 1.0,
    "px": 1.0,
    "in": 96.0,
    "cm": 96.0 / 2.54,
    "mm": 96.0 / INCH_MM,
    "q": 96.0 / 101.6,
    "pt": 96.0 / 72.0,
    "pc": 16.0,
}
MM_PER_PX = INCH_MM / 96.0
LARGEST_DRAWING = 1e6  # px: more than 250 m is a slip
LONGEST_TRANSFORM = 4000  # letters
MOST_PIECES = 100_000  # of one path
_AGAIN = "save the drawing again as plain SVG"


def sound(value: float, text: str) -> float:
    """Return a number; refuse one that is no number or beyond all drawings."""
    if not isfinite(value) or abs(value) > LARGEST_DRAWING:
        raise Unreadable(f"the number “{text.strip()[:30]}” is too large for a drawing", "check the drawing's size")
    return value


def too_many() -> Unreadable:
    """Return the refusal of a line with more points than any drawing needs."""
    return Unreadable("a path has too many points", f"simplify it: at most {MOST_PIECES}")


def numbers(text: str) -> list[float]:
    """Return all numbers of a list; anything but blanks and commas between them is refused."""
    rest = NUMBER.sub(" ", text).replace(",", " ").strip()
    if rest or _TWO_COMMAS.search(text):
        raise Unreadable(f"“{text[:40]}” is no list of numbers", _AGAIN)
    return [sound(float(found), found) for found in NUMBER.findall(text)]


def points_of(text: str) -> tuple[list[Point], bool]:
    """Return the pairs of a ``points`` list up to its first error, and whether all of it could be read (SVG 2, section 10.6)."""
    values: list[float] = []
    at = 0
    while match := NUMBER.match(text, at := _SEPARATOR.match(text, at).end()):  # type: ignore[union-attr]
        values.append(sound(float(match[0]), match[0]))
        at = match.end()
        if len(values) > 2 * MOST_PIECES:
            raise too_many()
    return list(zip(values[::2], values[1::2], strict=False)), at >= len(text) and len(values) % 2 == 0


def px(text: str, whole: float | None = None, font: float = 16.0) -> float | None:
    """Return a CSS length in px; None for ``auto`` or nothing, or for a percentage when ``whole`` (px) is not given."""
    text = text.strip().lower()
    if text in ("", "auto"):
        return None
    match = _LENGTH.fullmatch(text)
    if match is None or match[2] not in (*_PX, "%", "em", "ex"):
        raise Unreadable(f"“{text[:40]}” is no length that the tool reads", "use mm, cm, in, pt, pc, q or px")
    value = float(match[1])
    if match[2] == "%":
        return None if whole is None else sound(value * whole / 100.0, text)
    unit = {"em": font, "ex": font / 2.0}.get(match[2]) or _PX[match[2]]
    return sound(value * unit, text)


def times(m: Matrix, n: Matrix) -> Matrix:
    """Return the matrix that applies ``n`` first, then ``m``; x' = a x + c y + e, y' = b x + d y + f."""
    return (
        m[0] * n[0] + m[2] * n[1],
        m[1] * n[0] + m[3] * n[1],
        m[0] * n[2] + m[2] * n[3],
        m[1] * n[2] + m[3] * n[3],
        m[0] * n[4] + m[2] * n[5] + m[4],
        m[1] * n[4] + m[3] * n[5] + m[5],
    )


def carried(m: Matrix, p: Point) -> Point:
    """Return a point carried by a matrix."""
    return (m[0] * p[0] + m[2] * p[1] + m[4], m[1] * p[0] + m[3] * p[1] + m[5])


def inverse(m: Matrix) -> Matrix | None:
    """Return the matrix that undoes ``m``; None when it flattens all to a line."""
    size = m[0] * m[3] - m[1] * m[2]
    if abs(size) < 1e-12:
        return None
    a, b, c, d = m[3] / size, -m[1] / size, -m[2] / size, m[0] / size
    return (a, b, c, d, -(a * m[4] + c * m[5]), -(b * m[4] + d * m[5]))


def scale_of(m: Matrix) -> float:
    """Return the greater of the two stretches of a matrix' axes (an upper limit for circles is √2 of it)."""
    return max(hypot(m[0], m[1]), hypot(m[2], m[3]))


def keeps_circles(m: Matrix) -> bool:
    """Say whether a circle stays a circle: equal stretch, axes at right angles."""
    x, y = hypot(m[0], m[1]), hypot(m[2], m[3])
    return abs(m[0] * m[2] + m[1] * m[3]) < 1e-9 * x * y and abs(x - y) < 1e-9 * x


def diagonal(width: float, height: float) -> float:
    """Return what 100 % of a radius is: √(w² + h²)/√2 (SVG 1.1, section 7.10)."""
    return sqrt((width**2 + height**2) / 2.0)


def transform(text: str) -> Matrix:
    """Return the matrix of a ``transform`` attribute or CSS property (SVG 1.1, section 7.6; px and deg may be said)."""
    if not text or text == "none":
        return IDENTITY
    if len(text) > LONGEST_TRANSFORM:
        raise Unreadable(f"a transform of {len(text)} letters cannot be read", _AGAIN)
    text = re.sub(r"(?<=[\d.])(px|deg)\b", "", text)
    result = IDENTITY
    done = 0
    for match in re.finditer(r"([A-Za-z]+)\s*\(([^()]*)\)", text):
        if text[done : match.start()].strip(" \t\r\n,"):
            break
        result, done = times(result, _one(match[1], numbers(match[2]))), match.end()
        sound(max(map(abs, result)) if all(map(isfinite, result)) else 1e99, match[0])
    if text[done:].strip():
        raise Unreadable(f"the transform “{text[:40]}” cannot be read", _AGAIN)
    return result


def _one(name: str, v: list[float]) -> Matrix:
    made = _simple(name.lower(), v)
    if made is None:
        raise Unreadable(f"the transform “{name}” with {len(v)} numbers cannot be read", _AGAIN)
    return made


def _simple(name: str, v: list[float]) -> Matrix | None:
    made: Matrix | None = None
    match name, len(v):
        case "matrix", 6:
            made = (v[0], v[1], v[2], v[3], v[4], v[5])
        case "translate", 1 | 2:
            made = (1.0, 0.0, 0.0, 1.0, v[0], v[1] if len(v) == 2 else 0.0)
        case "scale", 1 | 2:
            made = (v[0], 0.0, 0.0, v[-1], 0.0, 0.0)
        case "rotate", 1 | 3:
            c, s = _turn(v[0])
            x, y = (v[1], v[2]) if len(v) == 3 else (0.0, 0.0)
            made = (c, s, -s, c, x - c * x + s * y, y - s * x - c * y)
        case "skewx", 1:
            made = (1.0, 0.0, tan(radians(v[0])), 1.0, 0.0, 0.0)
        case "skewy", 1:
            made = (1.0, tan(radians(v[0])), 0.0, 1.0, 0.0, 0.0)
    return made


def _turn(angle: float) -> tuple[float, float]:
    """Return cosine and sine; quarter turns exactly, so that rectangles stay rectangles."""
    quarter = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}
    return quarter.get(angle % 360.0, (cos(radians(angle)), sin(radians(angle))))
