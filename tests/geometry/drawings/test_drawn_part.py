"""Parts from a designer's drawing, at the size that it states; a good and a bad case for each rule of drawings."""

from collections.abc import Callable
from math import cos, pi, sin

import pytest

from publisher.basics import Arc, Finding, LineKind, Place, Rule
from publisher.design import DrawingPlan, EdgeTreatment, PartPlan
from publisher.geometry import Part, area, polygon
from publisher.geometry.making.parts import make_part
from publisher.geometry.rules.drawings import DRAWING_RULES

Draw = Callable[..., tuple[Part | None, tuple[Finding, ...]]]


def wheel(teeth: int) -> str:
    """A round outline of this many edges, none of which can be spared: every other corner lies 0.4 mm farther in."""
    turns = (2.0 * pi * k / teeth for k in range(teeth))
    corners = ((20 + (18 - k % 2 * 0.2) * cos(t), 20 + (18 - k % 2 * 0.2) * sin(t)) for k, t in enumerate(turns))
    return f'<path id="outline" d="M{" L".join(f"{x:.5f},{y:.5f}" for x, y in corners)}Z"/>'


SQUARE = '<rect id="outline" width="20" height="10"/>'

# body and what else to say: first a good case, then a bad one
CASES: dict[str, tuple[dict[str, object], dict[str, object]]] = {
    "geometry/unreadable-drawing": (
        {"body": '<path id="outline" d="M0 0H20V10Z"/>'},
        {"body": '<path id="outline" d="M0 0H20V10Z X"/>'},
    ),
    "geometry/not-in-drawing": ({"body": SQUARE}, {"body": SQUARE, "wanted": "outlin"}),
    "geometry/outline-open": (
        {"body": '<path id="outline" d="M0 0H20V10Z"/>'},
        {"body": '<path id="outline" d="M0 0H20V10"/>'},
    ),
    "geometry/gap-mended": (
        {"body": '<path id="outline" d="M0 0H20V10H0V0"/>'},
        {"body": '<path id="outline" d="M0 0H20V10H0V0.03"/>'},
    ),
    "geometry/drawn-twice": ({"body": SQUARE}, {"body": f'<g id="outline">{SQUARE.replace("outline", "a")}<path d="M0 0H20V10H0Z"/></g>'}),
    "geometry/drawing-crosses": (
        {"body": '<path id="outline" d="M0 0H20V10H0Z"/>'},
        {"body": '<path id="outline" d="M0 0L20 10V0L0 10Z"/>'},
    ),
    "geometry/drawing-size": ({"body": SQUARE, "width": 40.0, "height": 20.0}, {"body": SQUARE, "width": 40.2}),
    "geometry/drawing-size-unsaid": (
        {"body": SQUARE, "head": 'viewBox="0 0 50 40"', "width": 20.0 * 25.4 / 96.0},
        {"body": SQUARE, "head": 'viewBox="0 0 50 40"'},
    ),
    "geometry/line-outside": (
        {"body": f'{SQUARE}<path id="l" d="M2 5H18"/>', "lines": (("draw", ("l",)),)},
        {"body": f'{SQUARE}<path id="l" d="M2 5H28"/>', "lines": (("draw", ("l",)),)},
    ),
    "geometry/clone-left-out": ({"body": SQUARE}, {"body": f'{SQUARE}<use href="#outline" x="25"/>'}),
    "geometry/drawing-too-fine": ({"body": wheel(2_900)}, {"body": wheel(3_100)}),
}  # fmt: skip
TABLED = set(CASES)


@pytest.mark.parametrize("rule", DRAWING_RULES, ids=lambda rule: rule.id)
def test_good_and_bad_case(draw: Draw, rule: Rule) -> None:
    good, bad = CASES[rule.id]
    part, found = draw(**good)
    assert part is not None and found == ()
    part, found = draw(**bad)
    assert [f.check for f in found] == [rule.id]
    assert (part is None) is (rule.severity == "error")


