"""A brief with other words in some of its mappings."""

from pathlib import Path

from publisher.basics import Cure, Place
from publisher.brief import read_brief, with_words
from tests.whole.test_split import folder


def test_words_are_written_into_the_mapping_at_their_place_alone(tmp_path: Path) -> None:
    brief = read_brief(folder(tmp_path / "quay"))
    side = brief.fields.table("parts").table("side")
    there = with_words(brief, Cure((side.place,), "split", (("at", "450 mm"), ("from", "left"))))
    assert there is not None
    own = there.fields.table("parts").table("side")
    assert (own.table("split").text("at"), own.text("shape")) == ("450 mm", "wall_panel")
    assert there.fields.table("parts").table("deck") == brief.fields.table("parts").table("deck")
    assert with_words(brief, Cure((Place("spec.yaml", 999, 1),), "split", "no")) is None
    assert there.fields.table("assembly") == brief.fields.table("assembly")
