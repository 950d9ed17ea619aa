"""Parts that look alike: found turned and turned over, told apart by what one has and the other lacks."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import LineKind, Purpose, polyline
from publisher.design import StepPlan
from publisher.geometry import Mark, Part, Region
from publisher.pages.instructions.alike_sketches import alike_pairs, equal, telling_apart
from publisher.pages.instructions.part_sketches import FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.step_acts import acts_before
from publisher.pages.model import Fill, Stroke, Words
from publisher.pages.sheet.draft import Context
from publisher.pages.type import HATCH, TITLE, Setter


def a_part(make_part: Callable[..., Part], letter: str, *points: tuple[float, float]) -> Part:
    region = Region(polyline(points, True, "edge"))
    return make_part(letter.lower(), letter, outline=region, template=region)


def test_small_differences_and_mirror_images_look_alike(make_part: Callable[..., Part]) -> None:
    wide = a_part(make_part, "A", (0, 0), (60, 0), (60, 40), (0, 40))
    turned = a_part(make_part, "B", (0, 0), (43, 0), (43, 60), (0, 60))
    other = a_part(make_part, "C", (0, 0), (80, 0), (80, 40), (0, 40))
    slope = a_part(make_part, "D", (0, 0), (90, 0), (90, 60), (0, 20))
    mirrored = a_part(make_part, "E", (0, 0), (90, 0), (90, 20), (0, 60))
    letters = [(a.letter, b.letter) for a, b in alike_pairs((wide, turned, other, slope, mirrored))]
    assert letters == [("A", "B"), ("D", "E")]
    four = [a_part(make_part, x, (0, 0), (60 + n, 0), (60 + n, 40), (0, 40)) for n, x in enumerate("ABCD")]
    assert len(alike_pairs(four)) == 6


def test_equal_parts_are_no_look_alikes(make_part: Callable[..., Part]) -> None:
    one, same = (a_part(make_part, x, (0, 0), (60, 0), (60, 40), (0, 40)) for x in "AB")
    turned = a_part(make_part, "C", (0, 0), (40, 0), (40, 60), (0, 60))
    assert alike_pairs((one, same, turned)) == ()
    slope, mirrored = (
        a_part(make_part, "D", (0, 0), (90, 0), (90, 60), (0, 20)),
        a_part(make_part, "E", (0, 0), (90, 0), (90, 20), (0, 60)),
    )
    assert not equal(slope, mirrored)
    row = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((5.0, 5.0), (50.0, 5.0))))
    assert [(a.letter, b.letter) for a, b in alike_pairs((one, replace(same, marks=(row,))))] == [("A", "B")]
    assert alike_pairs((one, replace(same, thickness=one.thickness + 3.0))) != ()


def test_every_pair_is_told_apart_once_and_no_step_tells_more_than_it_must(
    make_part: Callable[..., Part], demo: Callable[..., Context]
) -> None:
    """Three parts that look alike are three pairs: two in the first step, the third in the next one that has both in hand; where there is
    no such one, all in the first."""
    context = demo("toll-house")
    parts = tuple(a_part(make_part, x, (0, 0), (60 + n, 0), (60 + n, 40), (0, 40)) for n, x in enumerate("ABC"))
    plain = replace(context.design.steps[0], stage="glue", uses=(), acts=(), picture=None, parts=("a", "b", "c"))
    first, second, other = (replace(plain, place=replace(plain.place, line=n)) for n in (1, 2, 3))

    def told(*steps: StepPlan) -> list[int]:
        own = replace(context, parts=parts, design=replace(context.design, steps=steps))
        return [len(acts_before(own, one)) for one in steps]

    assert told(first, second, other) == [2, 1, 0]
    assert told(first) == [3]
    assert told(first, replace(second, parts=("a",))) == [3, 0]
    assert told(first, replace(second, parts=("a", "b"))) == [2, 1]


def test_what_one_has_and_the_other_lacks_is_black(make_part: Callable[..., Part], setter: Setter) -> None:
    long = a_part(make_part, "A", (0, 0), (64, 0), (64, 40), (0, 40))
    short = a_part(make_part, "B", (0, 0), (60, 0), (60, 40), (0, 40))
    slope = a_part(make_part, "D", (0, 0), (90, 0), (90, 60), (0, 20))
    mirrored = a_part(make_part, "E", (0, 0), (90, 0), (90, 20), (0, 60))
    for pair, blacks in (((long, short), 2), ((slope, mirrored), 0)):
        pen = SketchPen(setter, (0.0, 0.0))
        telling_apart(pen, pair)
        assert sum(isinstance(thing, Fill) and thing.grey == 0.0 for thing in pen.drawn) == blacks
        assert not any(isinstance(thing, Stroke) and thing.style == HATCH for thing in pen.drawn)  # that is waste
        assert [thing.text for thing in pen.drawn if isinstance(thing, Words)] == [part.letter for part in pair]


def test_what_one_lacks_stays_in_the_picture_too(make_part: Callable[..., Part], setter: Setter) -> None:
    """A broad and a high part: each is drawn with the other laid on it, turned, which reaches over it."""
    broad = a_part(make_part, "A", (0, 0), (29.6, 0), (29.6, 20.7), (0, 20.7))
    high = a_part(make_part, "B", (0, 0), (19.4, 0), (19.4, 38.2), (0, 38.2))
    pen = SketchPen(setter, (0.0, 0.0))
    telling_apart(pen, (broad, high))
    reach = [x for thing in pen.drawn if isinstance(thing, Stroke) for path in thing.paths for x, _ in path.points]
    assert min(reach) >= 0.0 and max(reach) <= FIELD_WIDE


def test_parts_too_thin_for_their_letters_have_them_below(make_part: Callable[..., Part], setter: Setter) -> None:
    pair = tuple(a_part(make_part, x, (0, 0), (92 + 4 * n, 0), (92 + 4 * n, 12), (0, 12)) for n, x in enumerate("AB"))
    pen = SketchPen(setter, (0.0, 0.0), 0.8)
    telling_apart(pen, (pair[0], pair[1]))
    letters = {thing.text: thing for thing in pen.drawn if isinstance(thing, Words)}
    outlines = [thing for thing in pen.drawn if isinstance(thing, Stroke) and thing.paths[0].closed]
    assert set(letters) == {"A", "B"}
    low = min(path.box.bottom for thing in outlines[:2] for path in thing.paths)
    assert all(-1.5 <= thing.y <= low - setter.cap(TITLE) for thing in letters.values())
