"""Ranges of sizes, as they are typed."""

import pytest

from publisher.basics import Place, Refusal
from publisher.design import Size, SizeSpan, size_span, two_ranges

HERE = Place("spec.yaml", 1, 1)
SIZES = (
    Size("reach", 92.0, "length", "92 mm", HERE),
    Size("turn", 20.0, "angle", "20 deg", HERE),
    Size("layers", 14.0, "count", "14", HERE),
    Size("lean", 1.5, "number", "1.5", HERE),
)


def span(text: str) -> SizeSpan:
    return size_span(text, SIZES)


@pytest.mark.parametrize(
    ("text", "name", "least", "most"),
    [
        ("reach = 80 mm to 120 mm", "reach", 80.0, 120.0),
        ("reach=3 1/2 in to 12cm", "reach", 88.9, 120.0),
        ("turn = 15 deg … 30 deg", "turn", 15.0, 30.0),
        ("layers = 12 to 20", "layers", 12.0, 20.0),
        ("lean = 0 .. 2.5", "lean", 0.0, 2.5),
    ],
)
@pytest.mark.keeps("design/no-range")
def test_ranges(text: str, name: str, least: float, most: float) -> None:
    found = span(text)
    assert found.size.name == name
    assert (found.least, found.most) == pytest.approx((least, most), abs=1e-9)


def test_whole_values_are_tried_where_all_is_whole() -> None:
    assert span("layers = 12 to 20").whole
    assert not span("layers = 12 to 20.5").whole
    assert not span("reach = 80 mm to 120 mm").whole


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("reach", "such as “reach = 80 mm to 120 mm”"),
        ("reach = 80 mm", "no range of a size"),
        ("reach = 120 mm to 80 mm", "write the smaller value first"),
        ("reach = 80 mm to 8 cm", "give two different values"),
        ("reach = low to 80 mm", "“low” is no number with its unit"),
        ("reach = 1/0 mm to 80 mm", "1/0"),
        ("reach = " + "9" * 300, "no range of a size"),
    ],
)
@pytest.mark.breaks("design/no-range")
def test_what_is_no_range(text: str, says: str) -> None:
    with pytest.raises(Refusal) as refused:
        span(text)
    (finding,) = refused.value.findings
    assert finding.check == "design/no-range"
    assert says in f"{finding.message} | {finding.hint}"
    assert str(finding.place) == "--vary"


@pytest.mark.parametrize(
    ("text", "check", "says"),
    [
        ("raech = 80 mm to 120 mm", "design/unknown-set", "did you mean “reach”?"),
        ("reach = 80 to 120 mm", "design/no-unit", "write 80 mm"),
        ("turn = 15 deg to 30", "design/no-unit", "write 30 deg"),
        ("reach = 80 mm to 120 deg", "design/wrong-kind", "“120 deg” is an angle"),
        ("layers = 12 mm to 20 mm", "design/wrong-kind", "“12 mm” is a length"),
    ],
)
def test_names_and_units_are_those_of_the_size(text: str, check: str, says: str) -> None:
    with pytest.raises(Refusal) as refused:
        span(text)
    (finding,) = refused.value.findings
    assert finding.check == check
    assert says in f"{finding.message} | {finding.hint}"


def test_one_size_or_two_different_ones() -> None:
    reach, layers, turn = span("reach = 1 mm to 2 mm"), span("layers = 1 to 2"), span("turn = 1 deg to 2 deg")
    assert two_ranges((reach, layers)) == (reach, layers)
    for wrong in ((reach, reach), (reach, layers, turn)):
        with pytest.raises(Refusal, match="one size or two different ones"):
            two_ranges(wrong)
