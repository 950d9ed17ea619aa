"""What is said of the boards that a design takes. Ends are rounded inwards: whoever keeps them keeps the true ones."""

from collections.abc import Callable
from math import isinf

from publisher.basics.units import inches
from publisher.basics.wording import LengthUnit, fixed, paired, rounded_down, rounded_up
from publisher.joints.model import BoardRange

MILLIMETRES, INCHES = 1, 3  # decimals, as boards are read on a gauge or from a pile of ten


def safe_ends(board: BoardRange) -> tuple[float, float]:
    """Return the range (mm) as it is printed: to 0.1 mm inwards, or to 0.01 mm where that would leave little of it."""
    return _inwards(board.least, board.most, board.thickness)


def board_ends(thickness: float, spread: float) -> tuple[float, float]:
    """Return the range (mm) of a board that may be thinner and thicker by ``spread``, as it is printed, in the same way."""
    return _inwards(thickness - spread, thickness + spread, thickness)


def spread_words(thickness: float, spread: float, first: LengthUnit = "mm") -> str:
    """Return ``between 4.8 and 5.2 mm (0.189 and 0.204 in)``, or the inches ``first``."""
    least, most = board_ends(thickness, spread)
    small, large = _inward(least, rounded_up), _inward(most, rounded_down)
    return f"between {paired(f'{_plain(least)} and {_plain(most)} mm', f'{small} and {large} in', first)}"


def _inwards(low: float, high: float, thickness: float) -> tuple[float, float]:
    for decimals in (MILLIMETRES, MILLIMETRES + 1):
        least = rounded_up(low, decimals)
        most = high if isinf(high) else rounded_down(high, decimals)
        if least <= thickness <= most and most - least >= 0.5 * (high - low):
            break
    return least, most


def takes_words(board: BoardRange, first: LengthUnit = "mm") -> str:
    """Return ``from 4.7 to 5.3 mm (0.186 to 0.208 in)``, or the inches ``first``; '' where any board will do."""
    least, most = safe_ends(board)
    if not least and isinf(most):
        return ""
    low, high = (_plain(end) for end in (least, most))
    small = _inward(least, rounded_up)
    if isinf(most):
        return f"of {paired(f'{low} mm', f'{small} in', first)} or more"
    large = _inward(most, rounded_down)
    if not least:
        return f"up to {paired(f'{high} mm', f'{large} in', first)}"
    return f"from {paired(f'{low} to {high} mm', f'{small} to {large} in', first)}"


def sold_words(board: BoardRange, first: LengthUnit = "mm") -> str:
    """Return what boards of the name are like beside what the design takes, in inches too where they come ``first``; '' where nothing
    is known of the name."""
    shop = board.shop
    if shop is None:
        return ""
    between = f"{_plain(shop.least)} to {_plain(shop.most)} mm"
    if first == "in":
        between = paired(between, f"{_inward(shop.least, rounded_up)} to {_inward(shop.most, rounded_down)} in", first)
    between = f"usually {between}"
    thinner, thicker = (part / (shop.most - shop.least) for part in (board.least - shop.least, shop.most - board.most))
    if max(thinner, thicker) <= 0.0:
        return f"Boards sold as {shop.name} are {between}: measure yours."
    share = "Most" if max(thinner, thicker) >= 0.5 else "Some"
    way = "thinner" if thinner >= thicker else "thicker"
    return f"{share} boards sold as {shop.name} are {way} ({between}): measure."


def _inward(mm: float, rounds: Callable[[float, int], float]) -> str:
    """Return an end in inches, rounded by ``rounded_up`` or ``rounded_down``."""
    return fixed(rounds(inches(mm), INCHES), INCHES)


def _plain(mm: float) -> str:
    text = fixed(mm, MILLIMETRES + 1)
    return text[:-1] if text.endswith("0") else text
