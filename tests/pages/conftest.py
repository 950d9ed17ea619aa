"""A small design built by hand, as the rooms above would hand it over, and contexts made of it."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from publisher.basics import Path as OutlinePath
from publisher.basics import Place, polyline
from publisher.design import Board, Design, EdgeTreatment, Parameter, PartPlan, SheetSize, SlotRow, TextPlan
from publisher.geometry import Part, Region, make_parts
from publisher.joints import Joined, Meeting, budget_of, sides_of
from publisher.material import BoardNeeds
from publisher.pages.sheet.draft import Body, Context, Numbers
from publisher.pages.sheet.paper_table import paper_for
from publisher.pages.type.fonts import Faces, face, faces_of
from publisher.pages.type.text import Setter

HERE = Place("spec.yaml", 3, 5)


def a_ring(*points: tuple[float, float]) -> OutlinePath:
    return polyline(points, True, "edge")


def a_part(part_id: str = "wall", letter: str = "A", width: float = 60.0, height: float = 40.0, **changes: Any) -> Part:
    region = Region(a_ring((0, 0), (width, 0), (width, height), (0, height)))
    part = Part(
        id=part_id,
        letter=letter,
        name=part_id.title(),
        board="foam",
        thickness=5.0,
        shape="rectangle",
        outline=region,
        template=region,
        openings=(),
        marks=(),
        edges=(),
        count=2,
        spare=0,
        mirrored=0,
        turning="any",
        trace_allowance=0.0,
        place=HERE,
    )
    return replace(part, **changes)


def a_design(*, slots: bool = True, **changes: Any) -> Design:
    rows = (SlotRow(2, 10.0, 5.0, 0.3),) if slots else ()
    treatment = EdgeTreatment("right", 0.0, 0.0, None, rows, ("a",), HERE)
    plan = PartPlan(
        "wall", "A", "Wall", "foam", 5.0, "rectangle", (), (), None, None, (treatment,), 2, 0, 0, "any", 0.4, HERE
    )
    board = Board("foam", 5.0, 0.2, "bare", (SheetSize("20 x 30 in", 508.0, 762.0),), 1.0, 3.0, "none", HERE)
    design = Design(
        slug="toll-house",
        variant="",
        variant_title="",
        title="Toll house",
        version="1.0.0",
        designer="Ebbwater Patterns",
        licence="CC-BY-NC-4.0",
        summary=TextPlan(("A house.",), HERE),
        language="en",
        use="trace",
        sizes=(),
        boards=(board,),
        parts=(plan,),
        stacks=(),
        panels=(),
        needs=(),
        tools=(),
        materials=(),
        steps=(),
        papers=(),
        fonts=(),
        files=(),
        findings=(),
    )
    return replace(design, **changes)


def a_context(
    paper: str = "a4",
    design: Design | None = None,
    parts: tuple[Part, ...] | None = None,
    meetings: tuple[Meeting, ...] = (),
) -> Context:
    plan = design or a_design()
    shown = (a_part(),) if parts is None else parts
    joined = Joined((), (), (), meetings, (), (), budget_of(meetings), sides_of(plan, shown, ()))
    return Context(plan, shown, joined, BoardNeeds((), (), ()), paper_for(plan, paper), Setter(faces_of(plan)))


def some_numbers(page: int = 1, total: int = 9) -> Numbers:
    return Numbers(page, total, (), (), ())


def words_of(body: Body) -> str:
    return " ".join(thing.text for thing in body.drawn if hasattr(thing, "text"))


def drawn_part(shape: str, letter: str = "A", **given: Any) -> Part:
    """A part as the geometry room draws it: lengths, angles and counts of the shape are keyword arguments, as are the plan's fields."""
    own = {k: given.pop(k) for k in list(given) if k in PartPlan.__dataclass_fields__}
    values = {name: value if isinstance(value, str) else float(value) for name, value in given.items()}
    sizes = tuple(Parameter(name, value, "", HERE) for name, value in values.items())
    plan = PartPlan(
        f"part_{letter.lower()}",
        letter,
        shape.replace("_", " ").title(),
        "foam",
        5.0,
        shape,
        sizes,
        (),
        None,
        None,
        (),
        2,
        0,
        0,
        "any",
        0.4,
        HERE,
    )
    parts, findings = make_parts(a_design(parts=(replace(plan, **own),)))
    assert not findings
    return parts[0]


@pytest.fixture
def draw() -> Callable[..., Part]:
    return drawn_part


@pytest.fixture
def stair_layer() -> Part:
    return drawn_part(
        "spiral_stair_layer",
        name="Stair layer",
        count=14,
        spare=1,
        core_radius=30,
        reach=92,
        step_angle=40,
        turn=20,
        notch=4,
        joints=27,
    )


@pytest.fixture
def make_part() -> Callable[..., Part]:
    return a_part


@pytest.fixture
def make_design() -> Callable[..., Design]:
    return a_design


@pytest.fixture
def make_context() -> Callable[..., Context]:
    return a_context


@pytest.fixture
def numbers() -> Callable[..., Numbers]:
    return some_numbers


@pytest.fixture
def words() -> Callable[[Body], str]:
    return words_of


@pytest.fixture
def setter() -> Setter:
    return Setter(Faces(face("regular"), face("bold")))
