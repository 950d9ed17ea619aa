"""What pages must show of sides, sentences and pictures is promised where it is known."""

import ast
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import publisher
from publisher.basics import DrawingPromise, LineKind, NumberPromise, Place, Purpose, SidePromise, polyline
from publisher.brief import SpecFile
from publisher.design import Blank, BracePlan, Fact, PicturePlan, TextPlan
from publisher.geometry import BendStretch, BentForm, Mark
from publisher.joints.model import DrawingLabel, Placed
from publisher.joints.promised import is_handed, pictures_of, sentences_of, sides_of, with_promises
from publisher.joints.put_together import put_together

HERE = Place("spec.yaml", 1, 1)
STANDING = (1.0, 0.0, 0.0, 0.0, 0.0, 0.0, -1.0, 0.0, 0.0, 1.0, 0.0, 0.0)  # the part's y points up in the assembly
LYING = (1.0, 0.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 1.0, 0.0)
MADE_ELSEWHERE = {
    "RowPromise",
    "LayoutPromise",
    "PlacePromise",
    "MeasurePromise",
    "CutPromise",
    "SidePromise",
    "SentencePromise",
    "NumberPromise",
    "DrawingPromise",
    "PrintPromise",
    "WordPromise",
    "FigurePromise",
    "SheetsPromise",
    "WorkPromise",
}


def as_drawn(sides: tuple[SidePromise, ...]) -> list[SidePromise]:
    return [side for side in sides if not side.mirrored]


def test_handedness_is_that_of_the_outline(make: SimpleNamespace) -> None:
    assert is_handed(make.stair_layer(notch_at=19.0))
    assert not is_handed(make.wall("wall", 120, 50))
    assert not is_handed(make.disc())


def test_a_handed_piece_may_not_be_flipped_but_as_the_template_of_both(make: SimpleNamespace) -> None:
    handed, plain = make.stair_layer(notch_at=19.0), make.wall("wall", 120, 50)
    design = make.design()
    assert [side.flip for side in as_drawn(sides_of(design, (handed, plain), ()))] == [False, True]
    assert [side.flip for side in sides_of(design, (handed,), ())] == [False, True]  # the mirror image is turned over


def test_a_knee_brace_has_no_side(make: SimpleNamespace) -> None:
    """Handed by its outline; as it stands on edge, turned over it is the same brace."""
    knee = make.polygon("s_brace", [(0, 0), (2, 0), (40, 28), (40, 30), (0, 30)])
    stack = replace(
        make.stack("s", ("step", 9, 20.0, (0, 0))), brace=BracePlan(40.0, 30.0, (), True, make.here, part="s_brace")
    )
    for stacks, side in (((stack,), ("either", True)), ((), ("", False))):
        (found, _) = sides_of(make.design(stacks=stacks), (knee,), ())
        assert (found.face, found.flip) == side


def test_a_panel_shows_its_outside_and_its_mirror_image_the_inside(make: SimpleNamespace) -> None:
    plain = make.wall("long", 120, 50)
    level = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, 25.0), (120.0, 25.0))))
    wall = replace(plain, marks=(level,))
    design = make.design(panels=(make.panels("box", {"front": "long"}, "front.bottom"),))
    assert [side.face for side in sides_of(design, (wall,), ())] == ["outside", "inside"]
    assert [side.face for side in sides_of(make.design(), (wall,), ())] == ["", ""]
    assert [side.face for side in sides_of(design, (plain,), ())] == ["", ""], (
        "steps say that either may be its outside"
    )


