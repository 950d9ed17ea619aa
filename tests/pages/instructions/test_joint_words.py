"""A step says of its joints what no template shows, with the letters of the parts."""

from collections.abc import Callable
from dataclasses import replace

from publisher.joints.model import EndsAt, InLine, ReachesOver
from publisher.pages.instructions.joint_words import joint_words
from publisher.pages.sheet.draft import Context


def saying(context: Context, **of_joints: object) -> tuple[str, ...]:
    """Return what the second step says where joints are these."""
    nothing = {"ends": (), "lines": (), "reaches": ()}
    return joint_words(replace(context, joined=replace(context.joined, **{**nothing, **of_joints})), 2)


def test_what_ends_at_what_is_said_once_for_all_of_a_board(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    one, other, third = (part.id for part in context.parts[:3])
    a, b, c = (part.letter for part in context.parts[:3])
    assert saying(context, ends=(EndsAt(2, one, third), EndsAt(2, other, third))) == (
        f"{a} and {b} end at the inside face of {c}.",
    )
    assert saying(context, ends=(EndsAt(2, one, third, ("a", "b")),)) == (
        f"{a} ends at the inside face of {c} at a and b.",
    )
    assert saying(context, ends=(EndsAt(2, one, one),)) == (f"One {a} ends at the inside face of the next.",)
    assert saying(context, ends=(EndsAt(1, one, other), EndsAt(2, "no such part", other))) == ()


def test_how_far_something_reaches_is_said_for_all_walls_alike(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    one, other, third = (part.id for part in context.parts[:3])
    a, b, c = (part.letter for part in context.parts[:3])
    over = (ReachesOver(2, one, other, 8.004), ReachesOver(2, one, third, 8.0))
    assert saying(context, reaches=over) == (f"{a} stands out 8 mm (5/16 in) over {b} and {c}, measured along {a}.",)
    level, within = ReachesOver(2, one, other, 0.01), ReachesOver(2, one, third, -3.5)
    assert set(saying(context, reaches=(level, within))) == {
        f"{a} ends level with the outside of {b}.",
        f"{a} ends 3.5 mm (0.14 in) inside the outside of {c}.",
    }


def test_nothing_is_said_of_walls_of_one_letter_over_which_it_reaches_two_ways(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    one, other, _ = (part.id for part in context.parts[:3])
    assert saying(context, reaches=(ReachesOver(2, one, other, 20.0), ReachesOver(2, one, other, 5.0))) == ()


def test_boards_in_one_plane_are_said_to_be_so(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    one, other = (part.id for part in context.parts[:2])
    a, b = (part.letter for part in context.parts[:2])
    assert saying(context, lines=(InLine(2, one, other, ("d",)),)) == (
        f"{a} and {b} lie in one plane, edge to edge at d.",
    )
    assert saying(context, lines=(InLine(2, one, one),)) == (f"{a} and the next {a} lie in one plane, edge to edge.",)
