"""The range of boards with which a lid goes into its walls, held against solids of boards of that thickness."""

from pathlib import Path

import pytest
from manifold3d import Manifold

from publisher.joints.assembled import Assembled
from publisher.joints.budget import board_ranges, lip_meetings, meetings_of
from publisher.joints.model import Meeting
from publisher.joints.put_together import assemble
from publisher.joints.wholes import LIFT_PLAY
from tests.random_designs.solids import block, box_of, shared, united
from tests.reference.solids import build

T = 5.0
WIDE, DEEP, HIGH = 120.0, 90.0, 40.0
INSET, PLAY = 10.0, 0.3  # of the slots of a box by tabs and slots


def inside(kind: str, wide: float, deep: float, t: float) -> tuple[float, float]:
    """How wide and deep (mm) it is inside walls of board ``t`` thick whose parts were drawn for board of 5 mm."""
    if kind == "mitre":  # the outsides of all four are drawn
        return wide - 2 * t, deep - 2 * t
    between = deep - 2 * T  # the short walls, which stand between the long ones
    middles = wide - 2 * (INSET + T / 2)  # from the middle of a slot in a long wall to that of the other
    return (wide - 2 * t if kind == "butt" else middles - t), between


def walls(kind: str, wide: float, deep: float, t: float) -> Manifold:
    """The four walls about the axis."""
    x, y = (half / 2 for half in inside(kind, wide, deep, t))
    long = [block((-wide / 2, at, 0.0), (wide / 2, at + t, HIGH)) for at in (-y - t, y)]
    short = [block((at, -y, 0.0), (at + t, y, HIGH)) for at in (-x - t, x)]
    return united([*long, *short])


def joins(kind: str, x: str = "") -> str:
    f, r, b, l = (f"{x}{name}" for name in ("front", "right", "back", "left"))  # noqa: E741 - the left wall
    more = {
        "mitre": "",
        "butt": ", runs_through: {0}",
        "tab_and_slot": f", tabs_on: {{1}}, tabs: 1, inset: {INSET} mm, play: {PLAY} mm",
    }[kind]
    corners = [(f, "right", r, "left"), (b, "left", r, "right"), (b, "right", l, "left"), (f, "left", l, "right")]
    return "\n".join(
        f"      - {{edges: [{a}.{i}, {c}.{j}], joint: {kind}{more.format(a, c)}}}" for a, i, c, j in corners
    )


def box_with(kind: str, lid: str) -> str:
    return f"""
sizes: {{board: {T} mm}}
parts:
  long: {{name: Long, board: foam, shape: wall_panel, with: {{width: {WIDE} mm, height: {HIGH} mm}}}}
  short: {{name: Short, board: foam, shape: wall_panel, with: {{width: {DEEP} mm, height: {HIGH} mm}}}}
{lid}
  box:
    panels: {{front: long, right: short, back: long, left: short}}
    stands_on: front.bottom
    joins:
{joins(kind)}
  all: {{things: {{box: {{assembly: box}}, lid: {{assembly: lid, on_top_of: [box], lifts_off: true}}}}}}
"""


def block_lid(wide: float, deep: float) -> str:
    """A cover and a block under it that goes in."""
    return f"""
  lip: {{name: Lip, board: foam, shape: rectangle, with: {{width: {wide} mm, height: {deep} mm}}}}
  cover: {{name: Cover, board: foam, shape: rectangle, with: {{width: {WIDE + 2} mm, height: {DEEP + 2} mm}}}}
assembly:
  lid: {{stack: [{{part: lip, at: centre}}, {{part: cover, at: centre}}]}}"""


def cap(kind: str, wide: float, deep: float) -> str:
    """Walls that go over the box, and a cover that they stand under."""
    return f"""
  cap_long: {{name: Cap long, board: foam, shape: wall_panel, with: {{width: {wide} mm, height: 20 mm}}}}
  cap_short: {{name: Cap short, board: foam, shape: wall_panel, with: {{width: {deep} mm, height: 20 mm}}}}
  cover: {{name: Cover, board: foam, shape: wall_panel, with: {{width: {wide} mm, height: {deep} mm}}}}
assembly:
  lid:
    panels: {{cfront: cap_long, cright: cap_short, cback: cap_long, cleft: cap_short, cover: cover}}
    stands_on: cfront.bottom
    joins:
{joins(kind, "c")}
      - {{edges: [cover.bottom, cfront.top], joint: butt, runs_through: cover}}
      - {{edges: [cover.top, cback.top], joint: butt, runs_through: cover}}"""


def made(tmp_path: Path, text: str) -> Assembled:
    built = build(text, tmp_path)
    assert built.parts, [str(found) for found in built.findings]
    return assemble(built.design, tuple(built.parts.values()))[0]


def lifts(subject: Assembled) -> list[Meeting]:
    return [met for met in meetings_of(subject) if met.name.startswith("lift.")]


def end_of(subject: Assembled) -> float:
    """The greatest thickness of board with which all that lifts off goes in."""
    return min(met.takes_board()[1] for met in lifts(subject))


def block_goes_in(kind: str, t: float, wide: float, deep: float) -> bool:
    """Whether a block of this size, with the room that paint takes round it, goes into a box of this board."""
    x, y = (wide + LIFT_PLAY) / 2, (deep + LIFT_PLAY) / 2
    return shared(walls(kind, WIDE, DEEP, t), block((-x, -y, 0.0), (x, y, HIGH))) < 1e-6