def test_a_strip_slit_on_its_hollow_side_is_drawn_on_that_side(make: SimpleNamespace) -> None:
    """The lines to cut along lie on the face that is up; a drawing that is not its own mirror image stays the outside."""
    slits = tuple(
        Mark(LineKind.SCORE, Purpose.BEND, polyline(((x, 0.0), (x, 50.0))), name="slit") for x in (20.0, 60.0, 100.0)
    )
    form = BentForm((BendStretch(0.0, 120.0, 90.0),), "outside", 3.3, 3, "paper")
    strip = replace(make.wall("strip", 120, 50), marks=slits, bending=form)
    design = make.design(panels=(make.panels("arch", {"under": "strip"}, "under.bottom"),))
    lettered = Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((10.0, 5.0),)), text="a")
    for piece, faces in (
        (strip, ["inside", "outside"]),
        (replace(strip, marks=(*slits, lettered)), ["outside", "inside"]),
        (replace(strip, bending=replace(form, keeps="inside")), ["outside", "inside"]),
        (replace(strip, edges=(replace(strip.edges[0], bevel=45.0), *strip.edges[1:])), ["outside", "inside"]),
    ):
        assert [side.face for side in sides_of(design, (piece,), ())] == faces


def test_a_part_has_a_top_when_it_stands_in_every_place(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)
    for matrices, top in (((STANDING,), True), ((LYING,), False), ((STANDING, LYING), False), ((), False)):
        placed = (("box", tuple(Placed(f"p{i}", "wall", m) for i, m in enumerate(matrices))),)
        assert [side.top for side in as_drawn(sides_of(make.design(), (wall,), placed))] == [top]


def test_each_number_of_a_sentence_is_promised_with_its_value(make: SimpleNamespace) -> None:
    text = TextPlan(("It stands ", Blank("wall.height", HERE), " high."), HERE)
    design = replace(make.design(), summary=text)
    (summary,) = [s for s in sentences_of(design, (Fact("wall.height", 92.3, "length"),)) if s.key == "summary"]
    assert summary.text == "It stands 92.3 mm (3.63 in) high."
    assert summary.numbers == (NumberPromise("wall.height", 92.3, "length", "92.3 mm (3.63 in)"),)


def test_the_picture_of_a_step_is_promised_with_its_lines(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)
    pictures = tuple(PicturePlan(kind, name, 0, None, HERE) for kind, name in (("part", "wall"), ("whole", "nothing")))
    design = make.design(pictures=pictures)
    joined = with_promises(design, (wall,), put_together(design, (wall,)))
    (drawing,) = (one for one in joined.pictures if not one.drawing.startswith("scene:"))
    assert (drawing.key, drawing.drawing, drawing.width, drawing.height) == ("step:1:picture", "part:wall", 120.0, 50.0)
    assert len(drawing.lines) == 1 and drawing.fine == ()
    ((letter, at),) = drawing.labels
    assert letter == wall.letter and 20.0 < at[0] < 100.0 and abs(at[1] - 25.0) < 1.0, (
        "on the part, where it has most room"
    )
    assert pictures_of(design, ()) == ()


def test_the_picture_of_the_cover_is_promised_without_letters(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)
    design = replace(make.design(), cover=PicturePlan("part", "wall", 0, None, HERE))
    drawings = put_together(design, (wall,)).drawings
    lettered = tuple(replace(one, labels=(DrawingLabel("A", (60.0, 25.0)),)) for one in drawings)
    (promise,) = pictures_of(design, with_promises(design, (wall,), put_together(design, (wall,))).drawings)
    assert (promise.key, promise.drawing) == ("cover:picture", "part:wall") and promise.lines
    assert all(promise.labels == () for promise in pictures_of(design, lettered))
    photo = SpecFile("quay.jpg", "picture", b"", 600, 400)
    shown = replace(design, cover=PicturePlan("photo", "quay.jpg", 0, None, HERE), files=(photo,))
    assert pictures_of(shown, ()) == (DrawingPromise("cover:picture", "photo:quay.jpg", 600.0, 400.0, room=50.0),)


def test_no_maker_of_pages_makes_what_another_room_promises() -> None:
    """What the page says and what the proof expects would be wrong together."""
    made = {
        f"{path.name}: {node.func.id}"
        for path in (Path(publisher.__file__).parent / "pages").rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in MADE_ELSEWHERE
    }
    assert made == set()
