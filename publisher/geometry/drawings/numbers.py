"""Numbers, lengths and transforms as SVG and CSS write them."""

import re
from math import cos, isfinite, radians, sin, tan

from publisher.geometry.drawings.tree import Unreadable

Matrix = tuple[float, float, float, float, float, float]
SAME: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)

NUMBER = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?")
# CSS Values and Units: 1 in = 96 px = 2.54 cm = 72 pt = 6 pc, 1 Q = 1/40 cm
_PX = {
    "": 1.0,
    "px": 1.0,
    "in": 96.0,
    "cm": 96.0 / 2.54,
    "mm": 96.0 / 25.4,
    "q": 96.0 / 101.6,
    "pt": 96.0 / 72.0,
    "pc": 16.0,
}
MM_PER_PX = 25.4 / 96.0
LARGEST = 1e6  # px: more than 250 m is a slip


def numbers(text: str) -> list[float]:
    """Return all numbers of a list; anything but blanks and commas between them is refused."""
    rest = NUMBER.sub(" ", text).replace(",", " ").strip()
    values = [float(found) for found in NUMBER.findall(text)]
    if rest or not all(isfinite(v) and abs(v) < LARGEST for v in values):
        raise Unreadable(f"“{text[:40]}” is no list of numbers", "save the drawing again as plain SVG")
    return values


def px(text: str) -> float | None:
    """Return a CSS length in px; None for a percentage, ``auto`` or nothing."""
    text = text.strip().lower()
    if text in ("", "auto") or text.endswith("%"):
        return None
    match = re.fullmatch(rf"({NUMBER.pattern})\s*([a-z]*)", text)
    if match is None or match[2] not in _PX:
        raise Unreadable(f"“{text[:40]}” is no length that the tool reads", "use mm, cm, in, pt, pc, q or px")
    value = float(match[1]) * _PX[match[2]]
    if not isfinite(value) or abs(value) > LARGEST:
        raise Unreadable(f"the length “{text[:40]}” is too large", "check the drawing's size")
    return value


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


def transform(text: str) -> Matrix:
    """Return the matrix of a ``transform`` attribute (SVG 1.1, section 7.6)."""
    result = SAME
    done = 0
    for match in re.finditer(r"\s*,?\s*([A-Za-z]+)\s*\(([^()]*)\)", text):
        if text[done : match.start()].strip():
            break
        result, done = times(result, _one(match[1], numbers(match[2]))), match.end()
    if text[done:].strip():
        raise Unreadable(f"the transform “{text[:40]}” cannot be read", "save the drawing again as plain SVG")
    return result


def _one(name: str, v: list[float]) -> Matrix:
    match name, len(v):
        case "matrix", 6:
            return (v[0], v[1], v[2], v[3], v[4], v[5])
        case "translate", 1 | 2:
            return (1.0, 0.0, 0.0, 1.0, v[0], v[1] if len(v) == 2 else 0.0)
        case "scale", 1 | 2:
            return (v[0], 0.0, 0.0, v[-1], 0.0, 0.0)
        case "rotate", 1 | 3:
            c, s = cos(radians(v[0])), sin(radians(v[0]))
            x, y = (v[1], v[2]) if len(v) == 3 else (0.0, 0.0)
            return (c, s, -s, c, x - c * x + s * y, y - s * x - c * y)
        case "skewX", 1:
            return (1.0, 0.0, tan(radians(v[0])), 1.0, 0.0, 0.0)
        case "skewY", 1:
            return (1.0, tan(radians(v[0])), 0.0, 1.0, 0.0, 0.0)
    raise Unreadable(f"the transform “{name}” with {len(v)} numbers cannot be read", "save it again as plain SVG")