ROOMS = {kind: inside(kind, WIDE, DEEP, T) for kind in ("mitre", "butt", "tab_and_slot")}


@pytest.mark.parametrize("kind", ROOMS)
@pytest.mark.parametrize("plays", [(1.5, 1.5), (1.1, 4.0), (4.0, 1.1)])
def test_a_block_goes_into_a_box_of_the_thickest_board_said_and_of_no_thicker(
    tmp_path: Path, kind: str, plays: tuple[float, float]
) -> None:
    """Between butted long walls, and between walls with slots, the room across stays as long as the walls between are drawn."""
    size = ROOMS[kind][0] - plays[0], ROOMS[kind][1] - plays[1]
    subject = made(tmp_path, box_with(kind, block_lid(*size)))
    end, none_across = end_of(subject), kind != "mitre"
    assert all(block_goes_in(kind, t, *size) for t in (T, min(end, 8.0) - 0.02))
    assert not block_goes_in(kind, end + 0.02, *size)
    assert end == pytest.approx(
        T
        + (plays[0] if none_across else min(plays)) / (1 if kind == "tab_and_slot" else 2)
        - LIFT_PLAY / (1 if kind == "tab_and_slot" else 2)
    )


@pytest.mark.parametrize("outer", ["mitre", "butt"])
@pytest.mark.parametrize("inner", ROOMS)
@pytest.mark.parametrize("plays", [(1.6, 1.6), (1.2, 5.0), (5.0, 1.2)])
def test_a_cap_goes_over_a_box_of_the_thickest_board_said_and_of_no_thicker(
    tmp_path: Path, outer: str, inner: str, plays: tuple[float, float]
) -> None:
    """Both are of the same board: of thicker board a box of butted walls is deeper, and a cap narrower inside."""
    size = WIDE + 2 * T + plays[0], DEEP + 2 * T + plays[1]
    subject = made(tmp_path, box_with(inner, cap(outer, *size)))
    end = end_of(subject)

    def cap_goes_over(t: float) -> bool:
        """Whether the box goes in with paint all round: its hull, a little larger."""
        (x, y, _), (to_x, to_y, _) = box_of(walls(inner, WIDE, DEEP, t))
        p = LIFT_PLAY / 2
        return shared(walls(outer, *size, t), block((x - p, y - p, 0.0), (to_x + p, to_y + p, HIGH))) < 1e-6

    assert cap_goes_over(T) and cap_goes_over(end - 0.02) and not cap_goes_over(end + 0.02)


def test_paper_that_prints_small_leaves_the_board_as_thick_as_it_is(tmp_path: Path) -> None:
    """At the least print scale a mitred box round a block has the play that paint takes: s·(W − L) − 2t."""
    size = ROOMS["mitre"][0] - 1.2, ROOMS["mitre"][1] - 3.0
    (met, *_) = lifts(made(tmp_path, box_with("mitre", block_lid(*size))))
    scale = met.scale_for(met.unprinted_least)
    assert scale * (WIDE - size[0]) - 2 * T == pytest.approx(LIFT_PLAY)
    assert met.printed == pytest.approx(WIDE - size[0]) and met.boards == pytest.approx(2.0)


def test_layers_have_the_same_room_of_any_board(tmp_path: Path) -> None:
    text = f"""
sizes: {{board: {T} mm}}
parts:
  rim: {{name: Rim, board: foam, shape: ring, with: {{radius: 50 mm, hole_radius: 40 mm}}}}
  lip: {{name: Lip, board: foam, shape: disc, with: {{radius: 39.25 mm}}}}
  cover: {{name: Cover, board: foam, shape: disc, with: {{radius: 50 mm}}}}
assembly:
  lid: {{stack: [{{part: lip, at: centre}}, {{part: cover, at: centre}}]}}
  box: {{stack: [{{part: rim, count: 4, at: centre}}]}}
  all: {{things: {{box: {{assembly: box}}, lid: {{assembly: lid, on_top_of: [box], lifts_off: true}}}}}}
"""
    (met,) = lifts(made(tmp_path, text))
    assert (met.printed, met.boards, met.board) == (pytest.approx(1.5, abs=0.02), 0.0, "")


@pytest.mark.parametrize(("fails", "sure"), [((0.05,), True), ((0.05, -0.05), False)])
def test_where_no_other_board_tells_how_often_it_is_in_a_play_nothing_is_claimed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fails: tuple[float, ...], sure: bool
) -> None:
    """Thinner board tells the same as thicker; where neither can be put together, the board of the spec is all that is known."""
    x, y = (size - 1.5 for size in ROOMS["mitre"])
    subject = made(tmp_path, box_with("mitre", block_lid(x, y)))
    known = board_ranges(meetings_of(subject), subject.design.boards)[0]
    real = lip_meetings.whole_of_thicker_board

    def other(*given: object) -> object:
        return None if given[-1] in fails else real(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(lip_meetings, "whole_of_thicker_board", other)
    found = board_ranges(meetings_of(subject), subject.design.boards)[0]
    if sure:
        assert (found.least, found.most) == pytest.approx((known.least, known.most), abs=1e-3)
        return
    spread = subject.design.boards[0].spread
    assert (found.least, found.most) == pytest.approx((T - spread, T + spread))
    (lift, *_) = lifts(subject)
    assert lift.unsure == ("foam",) and "is not known" in lift.what
    assert lift.unprinted_least == pytest.approx(LIFT_PLAY + 2 * spread) and lift.printed == pytest.approx(
        1.5, abs=0.01
    )
