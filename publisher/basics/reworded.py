"""Promises in other words: what rooms before the pages promised of words, in the language in which it is set or read."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics.promise import Promises
from publisher.basics.promised_pieces import SentencePromise

Say = Callable[[str], str]


def reworded(
    promises: Promises, say: Say, *, sentence: Callable[[SentencePromise], str] | None = None, alone: Say | None = None
) -> Promises:
    """Return promises with the words of sentences, drawings and pieces, and the words that the designer gave, as ``say`` says them.

    ``sentence``: how the text of a sentence is said, ``alone``: the numbers in it and given words, where these go otherwise.
    """
    single = alone or say
    return replace(
        promises,
        sentences=tuple(
            replace(
                one,
                text=say(one.text) if sentence is None else sentence(one),
                numbers=tuple(replace(number, text=single(number.text)) for number in one.numbers),
            )
            for one in promises.sentences
        ),
        drawings=tuple(
            replace(one, labels=tuple((say(text), at) for text, at in one.labels)) for one in promises.drawings
        ),
        said=tuple(
            replace(one, texts=tuple(map(say, one.texts)), listed=tuple(map(say, one.listed)), over=say(one.over))
            for one in promises.said
        ),
        prints=tuple(
            replace(
                one,
                words=tuple(replace(word, text=say(word.text)) for word in one.words),
                names=tuple(map(say, one.names)),
            )
            for one in promises.prints
        ),
        given=tuple(map(single, promises.given)),
    )
