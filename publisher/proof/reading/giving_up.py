"""What a reader of any bytes may raise when a file asks too much of it, and how that is said."""

from shapely.errors import ShapelyError

from publisher.proof.reading.objects import TooMuch

GIVES_UP = (TooMuch, ShapelyError, ArithmeticError, ValueError, MemoryError, RecursionError)


def why_given_up(trouble: Exception) -> str:
    """Return in words why something could not be judged."""
    return str(trouble) if isinstance(trouble, TooMuch) else "its numbers make no sense"
