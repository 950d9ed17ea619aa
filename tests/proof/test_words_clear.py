"""Pages on small paper, where words find least room: none stands over a line, nor on what is hatched, and one that does is refused."""

from typing import Any

import pytest

from publisher.brief import read_brief
from publisher.pages.instructions import act_sketches
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pipeline import building, work
from publisher.press import write_pdf
from publisher.proof.checks.words_clear import words_clear
from publisher.proof.measuring import Case
from publisher.proof.reading import read_file
from tests.proof.refused import DESIGNS, refused_by


def test_words_beside_a_tile_of_a_hollow_part_stand_on_no_waste() -> None:
    packs, _ = building.compose_packs(work(read_brief(DESIGNS / "island"), "hollow"), ("a5",))
    data = write_pdf(packs[0])
    looked = words_clear.run(Case(data, read_file(data, "a.pdf"), packs[0].promises), words_clear)
    assert looked.findings == () and looked.looked_at > 20_000


def test_a_knife_over_the_word_that_says_where_it_cuts_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    put = SketchPen.words

    def words(pen: SketchPen, text: str, x: float, y: float, *rest: Any) -> None:
        put(pen, text, x + 6.0 * (text == "pencil line"), y, *rest)

    monkeypatch.setattr(act_sketches.SketchPen, "words", words)
    assert "proof/words-clear" in refused_by("quay")
