"""How a complaint names and places what it is about."""

from publisher.brief.bind import KeyPath as Steps
from publisher.brief.complaint import Complaint
from publisher.brief.nodes import Mapping
from publisher.brief.validate import find
from publisher.brief.yaml_reader import read_nodes

SPEC = "format: 2\nsizes:\n  reach: 92 mm\ntools: [pins, [file]]\n"


def _complaint(path: Steps) -> tuple[Complaint, Mapping]:
    top, _ = read_nodes(SPEC, "spec.yaml")
    node, key = find(top, path)
    return Complaint("type", "string", None, {}, path, node, key, False, top, "spec.yaml"), top


def test_a_field_is_named_by_its_key_and_an_item_by_its_number() -> None:
    assert _complaint(())[0].name == "the spec"
    assert _complaint(("sizes", "reach"))[0].name == "“reach”"
    assert _complaint(("tools", 1))[0].name == "item 2 of “tools”"


def test_a_value_and_a_key_have_their_own_places() -> None:
    complaint, top = _complaint(("sizes", "reach"))
    place = complaint.place()
    assert (place.line, place.column, place.pointer) == (3, 10, "/sizes/reach")
    sizes, _ = find(top, ("sizes",))
    assert isinstance(sizes, Mapping)
    at_key = _complaint(("sizes",))[0].place(sizes.key("reach"))
    assert (at_key.line, at_key.column, at_key.pointer) == (3, 3, "/sizes/reach")


def test_what_is_nowhere_stands_at_the_top() -> None:
    place = _complaint(("colour",))[0].place()
    assert (place.line, place.column, place.pointer) == (1, 1, "/colour")
