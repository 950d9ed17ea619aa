"""Outlines from a designer's drawing, at the size that it states; what is not read is refused by name."""

from collections.abc import Callable
from math import pi

import pytest

from publisher.basics import LineKind, Place
from publisher.design import DrawingPlan, EdgeTreatment, PartPlan
from publisher.geometry import Part, area, polygon
from publisher.geometry.parts import make_part

Plan = Callable[..., PartPlan]
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 50 40">'
Lines = tuple[tuple[str, tuple[str, ...]], ...]


Draw = Callable[..., tuple[Part | None, str]]


def test_a_drawing_keeps_its_stated_size(draw: Draw, sound: Callable[[Part], None]) -> None:
    part, found = draw('<rect id="outline" x="5" y="5" width="20" height="10"/>', width=40.0, trace_allowance=0.4)
    assert part is not None and found == ""
    sound(part)
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 40.0, 20.0))  # two mm a unit, moved to the origin
    assert area(part.template) == pytest.approx(39.2 * 19.2)
    assert part.edges == ()


def test_groups_holes_circles_and_marks(draw: Draw, sound: Callable[[Part], None]) -> None:
    body = """
      <g transform="translate(3 4)"><g id="outline" transform="rotate(90 10 10)">
        <title>sign</title>
        <path d="M0 0h20v20h-20z M5 5v10h10v-10z"/>
      </g>
      <circle id="nail" cx="2.5" cy="2.5" r="1"/>
      <polyline id="letters" points="6,2 14,2"/></g>"""
    part, found = draw(body, lines=(("cut", ("outline", "nail")), ("draw", ("letters",))))
    assert part is not None, found
    sound(part)
    assert len(part.outline.holes) == 2
    assert area(part.outline) == pytest.approx(4.0 * (400.0 - 100.0 - pi))
    assert {round(run.radius, 9) for hole in part.outline.holes for run in hole.runs if run.centre} == {2.0}
    (mark,) = part.marks
    assert mark.kind is LineKind.DRAW and mark.points[0] == pytest.approx((12.0, 36.0))


def test_rounded_rectangles_and_ellipses(draw: Draw, sound: Callable[[Part], None]) -> None:
    part, _ = draw('<rect id="outline" width="20" height="10" rx="2"/>', trace_allowance=0.4)
    assert part is not None
    sound(part)
    assert area(part.outline) == pytest.approx(4.0 * (200.0 - (4.0 - pi) * 4.0))
    assert {round(run.radius, 9) for run in part.template.outer.runs if run.centre} == {3.6}
    part, _ = draw('<ellipse id="outline" cx="20" cy="20" rx="20" ry="10"/>', trace_allowance=0.4)
    assert part is not None
    sound(part)
    assert area(part.outline) == pytest.approx(4.0 * pi * 200.0, rel=3e-4)


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ('<rect id="other" width="9" height="9"/>', "no element with the id “outline”"),
        ('<rect id="outline" width="9" height="9"/><rect id="outline"/>', "2 elements have the id"),
        ('<path id="outline" d="M0 0H20V10"/>', "is open: 44.721 mm lie between its start and its end"),
        ('<path id="outline" d="M0 0"/>', "encloses nothing"),
        ('<path id="outline" d="M0 0 L5 0Z"/>', "encloses nothing"),
        ('<path id="outline" d="M0 0 L5 0 10 0Z"/>', "crosses itself"),
        ('<path id="outline" d="M0 0 L5"/>', "path data cannot be read"),
        ('<path id="outline" d="M0 0 L20 20 20 0 0 20z"/>', "crosses itself"),
        ('<path id="outline" d="M0 0h9v9h-9z M20 0h5v5h-5z"/>', "has a piece that lies apart"),
        ('<path id="outline" d="M0 0h30v30h-30z M5 5h20v20h-20z M9 9h5v5h-5z"/>', "lies loose in a hole"),
        ('<text id="outline">Sign</text>', "a <text> is no outline"),
        ('<defs><rect id="outline" width="9" height="9"/></defs>', "stands in a <defs>"),
        ('<rect id="outline" width="9" height="9" clip-path="url(#c)"/>', "has a clip-path"),
        ('<rect id="outline" width="9" height="9" style="transform:scale(2)"/>', "has a transform in its style"),
        ('<rect id="outline" width="9" height="9" transform="wobble(2)"/>', "the transform “wobble”"),
        ('<rect id="outline" width="9" height="9" display="none"/>', "encloses nothing"),
        ('<path id="outline" d="M0 0H1e12V10z"/>', "path data cannot be read"),
        ("<g>", "not well-formed XML"),
    ],
)
def test_what_is_not_read_is_said(draw: Draw, body: str, words: str) -> None:
    part, found = draw(body)
    assert part is None and words in found


def test_sizes_are_asserted_not_made(draw: Draw) -> None:
    square = '<rect id="outline" width="20" height="10"/>'
    part, found = draw(square, width=30.0)
    assert part is None and "is 40 mm wide in the drawing, but the spec says 30 mm" in found
    part, found = draw(square, head='<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 50 40">')
    assert part is None and "does not say how large it is" in found
    part, found = draw(square, head='<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="40mm" viewBox="0 0">')
    assert part is None and "viewBox" in found
    part, found = draw(square, lines=(("paint", ("outline",)),))
    assert part is None and "“paint” is no kind of line" in found


def test_a_rounding_gap_is_bridged(draw: Draw, sound: Callable[[Part], None]) -> None:
    part, found = draw('<path id="outline" d="M0 0H20V10H0V0.03"/>')
    assert part is not None, found
    sound(part)


def test_joins_and_missing_files(draw: Draw, plan: Plan, treatment: Callable[..., EdgeTreatment]) -> None:
    part, found = draw('<rect id="outline" width="20" height="10"/>', treatments=(treatment("right", 5.0),))
    assert part is None and "(a drawing) has no edge “right”" in found
    drawing = DrawingPlan("sign.svg", "outline", None, None, (), Place("spec.yaml", 70, 5))
    part, (finding,) = make_part(plan("", {}, drawing=drawing), None)
    assert part is None and "sign.svg was not found" in finding.message
