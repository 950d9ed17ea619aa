"""Panels on faces of others: which face, where, how turned, and how steep it is."""

from collections.abc import Callable
from typing import Any

import pytest

PARTS = (
    "sizes: {board: 5 mm, pitch: 40 deg}\n"
    "parts: {wall: {board: foam, shape: wall_panel}, sign: {board: foam, shape: rectangle}}\n"
    "assembly:\n  house:\n    panels: {front: wall, sign: sign}\n    stands_on: front.bottom\n    joins:\n"
)


def house(*rows: str) -> str:
    return PARTS + "".join(f"      - {row}\n" for row in rows)


@pytest.mark.keeps("design/face")
def test_a_sign_lies_on_a_wall(tried: Callable[..., Any]) -> None:
    said = tried(house("{place: sign, lies_on: front, face: inside, at: [30 mm, 2 in], turn: 10 deg}"))
    (seat,) = said.design.panels[0].seats
    assert said.found == []
    assert (seat.panel, seat.host, seat.face, seat.edge, seat.turn, seat.slope) == (
        "sign",
        "front",
        "inside",
        "",
        10,
        None,
    )
    assert seat.at == pytest.approx((30.0, 50.8))
    assert said.design.parts[1].treatments == ()


@pytest.mark.keeps("design/face")
@pytest.mark.parametrize(
    ("turn", "bevel", "slant"),
    [(0, 40.0, 0.0), (90, 0.0, 40.0), (180, -40.0, 0.0), (270, 0.0, -40.0), (30, 36.005, 18.747)],
)
def test_what_stands_on_a_slope_is_cut_to_it(tried: Callable[..., Any], turn: int, bevel: float, slant: float) -> None:
    """Across the slope the edge is bevelled by it, up the slope it is slanted by it; between: atan(cos φ·tan s), asin(sin φ·sin s)."""
    row = f"{{place: sign, stands_on: front, edge: bottom, at: [30 mm, 20 mm], turn: {turn} deg, slope: pitch}}"
    said = tried(house(row))
    (treatment,) = said.design.parts[1].treatments
    assert said.found == []
    assert (treatment.edge, treatment.bevel, treatment.slant) == (
        "bottom",
        pytest.approx(bevel, abs=1e-3),
        pytest.approx(slant, abs=1e-3),
    )


@pytest.mark.breaks("design/face")
@pytest.mark.parametrize(
    ("row", "words"),
    [
        ("stands_on: front, edge: bottom, at: [0 mm, 0 mm], slope: 0 deg", "on a slope of 0°"),
        ("stands_on: front, edge: bottom, at: [0 mm, 0 mm], slope: 80 deg", "on a slope of 80°"),
        ("stands_on: front, edge: bottom, at: [0 mm, 0 mm], slope: pitch, face: inside", "slope goes with the outside"),
        (
            "stands_on: front, edge: bottom, opening: hole, at: [0 mm, 0 mm]",
            "at means nothing for a post in an opening",
        ),
        ("stands_on: front, edge: bottom, opening: hole, slope: pitch", "slope means nothing for a post in an opening"),
        ("lies_on: front, at: [0 mm, 0 mm], opening: hole", "opening means nothing for a part that lies on its face"),
    ],
)
def test_a_seat_that_cannot_be(tried: Callable[..., Any], row: str, words: str) -> None:
    said = tried(house(f"{{place: sign, {row}}}"))
    assert "design/face" in said.found
    assert any(words in finding.message for finding in said.design.findings)


@pytest.mark.breaks("design/face")
def test_a_panel_is_put_in_one_place(tried: Callable[..., Any]) -> None:
    row = "{place: sign, lies_on: front, at: [30 mm, 20 mm]}"
    assert tried(house(row, row)).found == ["design/face"]


def test_an_edge_on_a_face_is_joined_to_nothing_else(tried: Callable[..., Any]) -> None:
    mitre = "{edges: [front.right, sign.bottom], joint: mitre}"
    stands = "{place: sign, stands_on: front, edge: bottom, at: [30 mm, 20 mm]}"
    assert tried(house(mitre, stands)).found == ["design/edge-joined-twice"]


@pytest.mark.parametrize(
    ("row", "rule"),
    [
        ("place: sing, lies_on: front, at: [0 mm, 0 mm]", "design/unknown-place"),
        ("place: sign, lies_on: frnt, at: [0 mm, 0 mm]", "design/unknown-place"),
        ("place: sign, lies_on: sign, at: [0 mm, 0 mm]", "design/edge-with-itself"),
    ],
)
def test_a_seat_names_two_places(tried: Callable[..., Any], row: str, rule: str) -> None:
    assert rule in tried(house(f"{{{row}}}")).found
