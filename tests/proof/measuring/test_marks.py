from typing import Any

from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.marks import find_marks
from publisher.proof.reading.areas import covers
from publisher.proof.reading.reader import read_file
from publisher.proof.reading.texts import text_lines, why_hidden


def marks_on(kit: Any, labels: tuple[str, ...], **items: Any) -> Any:
    pack = kit.good()
    pack.sheets = pack.sheets[:1]
    pack.sheets[0].items = items
    page = read_file(pack.write(), "test.pdf").pages[0]
    return find_marks(Ink(page, covers(page)), text_lines(page, why_hidden(page, covers(page))), 2.5, labels)


def test_a_circle_with_a_cross_and_its_label(kit: Any) -> None:
    (mark,) = marks_on(kit, ("B1", "B2"), mark=kit.mark(60.0, 70.0), label=kit.words("B2", 64.0, 71.0))
    assert mark.label == "B2"
    assert abs(mark.at[0] - 60.0) < 0.001
    assert abs(mark.at[1] - 70.0) < 0.001
    assert abs(mark.radius - 2.5) < 0.01


def test_each_label_goes_to_the_mark_it_stands_beside(kit: Any) -> None:
    found = marks_on(
        kit, ("B1", "B2"),
        a=kit.mark(60.0, 70.0), b=kit.mark(60.0, 78.0), la=kit.words("B1", 64.0, 70.0), lb=kit.words("B2", 64.0, 78.0),
    )  # fmt: skip
    assert {m.label: round(m.at[1]) for m in found} == {"B1": 70, "B2": 78}


def test_what_is_no_mark(kit: Any) -> None:
    circle = kit.stroke(kit.circle_code(60.0, 70.0, 2.5))
    square = kit.stroke(kit.ring_code(((57.5, 67.5), (62.5, 67.5), (62.5, 72.5), (57.5, 72.5))))
    cross = kit.stroke(
        kit.ring_code(((57.5, 70), (62.5, 70)), False) + " " + kit.ring_code(((60, 67.5), (60, 72.5)), False)
    )
    aside = kit.stroke(
        kit.ring_code(((57.5, 71), (62.5, 71)), False) + " " + kit.ring_code(((60, 68.5), (60, 73.5)), False)
    )
    assert marks_on(kit, ("B1",), a=circle) == ()
    assert marks_on(kit, ("B1",), a=square, b=cross) == ()
    assert marks_on(kit, ("B1",), a=circle, b=aside) == ()
    assert marks_on(kit, ("B1",), a=kit.mark(60.0, 70.0, 12.5)) == ()


def test_a_mark_far_from_its_label_has_none(kit: Any) -> None:
    (mark,) = marks_on(kit, ("B1",), mark=kit.mark(60.0, 70.0), label=kit.words("B1", 90.0, 70.0))
    assert mark.label == ""
