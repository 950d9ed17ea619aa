"""What a template of a bent piece says otherwise than it was worked out is refused, in each language."""

from collections.abc import Iterator
from dataclasses import replace

import pytest

from publisher.basics import errors, run_checks
from publisher.pages.templates import label_words
from publisher.pipeline import compose_packs
from publisher.press import write_pdf
from publisher.proof.checks.part_notes import notes_of_parts
from publisher.proof.measuring import Case
from publisher.proof.reading import read_file
from tests.proof.refused import worked_out

EXCHANGED = (
    ("Lay tape", "Glue paper"),
    ("outside face before", "inside face before"),
    ("Slit the inside", "Slit the outside"),
)


def found(language: str) -> set[str]:
    worked = worked_out("bridge")
    assert worked.design is not None
    there = replace(worked, design=replace(worked.design, language=language))
    (pack,), _ = compose_packs(there, ("a4",))
    data = write_pdf(pack)
    case = Case(data, read_file(data, "pack.pdf"), pack.promises)
    return {one.check for one in errors(run_checks((notes_of_parts,), case))}


@pytest.mark.parametrize("language", ["en", "de"])
def test_a_note_of_a_bent_piece_says_what_is_done_to_it(language: str, monkeypatch: pytest.MonkeyPatch) -> None:
    assert found(language) == set()
    real = label_words._notes
    said: list[str] = []

    def noted(*asked: object) -> Iterator[str]:
        for text in real(*asked):  # type: ignore[arg-type]
            said.append(text)
            yield swapped(text)

    def swapped(text: str) -> str:
        here, there = pair
        return text.replace(here, "\0").replace(there, here).replace("\0", there)

    monkeypatch.setattr(label_words, "_notes", noted)
    for pair in EXCHANGED:
        said.clear()
        refused = found(language)
        assert ("proof/part-note" in refused) == any(swapped(text) != text for text in said), pair
    assert any("Slit" in text or "whole" in text for text in said)
