"""A step says of its joints what no template shows, with the letters of the parts; promised before any page."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import SentencePromise
from publisher.joints.joint_words import JOINT, joint_words
from publisher.joints.model import EndsAt, InLine, Joined, LaidSo, LevelAt, PutInto, ReachesEnds, ReachesOver
from publisher.pages.sheet.draft import Context
from tests.proof.refused import refused_by

LETTERS = {"one": "A", "other": "B", "third": "C"}
NOTHING = Joined((), (), (), (), (), ())


def saying(**of_joints: object) -> tuple[str, ...]:
    """Return what the second step says where joints are these."""
    said = tuple(joint_words(replace(NOTHING, **of_joints), LETTERS))
    assert [one.key for one in said] == [f"{JOINT}2:{number}" for number in range(1, len(said) + 1)]
    return tuple(one.text for one in said)


def test_what_ends_at_what_is_said_once_for_all_of_a_board() -> None:
    assert saying(ends=(EndsAt(2, "one", "third"), EndsAt(2, "other", "third"))) == (
        "A and B end at the inside face of C.",
    )
    assert saying(ends=(EndsAt(2, "one", "third", ("a", "b")),)) == ("A ends at the inside face of C at a and b.",)
    assert saying(ends=(EndsAt(2, "one", "one"),)) == ("One A ends at the inside face of the next.",)
    assert saying(ends=(EndsAt(2, "no such part", "other"),)) == ()


def test_each_step_says_its_own() -> None:
    ends = (EndsAt(3, "one", "other"), EndsAt(2, "other", "third"))
    said = {one.key: one.text for one in joint_words(replace(NOTHING, ends=ends), LETTERS)}
    assert said == {
        f"{JOINT}2:1": "B ends at the inside face of C.",
        f"{JOINT}3:1": "A ends at the inside face of B.",
    }


def test_how_far_something_reaches_is_said_for_all_walls_alike_with_its_number() -> None:
    over = (ReachesOver(2, "one", "other", 8.004), ReachesOver(2, "one", "third", 8.0))
    assert saying(reaches=over) == ("A stands out 8 mm (5/16 in) over B and C, measured along its underside.",)
    (said,) = joint_words(replace(NOTHING, reaches=over), LETTERS, "in")
    assert said.text == "A stands out 5/16 in (8 mm) over B and C, measured along its underside."
    assert [(number.value, number.text) for number in said.numbers] == [(8.0, "5/16 in (8 mm)")]
    level, within = ReachesOver(2, "one", "other", 0.01), ReachesOver(2, "one", "third", -3.5)
    assert set(saying(reaches=(level, within))) == {
        "A ends level with the outside of B.",
        "A ends 3.5 mm (0.14 in) inside the outside of C.",
    }


def test_nothing_is_said_of_walls_of_one_letter_over_which_it_reaches_two_ways() -> None:
    assert saying(reaches=(ReachesOver(2, "one", "other", 20.0), ReachesOver(2, "one", "other", 5.0))) == ()


def test_boards_in_one_plane_are_said_to_be_so() -> None:
    assert saying(lines=(InLine(2, "one", "other", ("d",)),)) == ("A and B lie in one plane, edge to edge at d.",)
    assert saying(lines=(InLine(2, "one", "one"),)) == ("A and the next A lie in one plane, edge to edge.",)


def test_what_is_level_is_said_for_all_parts_that_are_so() -> None:
    assert saying(levels=(LevelAt(2, ("third", "one", "other"), "foot"),)) == ("A, B and C stand level at the foot.",)
    assert saying(levels=(LevelAt(2, ("one", "other"), "top", ("a",)),)) == ("A and B are level at the top at a.",)
    assert saying(levels=(LevelAt(2, ("one",), "foot"),)) == ("All A stand level at the foot.",)
    assert saying(levels=(LevelAt(2, ("one", "no such part"), "foot"),)) == ()


def test_which_way_round_layers_and_posts_are_is_said() -> None:
    assert saying(laid=(LaidSo(2, "other", "one", "a"),)) == ("Turn B so that its “a” lies over the “a” of A.",)
    assert saying(put_into=(PutInto(2, "other", "one"),)) == (
        "Push B into A until its end is level with the far face.",
    )
    assert saying(put_into=(PutInto(2, "other", "one", lined=True),))[1:] == (
        "The outside face of B lies in line with the two short lines beside its hole in A.",
    )
    assert saying(laid=(LaidSo(2, "no such part", "one", "a"),), put_into=(PutInto(2, "one", "none"),)) == ()


def test_how_far_something_reaches_over_both_ends_is_said() -> None:
    assert set(saying(past_ends=(ReachesEnds(2, "one", "other", 3.4), ReachesEnds(2, "one", "third", 3.4)))) == {
        "A stands out 3.4 mm (0.13 in) over both ends of B and C.",
    }
    assert saying(past_ends=(ReachesEnds(2, "one", "other", -0.01),)) == ("A ends level with both ends of B.",)
    assert saying(past_ends=(ReachesEnds(2, "one", "other", -2.0),)) == (
        "A ends 2 mm (0.08 in) inside both ends of B.",
    )


@pytest.mark.parametrize("phone", [False, True])
def test_a_page_that_leaves_one_out_is_refused(monkeypatch: pytest.MonkeyPatch, phone: bool) -> None:
    from publisher.pages.instructions import phone_pages, step_block

    right = step_block.said_beside

    def fewer(context: Context, own: int) -> tuple[SentencePromise, ...]:
        return tuple(one for one in right(context, own) if not one.key.startswith(JOINT))

    maker: Callable[..., object] = fewer
    for module in (step_block, phone_pages):
        monkeypatch.setattr(module, "said_beside", maker)
    assert refused_by("toll-house", phone=phone) == {"proof/sentence"}
