"""Optional content by ISO 32000-1, 8.11: base state, lists, usage, memberships."""

from typing import Any

import pytest

from publisher.proof.reading.layers import Layers


class Reference:
    """Stands for an indirect reference to a group."""

    def __init__(self, idnum: int, thing: Any) -> None:
        self.idnum, self.thing = idnum, thing

    def get_object(self) -> Any:
        return self.thing


ONE, TWO = (Reference(n, {"/Type": "/OCG", "/Name": f"group {n}"}) for n in (1, 2))
SCREEN = Reference(3, {"/Type": "/OCG", "/Name": "screen", "/Usage": {"/Print": {"/PrintState": "/OFF"}}})


def layers(**default: Any) -> Layers:
    return Layers({"/OCProperties": {"/OCGs": [ONE, TWO, SCREEN], "/D": {f"/{k}": v for k, v in default.items()}}})


def test_all_groups_are_on_unless_said_otherwise() -> None:
    assert [layers().hidden(g) for g in (ONE, TWO, SCREEN)] == ["", "", ""]


def test_lists_of_on_and_off() -> None:
    assert layers(OFF=[TWO]).hidden(TWO) == "group 2"
    off = layers(BaseState="/OFF", ON=[ONE])
    assert [off.hidden(g) for g in (ONE, TWO)] == ["", "group 2"]


def test_a_group_that_is_off_in_print_counts_as_off_when_usage_is_automatic() -> None:
    assert layers(AS=[{"/Event": "/Print", "/OCGs": [SCREEN]}]).hidden(SCREEN) == "screen"


@pytest.mark.parametrize(
    ("policy", "shown"), [("/AnyOn", True), ("/AllOn", False), ("/AnyOff", True), ("/AllOff", False)]
)
def test_memberships(policy: str, shown: bool) -> None:
    member = Reference(9, {"/Type": "/OCMD", "/OCGs": [ONE, TWO], "/P": policy})
    assert (layers(OFF=[TWO]).hidden(member) == "") is shown


def test_a_membership_hides_although_all_groups_are_on() -> None:
    member = Reference(9, {"/Type": "/OCMD", "/OCGs": [ONE], "/P": "/AllOff"})
    assert layers().hidden(member) == "group 1"
    assert not layers().by_expression(member)
    assert layers().by_expression(Reference(9, {"/Type": "/OCMD", "/VE": ["/Not", ONE]}))


def test_odd_properties_hide_nothing() -> None:
    for odd in ({}, {"/OCProperties": 3}, {"/OCProperties": {"/OCGs": 7, "/D": [1]}}):
        assert Layers(odd).hidden(ONE) == ""
