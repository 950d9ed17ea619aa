from typing import Any

import pytest

from publisher.proof.reading.objects import (
    Spent,
    TooMuch,
    array,
    dictionary,
    number,
    numbers,
    plain,
    raw,
    stream_bytes,
)


class Broken:
    idnum = 1

    def get_object(self) -> Any:
        raise KeyError("lost")


class Stream:
    def __init__(self, data: bytes | Exception) -> None:
        self.data = data

    def get_data(self) -> bytes:
        if isinstance(self.data, Exception):
            raise self.data
        return self.data


def test_a_damaged_object_is_a_missing_one() -> None:
    assert plain(Broken()) is None
    assert dictionary(Broken()) == {}
    assert array({"a": 1}) == []
    assert raw({"/A": 5}, "/A") == 5
    assert raw([1], "/A") is None


@pytest.mark.parametrize(
    ("thing", "value"), [(3, 3.0), ("4.5", 4.5), ("x", 7.0), (None, 7.0), (float("nan"), 7.0), (10**400, 7.0)]
)
def test_numbers_are_finite(thing: Any, value: float) -> None:
    assert number(thing, 7.0) == value


def test_an_array_of_numbers() -> None:
    assert numbers([1, "x", 2.5]) == [1.0, 0.0, 2.5]
    assert numbers("12") == []


def test_streams_are_decoded_within_a_budget() -> None:
    spent = Spent()
    assert stream_bytes(Stream(b"abc"), spent) == b"abc"
    assert stream_bytes(Stream(ValueError("damaged")), spent) == b""
    assert spent.decoded == 3
    with pytest.raises(TooMuch):
        spent.unpack(10**9)
    with pytest.raises(TooMuch):
        stream_bytes(Stream(b"a"), spent)  # nothing of this file any more
    with pytest.raises(TooMuch):
        stream_bytes(Stream(type("LimitReachedError", (Exception,), {})()), Spent())
    assert stream_bytes(Stream(b"abc"), Spent()) == b"abc"  # another file has its own limits
