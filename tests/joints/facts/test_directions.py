"""Facts know which way their figure may be rounded."""

import pytest

from publisher.basics import Place
from publisher.basics.wording import Rounds
from publisher.design import say
from publisher.joints.facts import made_fact
from publisher.joints.facts.directions import BURDENS, PROMISED

HERE = Place("spec.yaml", 1, 1)


@pytest.mark.parametrize(
    ("name", "rounds"),
    [
        ("stair.base_that_stands", "down"),
        ("stair.layer_5.headroom", "down"),
        ("stair.packed_length", "up"),
        ("stair.layer_5.overhang", "up"),
        ("stair.height", "nearest"),
        ("step.count", "nearest"),
    ],
)
def test_the_last_word_of_a_name_tells(name: str, rounds: Rounds) -> None:
    assert made_fact(name, 25.07, "length", HERE).rounds == rounds


def test_what_must_pass_an_opening_is_promised_its_clear_size() -> None:
    fact = made_fact("gable.door.width", 31.98, "length", HERE, clear=True)
    assert say(fact.value, fact.kind, fact.rounds) == "31.9 mm (1.25 in)"


def test_no_fact_goes_both_ways() -> None:
    assert not PROMISED & BURDENS
