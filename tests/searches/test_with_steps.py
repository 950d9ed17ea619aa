"""True designs with the steps that the tool proposes, with tools, materials and a licence, on small papers and in German too: built, with
all that is given beside the packs, and never refused."""

from pathlib import Path
from random import Random

import pytest

from publisher import api
from tests.random_designs.make import true_design
from tests.random_designs.tool import UNTOLD, written
from tests.rehearsal.tried import with_steps
from tests.searches.profile import seeds

PAPERS = ("a5", "a4", "letter", "a3", "common", "a2", "tabloid")
SELDOM = ("a1", "arch_d", "legal", "arch_c", "a0")  # sheets for plans among them
SELDOM_FROM = 410_000  # seeds before keep the papers with which they were found
LICENCES = ("personal use", "sell what you build", "CC-BY-4.0", "LicenseRef-mine")
TOOLS = (
    "craft_knife", "steel_rule", "cutting_mat", "square", "pencil", "pins", "file", "brushes", "blunt_pencil", "flat_board",
    "books", "bottle", "hot_glue_gun", "hot_wire_cutter", "spray_can",
)  # fmt: skip
MATERIALS = (
    "thin_paper", "thin_card", "stick_glue", "white_glue", "hot_glue", "spray_glue", "superglue", "masking_tape", "filler",
    "acrylic_paint", "spray_paint", "varnish", "magnets",
)  # fmt: skip


@pytest.mark.search
@seeds(
    1,
    200,
    cautions_on_several_pages=330019,
    counts_beside_long_letters_in_german=330011,
    many_cards=331008,
    arrow_far_from_a_longer_word_for_top=335027,
    guide_close_to_its_part=337037,
    compass_strip_alone_on_a_page=337031,
    brace_under_some_steps_that_are_narrow=334001,
    brace_under_narrower_steps=337016,
    arrow_without_a_shaft=340007,
    curve_leaves_its_tile_nearly_along_its_side=340031,
    board_up_to_a_thickness_in_german=340077,
    letters_of_two_words_on_one_line=340096,
    labels_without_room_to_say_how_they_are_traced=350010,
    part_that_its_tile_cuts_in_two=360002,
    look_alike_that_reaches_over=360038,
    knife_at_the_side_that_closes_an_outline=360020,
    offcut_a_hair_under_a_millimetre=380021,
    paper_whose_name_is_also_a_word_of_ours=710000,
    tips_at_the_limit_of_the_page=711003,
    flag_beside_the_arrow_over_a_tool=711061,
    pencil_round_a_sharp_tip=712053,
    rule_over_the_foot_of_its_part=712037,
    knife_over_the_card=713010,
    pencil_round_the_tip_of_a_spire=713028,
    gap_that_prints_are_cut_apart_by=714003,
    paper_that_covers_the_arrow=720007,
    narrow_copies_in_german=722058,
    compass_strip_in_german=723026,
    long_title_of_a_tile_in_german=723034,
    word_under_the_foot_of_its_arrow=724008,
)
def test_true_designs_with_steps_are_never_refused(seed: int, tmp_path: Path) -> None:
    dice, design = Random(seed), true_design(seed)
    folder = written(tmp_path, design.spec, design.files)
    with_steps(folder)
    text = f"\ndesigner: Ebbwater Patterns\nlicence: {dice.choice(LICENCES)}\n"
    tools, materials = dice.sample(TOOLS, dice.randint(0, 6)), dice.sample(MATERIALS, dice.randint(0, 4))
    text += f"tools: [{', '.join(tools)}]\n" if tools else ""
    text += f"materials: [{', '.join(f'{{name: {name}}}' for name in materials)}]\n" if materials else ""
    text += "language: de\n" if dice.random() < 0.5 else ""
    spec = folder / "spec.yaml"
    spec.write_text(spec.read_text(encoding="utf-8") + text, encoding="utf-8")
    papers = tuple(dice.sample(PAPERS, 2))
    if seed >= SELDOM_FROM:
        papers = (papers[0], dice.choice(SELDOM))
    built = api.build(api.read(folder, (), papers), previews=False, offered=True)
    said = [f.message for f in built.findings if f.check == "pages/not-translated" and "texts of ours" in f.message]
    assert not said
    assert built.good, (papers, [(f.check, f.message) for f in built.findings if f.check not in UNTOLD])
