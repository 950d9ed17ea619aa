"""The record: its documented form, stable, sorted, and true to the pack."""

import json
from collections.abc import Callable
from dataclasses import replace
from hashlib import sha256
from math import dist, inf, radians, sin
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from publisher.basics import Arc, Line, circle, closed_path
from publisher.brief import InputFile, Inputs
from publisher.design import Fact, Size
from publisher.geometry import Region
from publisher.joints import Meeting
from publisher.pages import Pack, compose, record_of, record_schema, with_attachment
from publisher.pages.record.document import region_paths
from publisher.pages.sheet.draft import Context

Make = Callable[..., Context]
DOCS = Path(__file__).parents[3] / "docs"
INPUTS = Inputs("toll-house", (InputFile.of("spec.yaml", b"title: Toll house"),), (), (), (("publisher", "0.1.0"),))


def packed(context: Context, inputs: Inputs = INPUTS) -> Pack:
    return compose(context.design, context.parts, context.joined, context.needs, context.paper, inputs)


def document(context: Context, inputs: Inputs = INPUTS) -> bytes:
    pack = packed(context, inputs)
    return record_of(context.design, context.parts, context.joined, context.needs, pack, inputs)


def rich(make_context: Make) -> Context:
    context = make_context("letter", meetings=(Meeting("wall.slot", "wall", "slot of part A", 5.3, 5.2, 5.3),))
    place = context.design.parts[0].place
    facts = (Fact("stair.headroom", inf, "length"), Fact("stair.height", 70.000000001, "length"))
    sizes = (Size("board", 4.7625, "length", "3/16 in", place),)
    return replace(context, joined=replace(context.joined, facts=facts), design=replace(context.design, sizes=sizes))


def faults(record: Any) -> list[str]:
    return [error.json_path for error in Draft202012Validator(record_schema()).iter_errors(record)]


def test_it_is_sorted_stable_json_of_the_documented_form(make_context: Make) -> None:
    one, two = document(rich(make_context)), document(rich(make_context))
    assert one == two
    said = json.loads(one)
    assert said["format"] == 2
    assert list(said) == sorted(said)
    assert one.endswith(b"}\n")
    assert faults(said) == []


def test_the_schema_is_a_schema_and_refuses_another_form(make_context: Make) -> None:
    Draft202012Validator.check_schema(record_schema())
    said = json.loads(document(rich(make_context)))
    assert faults(said | {"format": 1}) == ["$.format"]
    assert faults(said | {"more": 1}) == ["$"]
    said["pages"][0]["ink"] = "short"
    del said["parts"][0]["letter"]
    assert sorted(faults(said)) == ["$.pages[0].ink", "$.parts[0]"]


def test_every_part_of_the_record_is_in_the_docs() -> None:
    words = (DOCS / "record.md").read_text(encoding="utf-8")
    properties = record_schema()["properties"]
    missing = [name for name in (*properties, *properties["pages"]["items"]["properties"]) if f"`{name}`" not in words]
    assert missing == []


def test_sizes_facts_and_meetings(make_context: Make) -> None:
    said = json.loads(document(rich(make_context)))
    assert said["sizes"] == [{"name": "board", "value": 4.7625, "kind": "length", "expression": "3/16 in"}]
    assert said["facts"] == [
        {"name": "stair.headroom", "value": None, "kind": "length", "open": True},
        {"name": "stair.height", "value": 70, "kind": "length"},
    ]
    assert said["meetings"][0]["printed"] == 5.3


def test_what_it_was_made_of(make_context: Make) -> None:
    said = json.loads(document(rich(make_context)))
    digest = sha256(b"title: Toll house").hexdigest()
    assert said["inputs"] == {"files": [{"name": "spec.yaml", "size": 17, "sha256": digest}], "sets": []}
    assert said["versions"] == [{"name": "publisher", "version": "0.1.0"}]
    assert said["pack"]["kind"] == "standard"
    assert INPUTS.pack_digest("", "letter").startswith(said["pack"]["id"])
    trial = json.loads(document(rich(make_context), replace(INPUTS, sets=(("board", "4.8 mm"),))))
    assert (trial["pack"]["kind"], trial["inputs"]["sets"]) == ("trial", [{"name": "board", "value": "4.8 mm"}])


