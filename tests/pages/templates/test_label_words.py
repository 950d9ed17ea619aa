"""What a template says about itself."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import LineKind, Purpose, polyline
from publisher.design import Design, EdgeRef, PanelPlace, PanelPlan
from publisher.geometry import GLUED_BEHIND, BendStretch, BentForm, Fold, Mark, Part
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.label_words import says


def test_a_stair_layer_says_all_that_a_cutter_asks(make_context: Callable[..., Context], stair_layer: Part) -> None:
    context = make_context(parts=(stair_layer,))
    said = says(context, stair_layer)
    assert (said.cut, said.copies) == ("cut\u00a014\u00a0+\u00a01\u00a0spare",) * 2
    assert said.boxes == (14, 0, 1)
    assert said.board == "foam 5.00 mm (0.197 in)"
    assert said.size == ("finished 122.0\u00a0×\u00a089.1\u00a0mm", "(4.80 × 3.51 in)")
    assert (said.sides, said.face) == (("THIS SIDE UP", "Do not flip."), "the arrow climbs")
    assert said.notes == ("Trace, lift, cut on the pencil line.",)
    pasted = make_context(parts=(stair_layer,), design=replace(context.design, use="paste"))
    assert says(pasted, stair_layer, 1).notes == ()


def test_overall_size_is_that_of_the_finished_piece(
    make_context: Callable[..., Context], draw: Callable[..., Part]
) -> None:
    disc = draw("disc", radius=50)
    assert disc.template.outer.points[0] != disc.outline.outer.points[0]
    said = says(make_context(parts=(disc,)), disc)
    assert said.size[0] == "finished 100.0\u00a0×\u00a0100.0\u00a0mm"


def panel_design(make_design: Callable[..., Design], part: Part) -> Design:
    place = make_design().parts[0].place
    plan = PanelPlan("box", (PanelPlace("front", part.id, place),), EdgeRef("front", "bottom"), (), (), place)
    return make_design(panels=(plan,))


def test_a_panel_says_which_face_is_drawn(
    make_context: Callable[..., Context], make_design: Callable[..., Design], make_part: Callable[..., Part]
) -> None:
    level = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, 5.0), (10.0, 5.0))))
    part = replace(make_part(), marks=(level,))
    context = make_context(design=panel_design(make_design, part), parts=(part,))
    assert (says(context, part).sides, says(context, part).face) == (("THIS SIDE UP",), "the outside face")
    assert says(context, part, 2, True).face == "the inside face"
    assert says(make_context(parts=(part,)), part).face == ""


def test_a_folded_piece_says_how_its_grooves_are_cut(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = replace(make_part(), folded=("wall", "side"), folds=(Fold(90.0, 10.0), Fold(120.0, 5.7735)))
    assert says(make_context(parts=(part,)), part).notes == (
        "Trace, lift, cut on the pencil line.",
        "Fold 90°: V-groove from inside, 10.0 mm (0.39 in) wide; leave the outer skin whole.",
        "Fold 120°: V-groove from inside, 5.77 mm (0.23 in) wide; leave the outer skin whole.",
    )


def test_a_piece_of_which_either_side_will_do_says_none(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part()
    context = make_context(parts=(part,))
    sides = tuple(replace(side, face="either") for side in context.joined.sides)
    said = says(replace(context, joined=replace(context.joined, sides=sides)), part)
    assert (said.sides, said.face) == ((), "")


def test_mirrored_copies_are_told_and_ticked_apart(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(count=5, mirrored=2, spare=1)
    said = says(make_context(parts=(part,)), part)
    assert said.boxes == (3, 2, 1)
    assert "3 as drawn, 2 mirrored: turn the template over for those." in said.notes
    assert said.sides == ("THIS SIDE UP",)


def test_a_copy_to_paste_says_which_it_is(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    part = make_part(count=3, spare=1)
    context = make_context(parts=(part,))
    assert says(context, part, 2).copies == "cut\u00a03\u00a0+\u00a01\u00a0spare: this is 2\u00a0of\u00a04"
    assert says(context, part, 2).cut == "2\u00a0of\u00a04"  # what stays on the piece does not ask for more of them
    assert says(context, part, 4).copies == "cut\u00a03\u00a0+\u00a01\u00a0spare: this is 4\u00a0of\u00a04, a spare"
    assert says(context, part, 2, True).notes[-1] == "Mirror image: drawn turned over."


def test_a_part_that_stands_asks_to_copy_its_top(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    arrow = Mark(LineKind.DRAW, Purpose.TOP, polyline(((5.0, 5.0), (5.0, 12.0))))
    context = make_context()
    assert "Copy “top” to the foam." in says(context, replace(make_part(), marks=(arrow,))).notes
    assert "Copy “top” to the foam." not in says(context, make_part()).notes


def test_what_lies_on_the_other_face_is_said_to(
    make_context: Callable[..., Context], make_part: Callable[..., Part], make_design: Callable[..., Design]
) -> None:
    """Slits and glue lines of the inside face on a template that shows the outside."""
    form = BentForm((BendStretch(0.0, 60.0, 90.0),), "outside", 3.3, 12, "paper")
    behind = Mark(LineKind.REFERENCE, Purpose.LAP, polyline(((5.0, 5.0),)), name=GLUED_BEHIND, text="inside face")
    part = replace(make_part(), bending=form, marks=(behind,))
    context = make_context(design=panel_design(make_design, part), parts=(part,))
    assert says(context, part).notes[1:] == (
        "Glue paper over the whole outside face before you bend it.",
        "Slit the inside face, 3.30 mm (0.13 in) deep; carry the ends of the lines round to it.",
        "Glue lines: carry their ends round the edges to the inside face.",
    )
    assert says(context, part, 2, True).notes[1] == "Slit the inside face, 3.30 mm (0.13 in) deep."