def test_findings_name_the_spec_the_line_the_place_and_the_element(draw: Draw) -> None:
    _, (finding,) = draw('\n<path id="outline" d="M0 0H20V10"/>')
    assert finding.place == Place("spec.yaml", 70, 5) and finding.subject == "part p"
    assert finding.message.startswith("sign.svg, line 3: the outline “outline” is open: 44.72 mm lie between its ends")
    assert "x 0.00, y 80.00 mm and x 40.00, y 60.00 mm" in finding.message
    assert finding.value == pytest.approx(44.72, abs=0.01) and finding.limit == 0.1


def test_a_drawing_keeps_its_stated_size(draw: Draw, sound: Callable[[Part], None]) -> None:
    part, found = draw('<rect id="outline" x="5" y="5" width="20" height="10"/>', width=40.0, trace_allowance=0.4)
    assert part is not None and found == ()
    sound(part)
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 40.0, 20.0))  # two mm a unit, moved to the origin
    assert area(part.template) == pytest.approx(39.2 * 19.2)
    assert part.edges == ()


def test_up_is_up(draw: Draw) -> None:
    part, _ = draw('<path id="outline" d="M0 0 H20 V10 Z"/>')
    assert part is not None
    corners = {(round(x, 6), round(y, 6)) for x, y in part.outline.outer.points}
    assert corners == {(0.0, 20.0), (40.0, 20.0), (40.0, 0.0)}


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
    assert {round(run.radius, 9) for hole in part.outline.holes for run in hole.edges if isinstance(run, Arc)} == {2.0}
    assert {run.name for hole in part.outline.holes for run in hole.edges} == {"path", "nail"}
    (mark,) = part.marks
    assert mark.kind is LineKind.DRAW and mark.name == "letters" and mark.path.points[0] == pytest.approx((12.0, 36.0))


def test_rounded_rectangles_keep_true_arcs(draw: Draw, sound: Callable[[Part], None]) -> None:
    part, _ = draw('<rect id="outline" width="20" height="10" rx="2"/>', trace_allowance=0.4)
    assert part is not None
    sound(part)
    assert area(part.outline) == pytest.approx(4.0 * (200.0 - (4.0 - pi) * 4.0))
    assert {run.name for run in part.outline.outer.edges} == {"outline"}
    assert {round(run.radius, 9) for run in part.template.outer.edges if isinstance(run, Arc)} == {3.6}


def test_an_outline_by_layer_and_lines_by_class_and_stroke(draw: Draw, sound: Callable[[Part], None]) -> None:
    body = f"""<g xmlns:p="urn:p" p:label="Plate">{SQUARE}</g>
      <path class="bend" d="M10 1V9"/><path class="bend" d="M15 1V9"/>
      <path stroke="#0a0" stroke-dasharray="2 1" d="M2 5H8"/><path stroke="#00aa00" d="M2 6H8"/>"""
    lines = (("fold", (".bend",)), ("draw", ("stroke:dashed",)), ("glue", ("stroke:#00AA00",)))
    part, found = draw(body, wanted="layer:Plate", lines=lines)
    assert part is not None and found == ()
    sound(part)
    kinds = [mark.kind for mark in part.marks]
    assert kinds == [LineKind.FOLD, LineKind.FOLD, LineKind.DRAW, LineKind.GLUE, LineKind.GLUE]


def test_the_only_closed_line_needs_no_name(draw: Draw) -> None:
    part, found = draw(f'{SQUARE}<path d="M1 1H5"/>', wanted="")
    assert part is not None and found == ()
    part, found = draw(f'{SQUARE}<circle id="c" r="5"/>', wanted="")
    assert part is None and "which of 2 closed lines" in found[0].message and "outline, c" in found[0].hint


