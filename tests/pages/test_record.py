"""The record: format 1, stable, sorted, and true to the packs."""

import json
from collections.abc import Callable
from dataclasses import replace
from hashlib import sha256
from math import inf

from publisher.design import Fact, Size
from publisher.joints import Meeting
from publisher.pages import compose, facts_document, with_attachment
from publisher.pages.sheet.draft import Context

Make = Callable[..., Context]


def document(context: Context) -> bytes:
    pack = compose(context.design, context.parts, context.joined, context.needs, context.paper)
    return facts_document(context.design, context.parts, context.joined, context.needs, (pack,))


def rich(make_context: Make) -> Context:
    context = make_context("letter", meetings=(Meeting("wall.slot", "wall", "slot of part A", 5.3, 5.2, 5.3),))
    place = context.design.parts[0].place
    facts = (Fact("stair.headroom", inf, "length"), Fact("stair.height", 70.000000001, "length"))
    sizes = (Size("board", 4.7625, "length", "3/16 in", place),)
    return replace(context, joined=replace(context.joined, facts=facts), design=replace(context.design, sizes=sizes))


def test_it_is_sorted_stable_json_of_format_1(make_context: Make) -> None:
    one, two = document(rich(make_context)), document(rich(make_context))
    assert one == two
    said = json.loads(one)
    assert said["format"] == 1
    assert list(said) == sorted(said)
    assert one.endswith(b"}\n")


def test_sizes_facts_and_meetings(make_context: Make) -> None:
    said = json.loads(document(rich(make_context)))
    assert said["sizes"] == [{"name": "board", "value": 4.7625, "kind": "length", "expression": "3/16 in"}]
    assert said["facts"] == [
        {"name": "stair.headroom", "value": None, "kind": "length", "open": True},
        {"name": "stair.height", "value": 70, "kind": "length"},
    ]
    assert said["meetings"][0]["printed"] == 5.3
    assert said["parts"][0]["template"] == [[[0, 0], [60, 0], [60, 40], [0, 40]]]


def test_pages_carry_the_marks_that_a_scan_needs(make_context: Make) -> None:
    said = json.loads(document(rich(make_context)))
    (pack,) = said["packs"]
    assert pack["paper"]["name"] == "letter"
    templates = [p for p in pack["pages"] if p["kind"] == "templates"]
    assert templates
    for page in templates:
        assert page["corner_marks"]["at"][0] == [6.35, 12.7]
        assert [side["length"] for side in page["calibration"]] == [50] * 4
        assert page["code"][0]["text"].split("|")[4] == str(page["number"])
        box = page["code"][0]["box"]
        assert round(box[2] - box[0], 6) == 14.5
        assert page["tiles"][0]["part"] == "wall"


def test_it_is_attached(make_context: Make) -> None:
    context = rich(make_context)
    pack = compose(context.design, context.parts, context.joined, context.needs, context.paper)
    attached = with_attachment(pack, b"{}")
    assert pack.attachments == ()
    assert [(a.name, a.mime, a.data) for a in attached.attachments] == [("facts.json", "application/json", b"{}")]
    (promise,) = attached.promises.attachments
    assert (promise.name, promise.sha256) == ("facts.json", sha256(b"{}").hexdigest())
    assert pack.promises.attachments == ()
