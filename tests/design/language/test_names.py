"""The nearest known word."""

from publisher.design.language.names import cut, listed, nearest, nearest_hint, pick_hint


def test_nearest_is_the_likely_word_and_keeps_its_capitals() -> None:
    assert nearest("bord", ["reach", "board"]) == "board"
    assert nearest("REACH", ["reach", "board"]) == "reach"
    assert nearest("reach", ["Reach", "board"]) == "Reach"
    assert nearest("zzz", ["reach", "board"]) == ""
    assert nearest("aa", ["ab", "ac"]) == nearest("aa", ["ab", "ac"])


def test_hints() -> None:
    assert nearest_hint("bord", ["board"]) == "did you mean “board”?"
    assert nearest_hint("zzz", ["board"]) == ""
    assert pick_hint("zzz", ["board", "reach"], "sizes") == "known sizes: board, reach"
    assert pick_hint("zzz", [], "sizes") == "the spec has no sizes"


def test_long_lists_are_cut_off() -> None:
    assert listed([f"n{i}" for i in range(14)], 3) == "n0, n1, n2 and 11 more"
    assert cut("a" * 200) == "a" * 200
    assert cut("a" * 201) == "a" * 199 + "…"
