"""Steps as text of a spec."""

import yaml

from publisher.brief import StepText, steps_text


def test_it_reads_back_as_it_was_meant() -> None:
    words = "Glue the “east: wall” on; {then} the other one # twice and let it dry for as long as its label says, or longer."
    many = tuple(f"house.wall_number_{n}" for n in range(9))
    text = steps_text(
        (
            StepText("Glue", "glue", words, ("wall",), (), many, remark="look: here"),
            StepText("3: on", "paint", "Paint.", only="paste"),
        )
    )
    first, second = yaml.safe_load(text)["steps"]
    assert (first["title"], first["stage"], first["parts"], first["adds"]) == ("Glue", "glue", ["wall"], list(many))
    assert first["say"].strip() == words.replace("{", "").replace("}", "")
    assert (second["title"], "parts" in second, second["only"]) == ("3: on", False, "paste")
    assert "  # look: here\n" in text and max(map(len, text.splitlines())) <= 120


def test_a_wait_stands_last() -> None:
    assert steps_text([StepText("Glue", "glue", "Glue it.", wait="24 h")]).endswith("\n    wait: 24 h\n")
    assert "wait" not in steps_text([StepText("Glue", "glue", "Glue it.")])


def test_only_a_step_s_own_blanks_stay_blanks() -> None:
    step = StepText(
        "Glue", "glue", "It is {stair.rim_chord} of {stair.height} {wide}.", blanks=("stair.rim_chord", "stair.rise")
    )
    assert "say: >\n      It is {stair.rim_chord} of stair.height wide.\n" in steps_text([step])


def test_texts_in_several_languages_stand_under_each_other() -> None:
    english = StepText(
        "Glue: on", "glue", "Glue {it} on, {stair.rim_chord} apart.", ("wall",), blanks=("stair.rim_chord",)
    )
    german = StepText("Kleben", "glue", "Es ankleben: {stair.rim_chord}.", ("wall",), blanks=("stair.rim_chord",))
    (step,) = yaml.safe_load(steps_text([english], "en", {"de": [german]}))["steps"]
    assert step["title"] == {"en": "Glue: on", "de": "Kleben"}
    assert {language: said.strip() for language, said in step["say"].items()} == {
        "en": "Glue it on, {stair.rim_chord} apart.",
        "de": "Es ankleben: {stair.rim_chord}.",
    }
    assert (step["stage"], step["parts"]) == ("glue", ["wall"])
