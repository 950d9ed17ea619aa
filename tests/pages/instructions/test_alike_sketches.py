"""Parts that look alike: found turned and turned over, told apart by what one has and the other lacks."""

from collections.abc import Callable

from publisher.geometry import Part, Region
from publisher.pages.instructions.alike_sketches import MOST_TOLD_APART, alike_pairs, telling_apart
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Stroke, Words
from publisher.pages.type import HATCH, Setter


def a_part(make_part: Callable[..., Part], letter: str, *points: tuple[float, float]) -> Part:
    from publisher.basics import polyline

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
    assert (
        len(alike_pairs([a_part(make_part, x, (0, 0), (60, 0), (60, 40), (0, 40)) for x in "ABCD"])) == MOST_TOLD_APART
    )


def test_what_one_has_and_the_other_lacks_is_hatched(make_part: Callable[..., Part], setter: Setter) -> None:
    long = a_part(make_part, "A", (0, 0), (64, 0), (64, 40), (0, 40))
    short = a_part(make_part, "B", (0, 0), (60, 0), (60, 40), (0, 40))
    slope = a_part(make_part, "D", (0, 0), (90, 0), (90, 60), (0, 20))
    mirrored = a_part(make_part, "E", (0, 0), (90, 0), (90, 20), (0, 60))
    for pair, hatches in (((long, short), 1), ((slope, mirrored), 0)):
        pen = SketchPen(setter, (0.0, 0.0))
        telling_apart(pen, pair)
        assert sum(isinstance(thing, Stroke) and thing.style == HATCH for thing in pen.drawn) == hatches
        assert [thing.text for thing in pen.drawn if isinstance(thing, Words)] == [part.letter for part in pair]
