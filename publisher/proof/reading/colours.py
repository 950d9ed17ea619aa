"""How light a colour prints on a black-and-white printer: 0 black, 1 white."""

from typing import Any

from publisher.proof.reading.objects import number, plain
from publisher.proof.reading.tokens import Name

SPACES = (
    *("DeviceGray", "DeviceRGB", "DeviceCMYK", "CalGray", "CalRGB", "Lab", "ICCBased", "Indexed", "Separation"),
    "DeviceN",
)
"""Families of colour spaces that pictures may be in (ISO 32000-1, 8.6)."""

BITS = (1, 2, 4, 8, 16)  # of a component (table 89)
OWN_SPACE = "/JPXDecode"  # a filter whose pictures say both themselves


def picture_coded(picture: dict[str, Any]) -> bool:
    """Say whether a picture's dictionary names a colour space and bits that there are, so that all viewers show it."""
    filters = plain(picture.get("/Filter"))
    if OWN_SPACE in map(str, map(plain, filters if isinstance(filters, list) else [filters])):
        return True
    space = plain(picture.get("/ColorSpace"))
    family = plain(space[0]) if isinstance(space, list) and space else space
    return str(family).lstrip("/") in SPACES and number(picture.get("/BitsPerComponent")) in BITS


def grey_of(components: list[Any]) -> float:
    """Return the grey of device components: 1 grey, 3 red-green-blue (ITU-R BT.601), 4 cyan-magenta-yellow-black."""
    values = [min(max(v, 0.0), 1.0) for v in components if isinstance(v, float)]
    if len(values) == 1:
        return values[0]
    if len(values) == 3:
        return 0.299 * values[0] + 0.587 * values[1] + 0.114 * values[2]
    if len(values) == 4:
        return max(0.0, 1.0 - (0.3 * values[0] + 0.59 * values[1] + 0.11 * values[2]) - values[3])
    return 0.0


def space_kind(name: Any, spaces: Any) -> str:
    """Return what a colour space is: its PDF family name, following the page's resources."""
    space = plain(spaces.get("/" + name)) if isinstance(name, Name) and isinstance(spaces, dict) else None
    if space is None:
        return str(name)
    if isinstance(space, list) and space:
        return str(plain(space[0])).lstrip("/")
    return str(space).lstrip("/")


def grey_in(kind: str, components: list[Any]) -> float | None:
    """Return the grey of components in a colour space; None for a pattern, which has no one grey."""
    if kind == "Pattern" or any(isinstance(c, Name) for c in components):
        return None
    values = [c for c in components if isinstance(c, float)]
    if kind in ("Separation", "DeviceN"):
        return 1.0 - min(max(number(max(values, default=1.0)), 0.0), 1.0)
    if kind == "Lab":
        return min(max(values[0] / 100.0, 0.0), 1.0) if values else 0.0
    if kind == "Indexed":
        return 0.5
    return grey_of(list(values))
