"""What a step says of a stack: marks that are there, a size that shows the turn, and the places of braces."""

from collections.abc import Callable

from publisher.joints.advice.stack_words import asked_by, braced_words, laid_words, wound_words
from publisher.joints.advice.step_words import step_words
from publisher.joints.advice.steps import proposed_steps
from publisher.joints.assembled import Assembled
from tests.joints.building.conftest import BRACED, assembled

__all__ = ["assembled"]

WORDS = step_words("en")

SLABS = """
sizes: {board: 5 mm}
parts: {slab: {name: Slab, board: foam, shape: wall_panel, with: {width: 80 mm, height: 60 mm}}}
assembly: {pile: {stack: [{part: slab, count: 3}]}}
"""


def said(subject: Assembled) -> tuple[str, str, str]:
    (report,), parts = subject.wholes, {part.id: part for part in subject.parts}
    return laid_words(report, parts, WORDS), wound_words(report, parts, WORDS), braced_words(report, parts, WORDS)


def test_a_stair_that_winds_has_a_line_a_size_and_braces(assembled: Callable[..., Assembled]) -> None:
    subject = assembled(BRACED)
    laid, wound, braced = said(subject)
    assert laid == ", its front edge along the line that is drawn there for it"
    assert "{stair.rim_chord}" in wound
    assert "one knee brace under each of steps 6, 7 and 11, counted from the lowest" in braced
    assert (
        "{stair_brace.width} to the underside" in braced and "{stair_brace.height} upright against the core" in braced
    )
    assert asked_by(subject.wholes[0]) == ("stair.rim_chord", "stair_brace.width", "stair_brace.height")


def test_one_brace_and_a_run_of_them(assembled: Callable[..., Assembled]) -> None:
    assert "the knee brace under step 6, counted" in said(assembled(BRACED.replace("[6, 7, 11]", "[6]")))[2]
    assert "under each of steps 6 to 9, counted" in said(assembled(BRACED.replace("[6, 7, 11]", "[6, 7, 8, 9]")))[2]


def test_a_pile_of_boards_has_neither(assembled: Callable[..., Assembled]) -> None:
    slabs = assembled(SLABS)
    laid, wound, braced = said(slabs)
    assert not wound and not braced and asked_by(slabs.wholes[0]) == ("pile.rim_chord",)
    assert laid == ", where its marks lie over one another"


def test_braces_are_not_tried_dry(assembled: Callable[..., Assembled]) -> None:
    dry, glued = (one for one in proposed_steps(assembled(BRACED), ("paste",)) if one.stage in ("dry_fit", "glue"))
    assert "stair_brace" not in dry.parts and "Leave out the knee braces" in dry.say and "square" not in dry.say
    assert "stair_brace" in glued.parts and "steps 6, 7 and 11" in glued.say