def test_outlines_are_lines_and_arcs_by_their_edges(make_context: Make, stair_layer: Any, draw: Any) -> None:
    (path,) = json.loads(document(make_context(parts=(stair_layer,))))["parts"][0]["template"]
    edges = path["edges"]
    assert edges[-1]["to"] == path["start"]
    ends = [path["start"], *(edge["to"] for edge in edges)]
    arcs = [(start, edge) for start, edge in zip(ends, edges, strict=False) if "radius" in edge]
    assert {edge["name"] for edge in edges} <= {edge.name for edge in stair_layer.template.outer.edges}
    assert len(arcs) >= 2
    for start, arc in arcs:
        assert dist(start, arc["centre"]) == pytest.approx(arc["radius"], abs=2e-4)
        assert dist(arc["to"], arc["centre"]) == pytest.approx(arc["radius"], abs=2e-4)
        chord = 2 * arc["radius"] * sin(radians(abs(arc["sweep"])) / 2)
        assert dist(start, arc["to"]) == pytest.approx(chord, abs=1e-3)
    (disc,) = json.loads(document(make_context(parts=(draw("disc", radius=30),))))["parts"][0]["outline"]
    assert sum(edge["sweep"] for edge in disc["edges"]) == 360
    assert disc["edges"][-1]["to"] == disc["start"]


def test_pages_carry_what_a_scan_needs(make_context: Make) -> None:
    said = json.loads(document(rich(make_context)))
    assert said["pack"]["paper"]["name"] == "letter"
    templates = [p for p in said["pages"] if p["kind"] == "templates"]
    assert templates
    for page in templates:
        assert page["corner_marks"]["at"][0] == [6.35, 12.7]
        assert [line["length"] for line in page["rulers"] if line["kind"] == "calibration"] == [50] * 4
        assert page["code"]["text"].split("/")[1] == str(page["number"])
        box = page["code"]["box"]
        assert round(box[2] - box[0], 6) == 14.5
        assert page["code"]["modules"] == 29
        assert page["parts"][0]["part"] == "wall"
        assert [thing["kind"] for thing in page["furniture"]] == ["header", "footer", "code"]
        assert "Wall" in page["text"]
        assert not any(line.startswith(("page ", "version ")) for line in page["text"])


def test_it_is_attached(make_context: Make) -> None:
    pack = packed(rich(make_context))
    attached = with_attachment(pack, b"{}")
    assert pack.attachments == ()
    assert [(a.name, a.mime, a.data) for a in attached.attachments] == [("facts.json", "application/json", b"{}")]
    (promise,) = attached.promises.attachments
    assert (promise.name, promise.sha256) == ("facts.json", sha256(b"{}").hexdigest())
    assert pack.promises.attachments == ()


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_page_more_elsewhere_changes_no_ink_and_another_size_does(
    make_context: Make, make_part: Callable[..., Any], paper: str
) -> None:
    def inks(*parts: Any) -> dict[str, str]:
        pages = packed(make_context(paper, parts=parts)).pages
        return {page.title: page.ink for page in pages if page.kind == "templates"}

    high = make_part("wall", "A", 150.0, 170.0)
    one, two = inks(high), inks(high, make_part("deck", "B", 150.0, 171.0))
    shared = set(one) & set(two)
    assert shared
    assert all(one[title] == two[title] for title in shared)
    other = inks(replace(high, template=make_part("wall", "A", 150.2, 170.0).template))
    assert all(one[title] != other[title] for title in set(one) & set(other))


def test_whole_circles_are_arcs_that_go_round_once_the_way_they_are_drawn() -> None:
    region = Region(circle((100.0, 50.0), 30.0, "rim"), (circle((100.0, 50.0), 10.0, "hole", ccw=False),))
    sweeps = [sum(edge["sweep"] for edge in path["edges"]) for path in region_paths(region)]  # type: ignore[index, call-overload, misc]
    assert sweeps == [360, -360]


def test_a_quarter_disc_is_two_lines_and_an_arc_of_90_degrees() -> None:
    foot, back = Line("foot", (0.0, 0.0), (20.0, 0.0)), Line("back", (0.0, 20.0), (0.0, 0.0))
    bow = Arc("bow", (20.0, 0.0), (0.0, 20.0), (0.0, 0.0), 20.0, 90.0)
    assert region_paths(Region(closed_path((foot, bow, back)))) == [
        {
            "start": [0, 0],
            "edges": [
                {"name": "foot", "to": [20, 0]},
                {"name": "bow", "to": [0, 20], "centre": [0, 0], "radius": 20, "sweep": 90},
                {"name": "back", "to": [0, 0]},
            ],
        }
    ]
