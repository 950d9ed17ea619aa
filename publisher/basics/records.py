"""One way to make a record: a frozen, slotted dataclass, ready in a fraction of the time that the standard decorator takes.

``@record`` means what ``@dataclass(frozen=True, slots=True)`` means, and ``fields``, ``replace``, ``copy`` and ``pickle`` take it for
that. The standard decorator compiles six methods for each class, on which a command would spend a quarter of its start: here one is
compiled, ``__init__``, and that when the first record is made, as a command makes records of half the classes; the others are the
same functions for all records.
"""

from collections.abc import Callable
from dataclasses import MISSING, Field, FrozenInstanceError, dataclass, field, fields
from functools import cache
from operator import attrgetter
from typing import Any, TypeVar, dataclass_transform

Class = TypeVar("Class", bound=type)


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(cls: Class) -> Class:
    """Return the class as a frozen, slotted dataclass. A method that it has of its own is kept."""
    own = frozenset(vars(cls))
    made: Any = dataclass(init=False, repr=False, eq=False, slots=True)(cls)
    known = fields(made)
    made.__init__ = _init_once(made, known)
    compared = [one.name for one in known if one.compare]
    made.__record_key__ = attrgetter(*compared or ("__class__",))
    for name, method in SHARED.items():
        if name not in own:
            setattr(made, name, method)
    return made  # type: ignore[no-any-return]


def _init_once(cls: Any, known: tuple[Field[Any], ...]) -> Any:
    """Return an ``__init__`` that makes the first record, and compiles the one that makes all others."""

    def __init__(self: Any, *values: Any, **named: Any) -> None:
        cls.__init__ = _init(cls, known)
        cls.__init__(self, *values, **named)

    return __init__


def _init(cls: Any, known: tuple[Field[Any], ...]) -> Any:
    """Return ``__init__``: every value goes through the slot's own setter, as the record's refuses."""
    names: dict[str, Any] = {"MISSING": MISSING}
    asked, named, lines = ["self"], ["*"], []
    for one in known:
        names[f"set_{one.name}"] = getattr(cls, one.name).__set__
        value = one.name
        if one.default_factory is not MISSING:
            names[f"new_{one.name}"] = one.default_factory
            value = f"new_{one.name}() if {one.name} is MISSING else {one.name}" if one.init else f"new_{one.name}()"
            names[f"or_{one.name}"] = MISSING
        elif one.default is not MISSING:
            names[f"or_{one.name}"] = one.default
            value = one.name if one.init else f"or_{one.name}"
        if one.init:
            default = f"=or_{one.name}" if f"or_{one.name}" in names else ""
            (named if one.kw_only else asked).append(one.name + default)
        if one.init or f"or_{one.name}" in names:
            lines.append(f"set_{one.name}(self, {value})")
    if hasattr(cls, "__post_init__"):
        lines.append("self.__post_init__()")
    arguments = ", ".join(asked + (named if len(named) > 1 else []))
    exec(f"def __init__({arguments}):\n " + "\n ".join(lines or ["pass"]), names)
    names["__init__"].__qualname__ = f"{cls.__qualname__}.__init__"
    return names["__init__"]


def _equal(self: Any, other: Any) -> Any:
    if other.__class__ is not self.__class__:
        return NotImplemented
    key = self.__record_key__
    return key(self) == key(other)


def _hash(self: Any) -> int:
    return hash(self.__record_key__(self))


def _shown(self: Any) -> str:
    values = ", ".join(f"{one.name}={getattr(self, one.name)!r}" for one in fields(self) if one.repr)
    return f"{type(self).__qualname__}({values})"


def _refuse(self: object, name: str, _: object = None) -> None:
    raise FrozenInstanceError(f"{name} of a {type(self).__name__} stays as it was made")


@cache
def _slots(cls: type) -> tuple[tuple[Callable[..., Any], Callable[..., None]], ...]:
    """Return how each value of a record is taken and set: a batch hands thousands of records from one process to another."""
    slots = [getattr(cls, one.name) for one in fields(cls)]
    return tuple((slot.__get__, slot.__set__) for slot in slots)


AnyRecord = TypeVar("AnyRecord")


def changed(one: AnyRecord, **values: Any) -> AnyRecord:
    """Return the same record with other values, as ``dataclasses.replace`` does and in a quarter of its time: pages move and name thousands
    of things that are drawn. For records without ``__post_init__``; what such a record works out for itself is kept as it is."""
    cls: Any = one.__class__
    made: AnyRecord = cls.__new__(cls)
    for name, take, put in _named_slots(cls):
        put(made, values.pop(name) if name in values else take(one))
    if values:
        raise TypeError(f"a {cls.__name__} has no {', '.join(values)}")
    return made


@cache
def _named_slots(cls: type) -> tuple[tuple[str, Callable[..., Any], Callable[..., None]], ...]:
    return tuple((one.name, *slot) for one, slot in zip(fields(cls), _slots(cls), strict=True))


def _state(self: Any) -> list[Any]:
    return [take(self) for take, _ in _slots(self.__class__)]


def _restore(self: Any, state: list[Any]) -> None:
    for (_, put), value in zip(_slots(self.__class__), state, strict=True):
        put(self, value)


SHARED = {
    "__eq__": _equal,
    "__hash__": _hash,
    "__repr__": _shown,
    "__setattr__": _refuse,
    "__delattr__": _refuse,
    "__getstate__": _state,
    "__setstate__": _restore,
}
