"""What boards are sold as: a name such as 3/16 in is no measure, and boards of one name differ (``sold_as.json``)."""

import json
import re
from functools import cache
from pathlib import Path

from publisher.design.records import ShopBoard

BY_NUMBER = 1e-3  # mm: a thickness this near to a name's number was taken from the name


@cache
def _known() -> tuple[tuple[ShopBoard, float], ...]:
    """Return the names that are known, each with its number in mm."""
    table = json.loads((Path(__file__).parent / "sold_as.json").read_text(encoding="utf-8"))
    return tuple((ShopBoard(row["name"], row["least"], row["most"]), row["number"]) for row in table["boards"])


def sold_as(names: tuple[str, ...], thickness: float) -> tuple[str, ShopBoard | None]:
    """Return which of the designer's names a board of this thickness (mm) has in the shop, and what is known of that name.

    Of several names it is the one whose boards are about as thick. Without any, a thickness that is a known name's very number
    was taken for that name.
    """
    if not names:
        return "", next((shop for shop, number in _known() if abs(number - thickness) < BY_NUMBER), None)
    found = [(name, shop) for name in names if (shop := _named(name)) is not None]
    if not found:
        return names[0], None
    return min(found, key=lambda one: abs((one[1].least + one[1].most) / 2.0 - thickness))


def also_sold_as(names: tuple[str, ...], shop: ShopBoard | None) -> tuple[ShopBoard, ...]:
    """Return what is known of the designer's other names for a board, beside the one that it has."""
    found = dict.fromkeys(one for name in names if (one := _named(name)) is not None)
    return tuple(one for one in found if one != shop)


def _named(text: str) -> ShopBoard | None:
    """Return the known name that a text begins with or has in it: ``white foam board, 3/16 in``."""
    plain = re.sub(r"inch(es)?\b|[\"″]", "in", text.casefold())
    words = re.sub(r"[\s-]+", "", plain)
    for shop, _ in _known():
        if re.search(rf"(?<![0-9./,]){re.escape(shop.name.replace(' ', ''))}", words):
            return shop
    return None
