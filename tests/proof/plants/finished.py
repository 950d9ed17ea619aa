"""Faults planted at random into a finished file: a path, words or an object of it moved, scaled, deleted, exchanged or retyped.

Truth alone is asked, check by check until one finds something; only what none finds is compared with the clean file, to see what it
changed at all.
"""

from collections.abc import Callable, Iterator
from io import BytesIO
from random import Random
from typing import Any, Literal

import pikepdf

from publisher.basics import errors, record, run_checks
from publisher.pages import Pack
from publisher.press import write_pdf
from publisher.proof import ALONE, OPENING, PROMISED, identify
from publisher.proof.measuring import Case
from publisher.proof.reading import GIVES_UP, read_file

Instructions = list[Any]  # (operands, operator) of a page, as pikepdf parses them
Span = tuple[int, int]  # of one thing in them: a path with its painting, or a text object
PAINTS = {"S", "s", "f", "F", "f*", "B", "B*", "b", "b*", "n"}
POINTS = {"m": (0,), "l": (0,), "c": (0, 2, 4), "v": (0, 2), "y": (0, 2), "re": (0,)}
SHOWS = {"Tj", "TJ", "'", '"'}
OBJECTS = 0.15  # share of faults that are planted into objects: most of these are tags
FIRST = "proof/drawn"  # of all checks the one that is asked first: it finds most


@record
class FinishedPlant:
    """One planted fault: its class, its seed, the page (0: none), the check that found it ('' for none), and what a comparison with the
    clean file says of a survivor."""

    kind: str
    seed: int
    page: int
    check: str
    differs: Literal["", "page", "beside", "nothing"] = ""
    beside: str = ""


def plant_finished(pack: Pack, seeds: range) -> Iterator[FinishedPlant]:
    """Plant one fault for each seed into the pack's written file; what leaves no file behind is left out."""
    clean = write_pdf(pack)
    pages = _instructions(clean)
    for seed in seeds:
        random = Random(f"finished {seed}")
        try:
            planted = _object(random, clean) if random.random() < OBJECTS else _drawn(random, clean, pages)
        except pikepdf.PdfError:  # nothing is left that could be written
            planted = None
        if planted is not None:
            kind, page, data = planted
            yield _judged(pack, clean, data, kind, seed, page)


def _judged(pack: Pack, clean: bytes, data: bytes, kind: str, seed: int, page: int) -> FinishedPlant:
    check = first_check(pack, data)
    if check:
        return FinishedPlant(kind, seed, page, check)
    same = identify(data, clean, "planted.pdf")
    differs: Literal["page", "beside", "nothing"] = "page" if same.pages else "beside" if same.beside else "nothing"
    return FinishedPlant(kind, seed, page, "", differs, "; ".join(same.beside))


def first_check(pack: Pack, data: bytes) -> str:
    """Return the id of the first check that finds an error in a file; '' when none does."""
    file = read_file(data, "planted.pdf")
    if file.trouble:
        return "proof/not-readable"
    case = Case(data, file, pack.promises)
    checks = sorted((*OPENING, *ALONE, *PROMISED), key=lambda check: check.id != FIRST)
    for check in checks:
        try:
            if errors(run_checks((check,), case)):
                return check.id
        except GIVES_UP:
            return check.id
    return ""


def _instructions(clean: bytes) -> list[Instructions]:
    with pikepdf.open(BytesIO(clean)) as pdf:
        return [[(list(i.operands), str(i.operator)) for i in pikepdf.parse_content_stream(page)] for page in pdf.pages]


def _paths(page: Instructions) -> list[Span]:
    found, start = [], -1
    for place, (_, operator) in enumerate(page):
        if operator in POINTS and start < 0:
            start = place
        elif operator in PAINTS and start >= 0:
            found.append((start, place + 1))
            start = -1
    return found


def _words(page: Instructions) -> list[Span]:
    found, start = [], -1
    for place, (_, operator) in enumerate(page):
        if operator == "BT":
            start = place
        elif operator == "ET" and start >= 0:
            found.append((start, place + 1))
            start = -1
    return found


def _carried(body: Instructions, change: Callable[[float, float], tuple[float, float]]) -> Instructions:
    """Return a path with every point changed."""
    new: Instructions = []
    for operands, operator in body:
        numbers = list(operands)
        for at in POINTS.get(operator, ()):
            numbers[at], numbers[at + 1] = (round(v, 4) for v in change(float(numbers[at]), float(numbers[at + 1])))
        new.append((numbers, operator))
    return new


def _moved(random: Random, body: Instructions) -> Instructions:
    x, y = (random.choice((-1, 1)) * random.uniform(0.2, 20.0) for _ in range(2))
    if body[0][1] == "BT":
        return [([1, 0, 0, 1, x, y], "cm"), *body]
    return _carried(body, lambda a, b: (a + x, b + y))


def _scaled(random: Random, body: Instructions) -> Instructions:
    k = random.choice((0.9, 0.97, 1.01, 1.05))
    if body[0][1] == "BT":
        return [([k, 0, 0, k, 0, 0], "cm"), *body]
    return _carried(body, lambda a, b: (a * k, b * k))


