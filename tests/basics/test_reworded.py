"""Promises in other words: which words change, and that nothing else does."""

from dataclasses import replace

from publisher.basics import (
    DrawingPromise,
    NumberPromise,
    PrintPromise,
    Promises,
    SentencePromise,
    WordPromise,
    reworded,
)

RING = ((0.0, 0.0), (9.0, 0.0), (9.0, 9.0))
PROMISES = replace(
    Promises("title", "de", (), (), (), (), (), ()),
    sentences=(SentencePromise("summary", "say", (NumberPromise("size", 1.5, "length", "number"),)),),
    drawings=(DrawingPromise("step:1", "whole", 9.0, 9.0, (RING,), (), (("label", (1.0, 2.0)),)),),
    prints=(PrintPromise("part", "A", "foam", 5.0, (RING,), (WordPromise("word", (1.0, 1.0), "letter"),), ("name",)),),
    given=("given",),
)


def test_all_words_of_sentences_drawings_and_pieces_are_said() -> None:
    found = reworded(PROMISES, str.upper)
    (sentence,), (drawing,), (piece,) = found.sentences, found.drawings, found.prints
    assert (sentence.text, sentence.numbers[0].text, drawing.labels) == ("SAY", "NUMBER", (("LABEL", (1.0, 2.0)),))
    assert (piece.words[0].text, piece.names, found.given) == ("WORD", ("NAME",), ("GIVEN",))
    assert reworded(found, str.lower) == PROMISES, "nothing but words has changed"


def test_sentences_and_what_stands_alone_may_be_said_otherwise() -> None:
    found = reworded(PROMISES, str.upper, sentence=lambda one: f"{one.key}: {one.text}", alone=str.title)
    assert found.sentences[0].text == "summary: say"
    assert (found.sentences[0].numbers[0].text, found.given) == ("Number", ("Given",))
    assert found.prints[0].names == ("NAME",)
