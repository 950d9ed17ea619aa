"""Names are given as the designer wrote them, each once."""

from pathlib import Path

from publisher.brief import read_brief
from publisher.design import given_words, work_out


def test_names_of_a_design_are_given_each_once() -> None:
    given = given_words(work_out(read_brief(Path("designs/bridge")), ""), (), "mm")
    assert {"1.0.0", "20 x 30 in", "5 mm", "foam"} <= set(given)
    assert len(given) == len(set(given)) and "" not in given
