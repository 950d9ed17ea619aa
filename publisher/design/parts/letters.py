"""Letters: of parts (A, B, … Z, AA, …) and of joins (a, b, …)."""

from string import ascii_lowercase, ascii_uppercase


def letter(index: int, small: bool = False) -> str:
    """Return the letter of the thing at ``index`` from 0: A … Z, AA, AB, … (or small letters)."""
    alphabet = ascii_lowercase if small else ascii_uppercase
    text = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        text = alphabet[rest] + text
    return text