def test_straight_stretches_can_be_joined(draw: Draw, treatment: Callable[..., EdgeTreatment]) -> None:
    body = '<path id="outline" d="M5 30 H15 H45 V10 L5 10Z"/>'
    part, found = draw(body, treatments=(treatment("edge_2", 5.0),))
    assert part is not None, found
    assert [e.name for e in part.edges] == ["edge_1", "edge_2", "edge_3", "edge_4"]
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 75.0, 40.0))  # edge_2, the right one, gives way
    part, found = draw(body, treatments=(treatment("right", 5.0),))
    assert part is None and "has no edge “right”" in found[0].message


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ('<rect id="outline" width="9" height="9"/><rect id="outline"/>', "several elements have the id"),
        ('<path id="outline" d="M0 0"/>', "encloses nothing"),
        ('<path id="outline" d="M0 0 L5 0Z"/>', "encloses nothing"),
        ('<path id="outline" d="M0 0 L5 0 10 0Z"/>', "runs back over itself"),
        (
            '<path id="outline" d="M0 0 L20 20 20 0 0 20z"/>',
            "crosses itself or runs back over itself at x 20.00, y 60.00",
        ),
        ('<path id="outline" d="M0 0h9v9h-9z M20 0h5v5h-5z"/>', "falls into 2 pieces"),
        (
            '<g id="outline" fill="none"><rect width="9" height="9"/><rect x="5" y="5" width="9" height="9"/></g>',
            "cross at x",
        ),
        ('<text id="outline">Sign</text>', "is a <text>, which has no outline"),
        ('<defs><rect id="outline" width="9" height="9"/></defs>', "stands in a <defs> and is drawn nowhere"),
        ('<rect id="outline" width="9" height="9" display="none"/>', "is hidden"),
        ('<g visibility="hidden"><rect id="outline" width="9" height="9"/></g>', "is hidden"),
        ('<rect id="outline" width="9" height="9" transform="wobble(2)"/>', "the transform “wobble”"),
        ('<path id="outline" d="M0 0H1e12V10z"/>', "too large"),
        ("<g>", "not well-formed XML"),
    ],
)
def test_what_is_no_outline_is_said(draw: Draw, body: str, words: str) -> None:
    part, found = draw(body)
    assert part is None and words in found[0].message


def test_a_missing_file(plan: Callable[..., PartPlan]) -> None:
    drawing = DrawingPlan("sign.svg", "outline", None, None, (), Place("spec.yaml", 70, 5))
    part, (finding,) = make_part(plan("", {}, drawing=drawing), None)
    assert part is None and "sign.svg: the file was not found" in finding.message


def test_a_drawing_follows_the_scale_of_the_spec_with_all_that_is_drawn_on_it(draw: Draw) -> None:
    body = f'{SQUARE}<circle id="c" cx="5" cy="5" r="2"/><path id="l" d="M10 2V8"/>'
    lines = (("cut", ("c",)), ("draw", ("l",)))
    part, found = draw(body, lines=lines, scale=1.5, width=60.0, height=30.0)
    assert part is not None and found == ()
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 60.0, 30.0))
    assert area(part.outline) == pytest.approx(1800.0 - 36.0 * pi)
    assert part.marks[0].path.length == pytest.approx(18.0)
    plain, _ = draw(body, lines=lines)
    assert plain is not None and area(part.outline) == pytest.approx(2.25 * area(plain.outline))


def test_another_size_names_the_scale_that_would_fit(draw: Draw) -> None:
    for scale, fits in ((1.0, "scale: 1.25"), (2.0, "scale: 1.25")):
        _, (finding,) = draw(SQUARE, width=50.0, scale=scale)
        assert fits in finding.hint


def test_a_scale_counts_for_a_page_that_says_no_size(draw: Draw) -> None:
    part, found = draw(SQUARE, head="", scale=96.0 / 25.4, width=20.0)
    assert part is not None and found == ()


