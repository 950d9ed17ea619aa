"""What the schema objects to, in words that say what to do."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.basics import Finding


@pytest.mark.parametrize(
    ("old", "new", "check", "words"),
    [
        ("shape: disc", "shape: Disc", "unknown-word", "did you mean “disc”?"),
        ("radius: 20 mm", "radius: {mm: 20}", "wrong-kind", "a length such as “5 mm”"),
        ("with: {radius: 20 mm}", "radius: 20 mm", "unknown-key", "inside “with"),
        ("with: {radius: 20 mm}", "with: {diameter: 40 mm}", "unknown-key", "known here: “radius”"),
        ("use: trace", "use: cut", "unknown-word", "“trace”, “paste”"),
        ("title: Landing", "title: {figure}", "unquoted-text", "write “title: >”"),
        ("version: 1.0.0", "version: first", "bad-form", "missing unit"),
        ("shape: disc", "shape: disc, openings: {}", "unknown-key", "delete “openings”"),
        ("shape: disc", "shape: disc, drawing: {file: a.svg}", "unknown-key", "delete “drawing”"),
        ("format: 2", "format: [2]", "wrong-kind", "write “2”"),
        ("shape: disc, with: {radius: 20 mm}", "shape: disc", "missing-key", "{radius: …}"),
        ("landing: {", "1landing: {", "bad-key", "begins with a letter"),
        ("foam: {", f"{'f' * 61}: {{", "bad-key", "one short word"),
    ],
)
def test_hints_say_what_to_do(
    old: str,
    new: str,
    check: str,
    words: str,
    good: str,
    make_folder: Callable[[str], Path],
    findings_of: Callable[[Path], tuple[Finding, ...]],
) -> None:
    found = [f for f in findings_of(make_folder(good.replace(old, new, 1))) if f.check == f"brief/{check}"]
    assert any(words in f.hint for f in found), found


def test_a_misspelt_key_is_one_finding_not_two(
    good: str, make_folder: Callable[[str], Path], findings_of: Callable[[Path], tuple[Finding, ...]]
) -> None:
    (finding,) = findings_of(make_folder(good.replace("radius: 20 mm", "raduis: 20 mm")))
    assert finding.check == "brief/unknown-key"
    assert finding.hint == "did you mean “radius”?"
    assert finding.place is not None
    assert (finding.place.line, finding.place.column) == (10, 61)
    assert finding.place.pointer == "/parts/landing/with/raduis"


def test_fields_that_do_not_go_together_are_named(
    good: str, make_folder: Callable[[str], Path], findings_of: Callable[[Path], tuple[Finding, ...]]
) -> None:
    """What to take away is no riddle: which fields stand there, and which of them go together."""
    more = "materials: [{text: Dowel, length: 100 mm, count: 2}]\n"
    (finding,) = (f for f in findings_of(make_folder(good + more)) if f.check == "brief/wrong-number-of-items")
    assert "“text”, “length”, “count”: 3 fields, where at most 2 go together" in finding.message
    assert "at most one amount: `length`, `count`, `area` or `weight`" in finding.hint


def test_numbers_of_a_finding_are_kept(
    good: str, make_folder: Callable[[str], Path], findings_of: Callable[[Path], tuple[Finding, ...]]
) -> None:
    (finding,) = findings_of(make_folder(good.replace("title: Landing", "title: " + "x" * 10_000)))
    assert (finding.check, finding.value, finding.limit) == ("brief/too-long", 10_000.0, 120.0)