def _retyped(random: Random, body: Instructions) -> Instructions:
    """One coordinate of a path, or one letter of words."""
    places = [i for i, (_, operator) in enumerate(body) if operator in POINTS or operator in SHOWS]
    if not places:
        return body
    place = random.choice(places)
    operands, operator = body[place]
    if operator in POINTS:
        at = random.choice(POINTS[operator]) + random.choice((0, 1))
        operands = [
            *operands[:at],
            round(float(operands[at]) + random.choice((-1, 1)) * random.uniform(0.2, 9), 4),
            *operands[at + 1 :],
        ]
    else:
        operands = [_other_letter(random, one) for one in operands]
    return [*body[:place], (operands, operator), *body[place + 1 :]]


def _other_letter(random: Random, shown: Any) -> Any:
    if isinstance(shown, pikepdf.Array):
        return pikepdf.Array([_other_letter(random, one) if isinstance(one, pikepdf.String) else one for one in shown])
    letters = bytearray(bytes(shown))
    if letters:
        letters[random.randrange(len(letters))] ^= random.choice((1, 2, 4))
    return pikepdf.String(bytes(letters))


Change = Callable[[Random, Instructions], Instructions]
CHANGES: dict[str, Change] = {
    "moved": _moved,
    "scaled": _scaled,
    "retyped": _retyped,
    "deleted": lambda _, __: [],
}


def _drawn(random: Random, clean: bytes, pages: list[Instructions]) -> tuple[str, int, bytes] | None:
    """One path or text object changed, or exchanged with another of its page."""
    number = random.randrange(len(pages))
    page = pages[number]
    what = random.choice(("path", "words"))
    things = _paths(page) if what == "path" else _words(page)
    how = random.choice((*CHANGES, "exchanged"))
    if len(things) < 2:
        return None
    if how == "exchanged":
        (a, b), (c, d) = sorted(random.sample(things, 2))
        new = [*page[:a], *page[c:d], *page[b:c], *page[a:b], *page[d:]]
    else:
        a, b = random.choice(things)
        body = CHANGES[how](random, page[a:b])
        apart = [([], "q"), *body, ([], "Q")] if body and body[0][1] == "cm" else body
        new = [*page[:a], *apart, *page[b:]]
    stream = pikepdf.unparse_content_stream([(operands, pikepdf.Operator(operator)) for operands, operator in new])
    with pikepdf.open(BytesIO(clean)) as pdf:
        pdf.pages[number].Contents = pdf.make_stream(stream)
        return f"{what} {how}", number + 1, _saved(pdf)


def _object(random: Random, clean: bytes) -> tuple[str, int, bytes] | None:
    """One entry of one object: a number retyped, a key deleted, or two entries exchanged."""
    with pikepdf.open(BytesIO(clean)) as pdf:
        holders = [one for one in pdf.objects if isinstance(one, pikepdf.Dictionary | pikepdf.Stream | pikepdf.Array)]
        classes: dict[str, list[Any]] = {}  # there are a hundred tags for each font: each class has the same chance
        for one in holders:
            classes.setdefault(_class_of(one), []).append(one)
        holder: Any = random.choice(classes[random.choice(sorted(classes))])
        keys: list[Any] = list(range(len(holder))) if isinstance(holder, pikepdf.Array) else sorted(holder.keys())
        keys = [key for key in keys if key not in ("/Length", "/Filter", "/DecodeParms")]
        if not keys:
            return None
        key, how = random.choice(keys), random.choice(("retyped", "deleted", "exchanged"))
        kind = _class_of(holder)
        value = holder[key]
        if how == "deleted":
            del holder[key]
        elif how == "exchanged":
            other = random.choice(keys)
            holder[key], holder[other] = holder[other], value
        elif isinstance(value, bool):
            holder[key] = not value
        elif isinstance(value, int | float) or type(value).__name__ == "Decimal":
            holder[key] = round(float(value) * random.choice((0.5, 1.02, 2)) + random.choice((-1, 1)), 3)
        elif isinstance(value, pikepdf.String):
            holder[key] = _other_letter(random, value)
        elif isinstance(value, pikepdf.Name):
            holder[key] = pikepdf.Name(f"/{'x' if str(value) != '/x' else 'y'}")
        else:
            return None
        name = key if isinstance(key, str) else ""
        return f"object {how}: {kind} {name}".replace("  ", " ").rstrip(), 0, _saved(pdf)


def _class_of(holder: Any) -> str:
    """Return the class of an object: its type, else its subtype, else by which keys it is known."""
    if isinstance(holder, pikepdf.Array):
        return "array"
    for key in ("/Type", "/Subtype", "/S"):
        if key in holder:
            return str(holder[key])
    return next((f"dictionary with {key}" for key in sorted(holder.keys())), "empty dictionary")


def _saved(pdf: pikepdf.Pdf) -> bytes:
    out = BytesIO()
    pdf.save(out, object_stream_mode=pikepdf.ObjectStreamMode.preserve)
    return out.getvalue()