@pytest.mark.parametrize(
    ("body", "area_mm2", "said"),
    [
        (f'{SQUARE}<use id="right" href="#outline" x="25"/>', 800.0, "“right”"),
        (f'{SQUARE}<g id="copies"><use href="#outline" x="25"/><use href="#outline" y="15"/></g>', 800.0, "<use> in line 2, <use>"),
        ('<g id="outline"><rect width="9" height="9"/><rect id="b" x="9" width="9" height="9"/></g><use href="#b" x="30"/>', 648.0, ""),
        ('<g id="outline"><rect id="b" width="9" height="9"/><use href="#b" x="9"/></g><use href="#outline" y="20"/>', 648.0, "<use>"),
        (f'<defs>{SQUARE}</defs><use id="one" href="#outline" x="3"/>', 800.0, ""),
    ],
    ids=["one", "two", "of a part of it", "with a clone of its own", "of what is only defined"],
)  # fmt: skip
def test_a_clone_of_the_outline_is_no_second_piece(draw: Draw, body: str, area_mm2: float, said: str) -> None:
    part, found = draw(body)
    assert part is not None
    assert area(part.outline) == pytest.approx(area_mm2)
    assert [f.check for f in found] == ["geometry/clone-left-out"] * bool(said)
    assert all(said in f.message and "count: " in f.hint for f in found)


def test_clones_of_what_is_drawn_nowhere_are_to_be_told_apart(draw: Draw) -> None:
    copies = '<use id="a" href="#outline"/><use id="b" href="#outline" x="25"/>'
    part, (finding,) = draw(f"<defs>{SQUARE}</defs>{copies}")
    assert part is None and "2 clones" in finding.message and "“a”, “b”" in finding.hint
    assert draw(f"<defs>{SQUARE}</defs>{copies}", wanted="b")[0] is not None


def test_clones_of_a_hole_are_holes(draw: Draw) -> None:
    body = f'{SQUARE}<circle id="h" cx="4" cy="5" r="1"/><use href="#h" x="5"/><use href="#h" x="10"/>'
    part, found = draw(body, lines=(("cut", ("h",)),))
    assert part is not None and found == () and len(part.outline.holes) == 3


LABELLED = (
    '<g xmlns:i="urn:x" i:label="Sheet 1"><path id="path833" i:label="Left wall" d="M0 0H20V10Z"/></g>'
    '<path id="p2" data-name="Roof" d="M0 20H20V30"/><path id="p3" i:label="Twin" xmlns:i="urn:x" d="M30 0h9v9z"/>'
    '<path id="p4" i:label="Twin" xmlns:i="urn:x" d="M30 20h9v9z"/><path i:id="No id" xmlns:i="urn:x" d="M30 31h9v8z"/>'
)


@pytest.mark.parametrize("wanted", ["path833", "#path833", "Left wall", "Sheet 1", "layer:Sheet 1", "No id"])
def test_a_label_of_the_drawing_program_is_a_name(draw: Draw, wanted: str) -> None:
    part, found = draw(LABELLED, wanted=wanted)
    assert part is not None and found == ()


@pytest.mark.parametrize(
    ("wanted", "words"),
    [
        ("Roof", "the outline “Roof, id p2” is open"),
        ("Twin", "say which by its id: p3, p4"),
        ("Left wal", "did you mean “Left wall”? it has: p2 (“Roof”), p3 (“Twin”), p4 (“Twin”), path833 (“Left wall”)"),
    ],
)
def test_errors_say_the_id_beside_the_label(draw: Draw, wanted: str, words: str) -> None:
    part, (finding,) = draw(LABELLED, wanted=wanted)
    assert part is None
    assert words in f"{finding.message} {finding.hint}"


def test_an_id_comes_before_a_label(draw: Draw) -> None:
    body = f'{SQUARE}<rect id="x" data-name="outline" width="5" height="5"/>'
    part, _ = draw(body)
    assert part is not None and area(part.outline) == pytest.approx(800.0)
