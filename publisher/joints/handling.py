"""What a finished piece bears of a hand, and where to lift it; said here, before any page."""

from publisher.basics import NumberPromise, SentencePromise
from publisher.basics.wording import say_push
from publisher.joints.model import Joined

FINGER_PRESS = 5.0
"""N: what a finger presses with, at the least. An assumption; what bears more is not worth a line."""

DECK = "deck_carries"
BEARS = (("step_carries", "a step", "at its outer edge"), (DECK, "the deck", "at its weakest place"))
"""Facts of an assembly, what they are about, and where it breaks first."""


def handling_sentences(joined: Joined) -> tuple[SentencePromise, ...]:
    """Return one line for the weakest step and one for the weakest deck of a design, if a finger may break them, and one where
    nobody knows: as ``cover:handling:…``."""
    found: list[SentencePromise] = []
    known = {fact.name: fact.value for fact in joined.facts}
    for name, what, where in BEARS:
        owners = {fact.partition(".")[0] for fact in known if fact.partition(".")[2] == name}
        if name != DECK:  # a stack whose steps all bend as decks says the same by both names
            owners -= {own for own in owners if known[f"{own}.{name}"] == known.get(f"{own}.{DECK}")}
        least, weakest = min(((known[f"{own}.{name}"], own) for own in owners), default=(FINGER_PRESS, ""))
        if least < FINGER_PRESS:
            push = say_push(least, "down")
            said = f"Lift it by its foot: {what} carries {push} {where}, and a finger presses with {say_push(FINGER_PRESS, 'down')}."
            numbers = (NumberPromise(f"{weakest}.{name}", least, "force", push),)
            found.append(SentencePromise(f"cover:handling:{name}", said, numbers))
    if any(name.endswith(".deck_span") and name.replace("deck_span", DECK) not in known for name in known):
        said = "What a deck bears was not judged: no bending strength of its board was given."
        found.append(SentencePromise("cover:handling:unknown", said, ()))
    return tuple(found)
