"""Words for findings."""

from publisher.basics.wording import listed, nearest
from publisher.brief.wording import expected, proposal, short, ticked

SHAPES = ("spiral_stair_layer", "disc", "ring", "wall_panel", "gable_wall", "roof_panel")


def test_the_nearest_known_word_is_proposed() -> None:
    for word, meant in (
        ("disk", "disc"), ("Disc", "disc"), ("wall-panel", "wall_panel"), ("Gable wall", "gable_wall"), ("gable", "gable_wall"),
        ("spiral_stairs_layer", "spiral_stair_layer"), ("rnig", "ring"),
    ):  # fmt: skip
        assert nearest(word, SHAPES) == meant
    assert nearest("quay", SHAPES) == ""
    assert nearest("disc" * 1000, SHAPES) == ""


def test_without_a_near_word_the_known_ones_are_listed() -> None:
    assert proposal("quay", ("disc", "ring")) == "known here: “disc”, “ring”"
    assert proposal("quay", ()) == ""


def test_long_and_odd_texts_are_made_fit_for_a_message() -> None:
    assert short("a\n  b") == "a b"
    assert short("x" * 41) == "x" * 40 + "…"
    assert short("a\x1b[31mb\u202ec") == "a<U+001B>[31mb<U+202E>c"
    assert listed(ticked("abcd"), 2) == "“a”, “b” and 2 more"


def test_a_field_says_what_it_takes() -> None:
    assert "“5 mm”" in expected({"x-kind": "length", "type": ["string", "number"]})
    assert expected({"x-kind": "name", "enum": ["a", "b"]}) == "one of “a”, “b”"
    assert expected({"type": "array"}) == "a list"
