"""What the cover of a pack says of the finished piece: its sizes, how hard it is and how long it takes, with its pictures."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from publisher.basics import DrawingPromise, NumberPromise, SentencePromise
from publisher.basics.wording import LengthUnit, series
from publisher.design import Design, say
from publisher.joints.model import Drawing, Joined, Labour
from publisher.joints.picture_promise import picture_promise

SIDES = {"width": "wide", "depth": "deep", "height": "high"}
LEAST_PICTURE = 50.0
"""mm of height that a picture of the piece takes: on a page with less left the words that a cover must carry come first."""

LEAST_VIEWS = 40.0
"""mm of height that elevation and plan take: in less they are too small to read."""

LEAST_WORDS = 12.0
"""mm of height that its sizes in words take."""

SHOWN = ("whole", "front", "above")  # kinds of drawings on a cover
COUNTED = (  # field of an effort, one of it, several
    ("pieces", "piece to cut", "pieces to cut"),
    ("openings", "closed slot or opening", "closed slots and openings"),
    ("bevels", "bevelled edge", "bevelled edges"),
    ("bends", "bent piece", "bent pieces"),
    ("joints", "glued joint", "glued joints"),
)


def whole_names(design: Design, drawings: Iterable[Drawing]) -> tuple[str, ...]:
    """Return the assemblies that a design is: those that are no thing of another one."""
    placed = {thing.assembly for plan in design.wholes for thing in plan.things}
    names = (d.name.partition(":")[2] for d in drawings if d.name.startswith("whole:"))
    return tuple(name for name in names if name not in placed)


def cover_sentences(design: Design, joined: Joined, first: LengthUnit = "mm") -> tuple[SentencePromise, ...]:
    """Return ``cover:NAME:width``, ``depth`` and ``height`` of the assembly that the design is, or ``cover:NAME:sizes`` in their
    place, and of each where it is several; ``cover:difficulty`` and ``cover:hours``. () where nobody has counted the work."""
    effort = joined.effort
    if effort is None:
        return ()
    names = whole_names(design, joined.drawings)
    sizes = _sizes(names[0], joined, first) if len(names) == 1 else (_size_words(name, joined, first) for name in names)
    return (*(one for one in sizes if one.numbers), _difficulty(effort), _hours(effort, design))


def _sizes(name: str, joined: Joined, first: LengthUnit) -> Iterator[SentencePromise]:
    """Yield each overall size of an assembly by itself, for a dimension line, and all of them in a line: a page shows either."""
    in_words = _size_words(name, joined, first)
    alone = []
    for side in SIDES:
        numbers = _numbers(name, (side,), joined, first)
        said = "".join(number.text for number in numbers)
        yield SentencePromise(f"cover:{name}:{side}", said, numbers, (in_words.key,), LEAST_WORDS)
        alone += [f"cover:{name}:{side}"] if numbers else []
    yield replace(in_words, instead=tuple(alone))


def _size_words(name: str, joined: Joined, first: LengthUnit) -> SentencePromise:
    """Return all overall sizes of an assembly in one line."""
    numbers = _numbers(name, tuple(SIDES), joined, first)
    said = (f"{number.text} {SIDES[number.expression.rpartition('.')[2]]}" for number in numbers)
    return SentencePromise(
        f"cover:{name}:sizes", f"{name.replace('_', ' ').capitalize()}: {', '.join(said)}", numbers, (), LEAST_WORDS
    )


def _numbers(name: str, sides: tuple[str, ...], joined: Joined, first: LengthUnit) -> tuple[NumberPromise, ...]:
    facts = (fact for side in sides if (fact := joined.fact(f"{name}.{side}")) is not None)
    return tuple(
        NumberPromise(
            fact.name, fact.value, fact.kind, say(fact.value, fact.kind, fact.rounds, first=first, plain=True)
        )
        for fact in facts
    )


def _difficulty(effort: Labour) -> SentencePromise:
    numbers = []
    for field, one, several in COUNTED:
        count = getattr(effort, field)
        if count:
            said = f"{count} {one if count == 1 else several}"
            numbers.append(NumberPromise(field, float(count), "count", said))
    said_all = ", ".join(number.text for number in numbers)
    return SentencePromise("cover:difficulty", f"{effort.difficulty}: {said_all}", tuple(numbers))


def _hours(effort: Labour, design: Design) -> SentencePromise:
    """Return the hours of work, and beside them each time to dry, as often as a step waits for it."""
    least, most = effort.hours
    waits = Counter(step.wait for step in design.steps if step.wait)
    numbers = [NumberPromise("hours", float(hours), "count", str(hours)) for hours in (least, most)]
    numbers += [NumberPromise("times to dry", float(times), "count", str(times)) for times in waits.values()]
    dry = f"and {series(f'{times} × {wait}' for wait, times in waits.items())}" if waits else "without the time"
    return SentencePromise("cover:hours", f"about {least} to {most} hours, {dry} to dry", tuple(numbers))


def cover_drawings(design: Design, drawings: Iterable[Drawing]) -> tuple[DrawingPromise, ...]:
    """Return the pictures of the finished piece, as ``cover:`` with the name of the drawing."""
    known = tuple(drawings)
    kinds = (
        SHOWN if design.cover is None or design.cover.kind == "photo" else SHOWN[1:]
    )  # else the picture that is asked for
    shown = {f"{kind}:{name}": (kind, name) for name in whole_names(design, known) for kind in kinds}
    found = []
    for drawing in known:
        kind, name = shown.get(drawing.name, ("", ""))
        if kind:
            made = picture_promise(f"cover:{drawing.name}", drawing, labels=False)
            views = replace(made, instead=(f"cover:{name}:sizes",), room=LEAST_VIEWS)  # they are there to bear sizes
            found.append(replace(made, room=LEAST_PICTURE) if kind == SHOWN[0] else views)
    return tuple(found)
