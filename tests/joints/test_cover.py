"""What the cover says is worked out here: which assembly the design is, its sizes, its pictures."""

from dataclasses import replace
from types import SimpleNamespace

from publisher.joints.cover import cover_drawings, cover_sentences, whole_names
from publisher.joints.promised import with_promises
from publisher.joints.put_together import put_together


def test_sizes_difficulty_and_hours_are_promised_with_their_numbers(make: SimpleNamespace) -> None:
    walls = make.wall("long", 120, 50), make.wall("short", 80, 50)
    plan = make.panels(
        "box", {"front": "long", "right": "short", "back": "long", "left": "short"}, "front.bottom",
        make.join("front.right", "right.left"), make.join("right.right", "back.left"), make.join("back.right", "left.left"),
    )  # fmt: skip
    design = make.design(panels=(plan,))
    joined = with_promises(design, walls, put_together(design, walls))
    said = {one.key: one for one in cover_sentences(design, joined, "in")}
    assert said["cover:box:width"].text.endswith("in (120 mm)")
    assert [n.value for n in said["cover:box:height"].numbers] == [50.0]
    assert "3 glued joints" in said["cover:difficulty"].text
    assert {"cover:box:depth", "cover:hours"} < set(said)
    pictures = {one.drawing: one for one in cover_drawings(design, joined.drawings)}
    assert set(pictures) == {"whole:box", "front:box", "above:box"}
    assert (pictures["front:box"].width, pictures["front:box"].height) == (120.0, 50.0)
    assert (pictures["above:box"].width, pictures["above:box"].height) == (120.0, 80.0)


def test_of_several_assemblies_each_says_its_sizes_in_a_line(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)
    plans = tuple(make.panels(name, {"front": "wall"}, "front.bottom") for name in ("left_side", "right_side"))
    design = make.design(panels=plans)
    joined = with_promises(design, (wall,), put_together(design, (wall,)))
    assert whole_names(design, joined.drawings) == ("left_side", "right_side")
    (left, _) = (one for one in cover_sentences(design, joined) if one.key.endswith(":sizes"))
    assert left.text.startswith("Left side: 120 mm")
    assert not [d.name for d in joined.drawings if d.name.startswith(("front:", "above:"))]
    assert cover_sentences(design, replace(joined, effort=None)) == ()
