"""Steps that speak of marks, and the templates of the parts that they name."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.basics import LineKind, Purpose, polyline
from publisher.design import Blank, StepPlan, TextPlan
from publisher.geometry import Mark, Part
from publisher.joints.checks.step_names_no_mark import step_names_no_mark

ID = "joints/step-names-no-mark"


def marked(make: SimpleNamespace, purpose: Purpose, kind: LineKind = LineKind.REFERENCE, name: str = "") -> Part:
    part: Part = make.rectangle("deck", 0, 0, 60, 40)
    return replace(part, marks=(Mark(kind, purpose, polyline(((5, 5), (50, 5))), name=name),))


def said(make: SimpleNamespace, say: str, *parts: Part, of: tuple[str, ...] = (), language: str = "en") -> list[str]:
    words = TextPlan((say, Blank("deck.width", make.here)), make.here)
    step = StepPlan(TextPlan(("Glue",), make.here), "glue", words, of, (), None, make.here)
    design = replace(make.design(), steps=(step,), language=language)
    return [f.message for f in step_names_no_mark.run(make.assembled(design, *parts), step_names_no_mark).findings]


@pytest.mark.keeps(ID)
@pytest.mark.parametrize(
    ("say", "purpose", "kind"),
    [
        ("Prick the lap line through.", Purpose.LAP, LineKind.DRAW),
        ("Lay it over the centre\ncross of", Purpose.CENTRE, LineKind.REFERENCE),
        ("Bend it at the hinge line.", Purpose.BEND, LineKind.SCORE),
        ("Carry the joint ticks over.", Purpose.JOINT_TICK, LineKind.DRAW),
        ("Hold like to like by the match letters.", Purpose.MATCH, LineKind.REFERENCE),
    ],
)
def test_a_mark_that_is_there(make: SimpleNamespace, say: str, purpose: Purpose, kind: LineKind) -> None:
    deck, plain = marked(make, purpose, kind), make.rectangle("lid", 0, 0, 60, 40)
    assert said(make, say, deck, plain, of=("deck", "lid")) == []
    assert said(make, say, deck, plain) == []  # a step without parts speaks of any


@pytest.mark.breaks(ID)
def test_a_mark_that_is_on_no_template(make: SimpleNamespace) -> None:
    plain = make.rectangle("deck", 0, 0, 60, 40)
    assert said(make, "Glue it inside the seat outline, as far as the Lap\nLines go: ", plain, of=("deck",)) == [
        "the step speaks of “Lap Lines”, and there is none on the template of deck",
        "the step speaks of “seat outline”, and there is none on the template of deck",
    ]
    lapped = replace(marked(make, Purpose.LAP), id="lid", name="lid")
    (found,) = said(make, "Glue it inside the lap line.", plain, lapped, of=("deck",))
    assert "none on the template of deck" in found
    assert said(make, "Glue it inside the lap line.", plain) == [
        "the step speaks of “lap line”, and there is none on the template of any part"
    ]


@pytest.mark.parametrize(
    ("say", "language"),
    [
        ("Draw a centre line along it.", "en"),  # the buyer makes it
        ("The top layer has no lap line.", "en"),
        ("Glue the seat on, and paint the courses.", "en"),  # a seat to sit on
        ("Overlap lines of tape.", "en"),
        ("Glue the lap line.", "de"),
    ],
)
def test_words_that_speak_of_no_mark_of_the_template(make: SimpleNamespace, say: str, language: str) -> None:
    assert said(make, say, make.rectangle("deck", 0, 0, 60, 40), language=language) == []


def test_a_mark_is_known_by_its_name_too(make: SimpleNamespace) -> None:
    """A designer's own line, called so in the drawing."""
    own = marked(make, Purpose.SURFACE, LineKind.DRAW, "hinge_line")
    assert said(make, "Score the hinge line.", own) == []
    assert said(make, "Score the hinge line.", marked(make, Purpose.SURFACE, LineKind.DRAW)) != []
