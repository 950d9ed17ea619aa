"""Words of what to buy and of the work."""

from publisher.basics import SheetsPromise, WorkPromise
from publisher.pages.front.buy_words import say_long, way_words, work_words

WAY = SheetsPromise("k", "foam", "20 x 30 in", 508.0, 762.0, 1, (("A", 12, True), ("B", 3, False)), (571.4, 255.9))


def test_a_way_to_buy_and_another() -> None:
    """One or the other, never both; what is left is never said to be more than it is."""
    assert way_words(WAY, False, "mm") == (
        "1 sheet",
        "20 x 30 in (508 × 762 mm)",
        "12 or more A, or 3 B",
        "571 × 255 mm (22.4 × 10.0 in)",
    )
    more = SheetsPromise("k", "foam", "A3", 297.0, 420.0, 2, (), None)
    assert way_words(more, True, "in") == ("or 2 sheets", "A3 (11.7 × 16.5 in)", "none", "small pieces only")
    assert way_words(WAY, False, "in")[3] == "22.4 × 10.0 in (571 × 255 mm)"


def test_the_work() -> None:
    work = WorkPromise("work", 7812.0, 0.0, 16, 17_230.0, 1724, (2, 4))
    assert work_words(work, "mm") == ("7.8 m (25.6 ft)", "none", "16", "17.2 m (56.5 ft) in 1724 strokes", "2 to 4")
    assert work_words(WorkPromise("work", 900.0, 305.0, 0, 0.0, 0, (1, 1)), "in") == (
        "3.0 ft (0.9 m)", "1.0 ft (0.3 m)", "none", "none", "1",
    )  # fmt: skip


def test_a_foot_is_304_8_mm() -> None:
    assert say_long(30_480.0, "in") == "100.0 ft (30.5 m)"
