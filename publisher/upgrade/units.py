"""Units put into expressions as they are written: text in, text out."""

import re

TURNING = re.compile(r"\b(?:sin|cos|tan)\s*\(")


def with_unit(text: str, unit: str) -> str:
    """Return an expression with a unit: ``4 mm``, ``2 * 25 mm``, ``360 deg / 18``, ``reach * 1 mm``, ``(2 * reach - 74) * 1 mm``."""
    inner = text.strip()
    terms = _terms(inner)
    if all(_numbers_only(term) for term in terms):
        return "".join(_number_with_unit(term, unit) for term in terms)
    return f"({inner}) * 1 {unit}" if len(terms) > 1 else f"{inner} * 1 {unit}"


def with_units_in_sum(text: str, unit: str) -> str:
    """Return an expression whose terms of numbers alone have a unit: ``180 deg - 2 * pitch``."""
    return "".join(_number_with_unit(term, unit) if _numbers_only(term) else term for term in _terms(text.strip()))


def with_degrees(text: str, offset: int) -> str:
    """Return an expression with degrees in the sine, cosine or tangent at ``offset``, or in the first that lacks them; '' where
    there is none."""
    calls = [found for found in TURNING.finditer(text) if "deg" not in text[found.end() : _closing(text, found.end())]]
    found = next((call for call in calls if call.start() == offset), calls[0] if calls else None)
    if found is None:
        return ""
    end = _closing(text, found.end())
    return text[: found.end()] + with_unit(text[found.end() : end], "deg") + text[end:]


def _terms(text: str) -> list[str]:
    """Return the terms of a sum, each with the sign before it; what stands in brackets is not looked into."""
    deep, start, terms = 0, 0, []
    for at, letter in enumerate(text):
        deep += {"(": 1, ")": -1}.get(letter, 0)
        if deep == 0 and letter in "+-−–" and text[start:at].strip(" -−–"):
            terms.append(text[start:at])
            start = at
    return [*terms, text[start:]]


def _numbers_only(term: str) -> bool:
    """Tell whether a term is a product of numbers, and of sines and the like that have their degrees."""
    while (found := TURNING.search(term)) and "deg" in term[found.end() : (end := _closing(term, found.end()))]:
        term = term[: found.start()] + "1" + term[end + 1 :]
    return re.fullmatch(r"[-+−–\s]*[0-9./*×·÷\s]+", term) is not None


def _number_with_unit(term: str, unit: str) -> str:
    """Give the first number of a term its unit, or the last where nothing is divided and nothing turned."""
    numbers = list(re.finditer(r"(?:[0-9]+\s+)?[0-9]+/[0-9]+|[0-9.]+", term))
    end = (numbers[0] if re.search(r"[(÷]|[0-9.]\s*/\s|\s/", term) else numbers[-1]).end()
    return f"{term[:end]} {unit}{term[end:]}"


def _closing(text: str, at: int) -> int:
    """Return the offset of the bracket that closes what was opened before ``at``; the end where none does."""
    deep = 1
    for offset in range(at, len(text)):
        deep += {"(": 1, ")": -1}.get(text[offset], 0)
        if deep == 0:
            return offset
    return len(text)
