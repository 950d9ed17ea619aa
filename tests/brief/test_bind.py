"""Kinds come from the schema, text from the designer, pointers from the path."""

from publisher.brief import Row, Table, Value
from publisher.brief.bind import pointer
from publisher.brief.validate import validate
from publisher.brief.yaml_reader import read_nodes


def _fields(spec: str) -> Table:
    return validate(read_nodes(spec, "spec.yaml")[0], "spec.yaml").fields


def _at(node: Table | Row | Value | None, *path: str | int) -> Value:
    for step in path:
        if isinstance(node, Table):
            node = node.get(str(step))
        elif isinstance(node, Row):
            node = node.items[int(step)]
    assert isinstance(node, Value)
    return node


def test_every_value_has_the_kind_of_its_field(rich: str) -> None:
    fields = _fields(rich)
    expected = {
        ("title",): "text",
        ("version",): "text",
        ("use",): "name",
        ("sizes", "reach"): "quantity",
        ("boards", "foam", "thickness"): "length",
        ("boards", "foam", "sheets", 0): "text",
        ("parts", "step", "spare"): "count",
        ("parts", "step", "with", "turn"): "angle",
        ("parts", "step", "with", "joints"): "count",
        ("parts", "gable", "openings", "door", "width"): "length",
        ("parts", "gable", "openings", "door", "head"): "name",
        ("parts", "gable", "surface", "with", "length"): "length",
        ("parts", "sign", "drawing", "file"): "file",
        ("assembly", "stair", "stack", 0, "shift", 1): "length",
        ("assembly", "stair", "stack", 1, "loose"): "flag",
        ("assembly", "house", "joins", 0, "edges", 0): "name",
        ("needs", 0, "fact"): "fact",
        ("needs", 0, "at_least"): "quantity",
        ("materials", 1, "length"): "fact",
        ("steps", 0, "say"): "text",
        ("steps", 1, "picture", "photo"): "file",
        ("papers", 0): "name",
        ("papers", 1, "margins", 1): "length",
        ("fonts", 0): "file",
    }
    assert {path: _at(fields, *path).kind for path in expected} == expected


def test_text_is_kept_as_written(rich: str) -> None:
    fields = _fields(rich)
    assert fields.text("version") == "1.10"
    assert _at(fields, "sizes", "layers").text == "012"
    assert _at(fields, "parts", "gable", "name").text == "1984"
    assert _at(fields, "steps", 0, "say").text == "Turn each layer: {stair.layers} in all.\nLet it dry."


def test_entries_keep_their_order_and_place(rich: str) -> None:
    sizes = _fields(rich).table("sizes")
    assert [entry.key for entry in sizes.entries] == ["board", "reach", "turn", "layers", "span"]
    reach = sizes.entries[1]
    assert (reach.place.line, reach.place.column, reach.place.pointer) == (10, 22, "/sizes/reach")
    assert _at(sizes, "reach").place.column == 29


def test_pointers_follow_their_standard() -> None:
    """RFC 6901, section 3: ~ is written ~0 and / is written ~1."""
    assert pointer(("a/b", 0, "m~n")) == "/a~1b/0/m~0n"
    assert pointer(()) == ""


def test_each_file_field_says_its_kind_of_file(rich: str) -> None:
    bound = validate(read_nodes(rich, "spec.yaml")[0], "spec.yaml")
    assert sorted((value.text, kind) for value, kind in bound.files) == [
        ("letters.ttf", "font"),
        ("photo.png", "picture"),
        ("sign.svg", "drawing"),
    ]


def test_an_escape_cannot_smuggle_a_hidden_character(good: str) -> None:
    spec = good.replace("title: Landing", 'title: "Land\\u202eing"').replace("board: 5 mm", 'board: "5\\n mm"')
    bound = validate(read_nodes(spec, "spec.yaml")[0], "spec.yaml")
    assert [f.check for f in bound.findings] == ["brief/hidden-character", "brief/hidden-character"]
