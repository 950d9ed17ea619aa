"""The report counts what it says."""

from tests.report import complex_functions, function_lengths, lines_of

SOURCE = '''\
"""Two
lines."""

# a remark


def one(x: int) -> int:  # said beside it
    if x:
        return 1

    return 0
'''


def test_lines_without_blanks_and_remarks() -> None:
    assert lines_of(SOURCE) == 6
    assert function_lengths(SOURCE) == [5]
    assert lines_of("\n# nothing\n") == 0


def test_functions_over_a_complexity_are_named() -> None:
    assert complex_functions(SOURCE, 1) == [(2, 7, "one")]
    assert complex_functions(SOURCE, 2) == []
    turning = "def f(x, y):\n    return [a if a and b or x else 0 for a in x if a for b in y] if y else 0\n"
    assert complex_functions(turning, 0) == [(8, 1, "f")]
