"""Numbers and documents as JSON takes them."""

import json
from math import inf, nan

from publisher.pages.record.plain import numbers, one_line_each, plain_number


def test_numbers_are_rounded_whole_where_they_are_whole_and_none_where_there_is_none() -> None:
    assert numbers((5.00001, 4.76249, -0.00001, inf, nan)) == [5, 4.7625, 0, None, None]
    assert isinstance(plain_number(70.000000001), int)
    assert plain_number(1.23456789, 6) == 1.234568


def test_a_document_has_sorted_keys_and_a_line_for_each_item() -> None:
    text = one_line_each({"b": [{"y": 1, "x": "ö"}, {}], "a": [1, 2]})
    assert text.decode() == '{\n"a": [1,2],\n"b": [\n  {"x":"ö","y":1},\n  {}\n]\n}\n'
    assert json.loads(text) == {"a": [1, 2], "b": [{"x": "ö", "y": 1}, {}]}
