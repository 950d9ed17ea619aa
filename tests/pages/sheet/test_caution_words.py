"""Tools, materials and their cautions: every caution exists, has words and a source."""

from publisher.pages.sheet.caution_words import cautions_for, material_words, thing, tool_words


def test_every_named_caution_is_in_the_table() -> None:
    everything = tuple(t.key for t in (*tool_words(), *material_words()))
    known = {c.id for c in cautions_for(everything)}
    assert {c for t in (*tool_words(), *material_words()) for c in t.cautions} <= known
    assert len(set(everything)) == len(everything)


def test_cautions_carry_words_and_a_source() -> None:
    for caution in cautions_for(tuple(t.key for t in (*tool_words(), *material_words()))):
        assert len(caution.text) > 40
        assert caution.source


def test_every_pack_defers_to_makers_and_local_rules() -> None:
    ids = [c.id for c in cautions_for(())]
    assert ids == ["follow_makers", "foam", "hands", "small_parts", "model_only"]
    assert "local rules" in cautions_for(())[0].text


def test_a_knife_brings_its_caution_once() -> None:
    ids = [c.id for c in cautions_for(("craft_knife", "spray_paint", "spray_glue"), always=False)]
    assert ids == ["knife", "spray", "solvents"]


def test_an_unknown_key_is_none() -> None:
    assert thing("sonic_knife") is None
