"""A record behaves as the standard frozen, slotted dataclass of the same fields does."""

import copy
import pickle
from dataclasses import FrozenInstanceError, dataclass, field, fields, is_dataclass, replace
from typing import Any, Generic, TypeVar

import pytest

from publisher.basics import Box, changed, record

Held = TypeVar("Held")


class Fields:
    """What both twins have: one of every kind of field that the house uses."""

    def all_of_them(self) -> tuple[Any, ...]:
        return tuple(getattr(self, one.name) for one in fields(self))  # type: ignore[arg-type]


@record
class Ours(Fields):
    width: float
    name: str = "plank"
    holes: list[int] = field(default_factory=list)
    area: float = field(init=False, repr=False, compare=False)
    known: tuple[int, ...] = field(default=(), init=False, compare=False)
    spare: bool = field(default=False, kw_only=True)

    def __post_init__(self) -> None:
        object.__setattr__(self, "area", self.width * 2.0)


@dataclass(frozen=True, slots=True)
class Standard(Fields):
    width: float
    name: str = "plank"
    holes: list[int] = field(default_factory=list)
    area: float = field(init=False, repr=False, compare=False)
    known: tuple[int, ...] = field(default=(), init=False, compare=False)
    spare: bool = field(default=False, kw_only=True)

    def __post_init__(self) -> None:
        object.__setattr__(self, "area", self.width * 2.0)


@record
class Plain:
    x: float
    y: float = 0.0


@record
class Longer(Plain, Generic[Held]):
    held: Held = field(kw_only=True)


@record
class Bare:
    pass


@pytest.mark.parametrize(
    "given", [((3.0,), {}), ((3.0, "rail", [1]), {"spare": True}), ((), {"width": 1.0, "name": "x"})]
)
def test_made_shown_and_replaced_as_the_standard_one(given: tuple[tuple[Any, ...], dict[str, Any]]) -> None:
    ours, standard = Ours(*given[0], **given[1]), Standard(*given[0], **given[1])
    assert ours.all_of_them() == standard.all_of_them()
    assert repr(ours) == repr(standard).replace("Standard", "Ours")
    assert replace(ours, width=9.0).all_of_them() == replace(standard, width=9.0).all_of_them()
    assert is_dataclass(ours) and Ours.__match_args__ == Standard.__match_args__
    assert [one.name for one in fields(ours)] == [one.name for one in fields(standard)]


@pytest.mark.parametrize(
    "given", [((), {}), ((1.0, "x", [], True), {}), ((1.0,), {"known": ()}), ((1.0,), {"depth": 2})]
)
def test_what_the_standard_one_is_not_made_from_a_record_is_not(given: tuple[Any, dict[str, Any]]) -> None:
    for kind in (Ours, Standard):
        with pytest.raises(TypeError):
            kind(*given[0], **given[1])


def test_lists_of_two_records_are_two_lists() -> None:
    assert Ours(1.0).holes is not Ours(1.0).holes


def test_equal_by_value_and_kind() -> None:
    assert Plain(1.0, 2.0) == Plain(1.0, 2.0) != Plain(1.0, 3.0)
    assert hash(Plain(1.0, 2.0)) == hash(Plain(1.0, 2.0))
    assert Plain(1.0) != Longer(1.0, held="a") and Longer(1.0, held="a") != Longer(1.0, held="b")
    assert Bare() == Bare() and hash(Bare()) == hash(Bare()) and Bare() != Plain(1.0)
    one, other = Ours(1.0), Ours(1.0)
    object.__setattr__(other, "area", 5.0)
    assert one == other  # a field that is not compared


@pytest.mark.parametrize("name", ["x", "held", "stranger"])
def test_nothing_of_it_changes(name: str) -> None:
    made = Longer(1.0, held="a")
    with pytest.raises(FrozenInstanceError):
        setattr(made, name, 2.0)
    with pytest.raises(FrozenInstanceError):
        delattr(made, name)
    assert made == Longer(1.0, held="a") and not hasattr(made, "__dict__")


def test_copies_and_other_processes_get_the_same() -> None:
    made = Longer(1.0, 2.0, held="a")
    assert copy.copy(made) == copy.deepcopy(made) == pickle.loads(pickle.dumps(made)) == made


def test_its_own_methods_are_kept() -> None:
    @record
    class Named:
        name: str

        def __repr__(self) -> str:
            return f"<{self.name}>"

    assert repr(Named("wall")) == "<wall>"


def test_a_record_with_other_values_is_what_the_library_makes_of_it() -> None:
    """The first one stays as it was; a name that it has not is refused."""
    box = Box(1.0, 2.0, 3.0, 4.0)
    assert changed(box, left=0.5, top=9.0) == replace(box, left=0.5, top=9.0) == Box(0.5, 2.0, 3.0, 9.0)
    assert changed(box) == box and changed(box) is not box
    assert box == Box(1.0, 2.0, 3.0, 4.0)
    with pytest.raises(TypeError, match="a Box has no depth"):
        changed(box, depth=1.0)
