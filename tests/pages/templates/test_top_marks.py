"""Parts that stand get an arrow that points up, clear of openings and slots; parts that lie get none."""

from collections.abc import Callable
from dataclasses import replace

import pytest
import shapely

from publisher.basics import LineKind, Purpose
from publisher.geometry import PLATE, Part, polygon
from publisher.joints import sides_of
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.top_marks import FORMS, with_top_marks


def arrows(part: Part | None) -> list[tuple[tuple[float, float], ...]]:
    assert part is not None
    assert all(m.kind is LineKind.DRAW for m in part.marks if m.purpose is Purpose.TOP)  # to be drawn on the foam
    return [m.path.points for m in part.marks if m.purpose is Purpose.TOP]


@pytest.mark.parametrize(
    ("name", "stand", "lie"),
    [
        ("toll-house", ("gable", "side", "roof"), ()),
        ("quay", ("side", "rib"), ("deck",)),
        ("lock-stair", (), ("step",)),
    ],
)
def test_what_stands_has_one_arrow_and_what_lies_has_none(
    demo: Callable[..., Context], name: str, stand: tuple[str, ...], lie: tuple[str, ...]
) -> None:
    context = demo(name)
    parts = {p.id: p for p in with_top_marks(context.parts, context.joined)}
    for part_id in stand:
        part = parts[part_id]
        ((foot, tip),) = arrows(part)
        assert tip[0] == foot[0] and tip[1] - foot[1] == pytest.approx(FORMS[0].length)
        body = polygon(part.template)
        line = shapely.LineString((foot, tip))
        assert body.contains(line) and body.boundary.distance(line) > 1.5
        assert (tip[0] - body.bounds[0]) / (body.bounds[2] - body.bounds[0]) < (
            0.25 if part_id == "side" and name == "quay" else 0.6
        )
        assert tip[1] > body.bounds[1] + 0.6 * (body.bounds[3] - body.bounds[1])  # near its top
        assert [m.text for m in part.marks if m.purpose is Purpose.NAME] == ["top"]
    for part_id in lie:
        assert arrows(parts[part_id]) == []


def test_a_part_with_no_room_is_left_as_it_is(demo: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    joined = demo("toll-house").joined
    small = make_part()
    assert with_top_marks((small,), joined) == (small,)  # it stands nowhere


def test_pieces_stand_where_their_whole_does_and_plates_do_not(demo: Callable[..., Context]) -> None:
    """A plate is glued behind its seam; nobody looks for its upper end."""
    context = demo("quay")
    side, deck = (context.part(name) for name in ("side", "deck"))
    assert side is not None and deck is not None
    parts = (
        replace(side, id="side_1", whole="side"),
        replace(side, id="side_plate_1", whole="side", shape=PLATE),
        replace(deck, id="deck_1", whole="deck"),
    )
    joined = replace(context.joined, sides=sides_of(context.design, parts, context.joined.placed))
    assert [len(arrows(part)) for part in with_top_marks(parts, joined)] == [1, 0, 0]
