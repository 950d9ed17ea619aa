"""Letters in order."""

from publisher.design.parts.letters import letter


def test_letters_run_on_after_z() -> None:
    assert [letter(i) for i in (0, 1, 25, 26, 27, 51, 52, 701, 702)] == [
        "A", "B", "Z", "AA", "AB", "AZ", "BA", "ZZ", "AAA",
    ]  # fmt: skip
    assert [letter(i, small=True) for i in (0, 25, 26)] == ["a", "z", "aa"]


def test_no_letter_comes_twice() -> None:
    assert len({letter(i) for i in range(2000)}) == 2000
