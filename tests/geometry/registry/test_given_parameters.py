"""Sizes as given against sizes as registered."""

from math import nan

import pytest

from publisher.basics import Place
from publisher.basics.wording import CHECK_COUNT
from publisher.design import Parameter
from publisher.geometry import ParameterInfo
from publisher.geometry.registry.given_parameters import checked, known_words_hint

INFOS = (
    ParameterInfo("width", "length", "overall width", None, 1.0, 5000.0),
    ParameterInfo("sides", "count", "number of sides", 4, 3, 100),
    ParameterInfo("pitch", "angle", "slope", 45.0, 1.0, 85.0),
    ParameterInfo("centre", "length", "where it stands", "middle", 0.0),
    ParameterInfo("head", "choice", "upper end", "square", choices=("square", "round")),
)
PLACE = Place("spec.yaml", 3, 1)


def given(**sizes: float | str) -> tuple[Parameter, ...]:
    return tuple(Parameter(k, v, str(v), Place("spec.yaml", 5 + i, 9)) for i, (k, v) in enumerate(sizes.items()))


def test_defaults_and_given_sizes() -> None:
    values, found = checked("shape x", INFOS, given(width=12.5, sides=6.0), "part p", PLACE)
    assert found == ()
    assert (values.number("width"), values.count("sides"), values.number("pitch")) == (12.5, 6, 45.0)
    assert (values.word("head"), values.word("centre")) == ("square", "middle")
    assert values.where("width").line == 5 and values.where("pitch") == PLACE
    assert checked("shape x", INFOS, given(width=1.0, centre="middle"), "part p", PLACE)[1] == ()


@pytest.mark.parametrize(
    ("sizes", "message", "hint"),
    [
        (
            {"width": 10000.0},
            "width of shape x is 10000 mm; it must be at most 5000 mm",
            "change width, the overall width",
        ),
        ({"width": 0.0}, "width of shape x is 0 mm; it must be at least 1 mm", ""),
        ({"width": -4.0}, "width of shape x is -4 mm; it must be at least 1 mm", ""),
        ({"width": nan}, "width of shape x is no finite number", "check the sizes"),
        ({"width": "wide"}, "width of shape x is a length, but “wide” was given", "write a number"),
        ({"width": 9.0, "sides": 7.5}, "sides of shape x is a whole number, but 7.5 was given", "round"),
        ({"width": 9.0, "sides": 2}, "sides of shape x is 2; it must be at least 3", CHECK_COUNT),
        ({"width": 9.0, "pitch": 90.0}, "pitch of shape x is 90°; it must be at most 85°", ""),
        ({"width": 9.0, "head": "roud"}, "“roud” is no head that shape x knows", "did you mean “round”?"),
    ],
)
def test_what_is_wrong_is_said_in_words(sizes: dict[str, float | str], message: str, hint: str) -> None:
    _, (finding,) = checked("shape x", INFOS, given(**sizes), "part p", PLACE)
    assert finding.message == message and hint in finding.hint and finding.subject == "part p"
    assert finding.place == Place("spec.yaml", 4 + len(sizes), 9)


def test_words() -> None:
    assert known_words_hint("dor", ["door", "window"]) == "did you mean “door”? It knows: door, window"
    assert known_words_hint("zzz", ["door", "window"]) == "it knows: door, window"
