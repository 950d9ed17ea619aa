"""What is given beside the packs: a free test page and a phone copy, made with a release or on request, proved, and no packs."""

import json
from collections.abc import Callable
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import numpy as np
import pikepdf
import pytest
from jsonschema import Draft202012Validator
from PIL import Image

from publisher import api
from publisher.basics import Refusal, errors
from publisher.pages import Picture, record_schema
from publisher.press import write_pdf
from tests.whole.conftest import Run, changed, everything, small_design

NAME = "bollard-1.0.0-foam-5mm-test-page-a4.pdf"
SHOP = "shop/standard-a4/pictures.pdf"
PHONE = "bollard-1.0.0-foam-5mm-phone-a4.pdf"
TWO_BOARDS = """\
variants:
  wider: {sizes: {radius: 25 mm}}
  thin: {sizes: {board: 4 mm}}
"""


def offered(folder: Path, variant: str = "", **given: object) -> api.Built:
    built = api.build(api.read(folder, papers=("a4",), **given), variant, previews=False, offered=True)  # type: ignore[arg-type]
    assert built.good, built.findings
    return built


def test_a_test_page_is_two_pages_that_say_what_they_are(shelf: Path) -> None:
    extra = offered(shelf / "bollard").extras[0]
    pack = extra.pack
    assert (extra.pdf.path, pack.purpose, len(pack.pages)) == (NAME, "test_page", 2)
    assert all(page.title.startswith("Free test page") for page in pack.pages)
    assert [code.text.rsplit("/", 1)[1] for code in pack.promises.codes] == ["F", "F"]
    assert pack.title.startswith("Bollard · free test page · foam 5")
    assert not extra.proof.findings and len(extra.proof.measured) > 20


def test_its_record_gives_away_no_part_but_the_one_that_it_shows(tmp_path: Path) -> None:
    folder = small_design(tmp_path, "bollard")
    more = (
        "  plate: {name: Plate, board: foam, count: 1, shape: rectangle, with: {width: 90 mm, height: 70 mm}}\npapers"
    )
    changed(folder, "papers", more)
    changed(folder, "parts: [disc]", "parts: [disc, plate]")
    extra = offered(folder).extras[0]
    (file,) = extra.pack.attachments
    said = json.loads(file.data)
    assert said["pack"]["kind"] == "test_page"
    assert [part["id"] for part in said["parts"]] == [row["part"] for row in said["cut_list"]] == ["disc"]
    assert said["boards"] == [] and said["promises"]["sentences"] == []


def test_a_variant_has_one_of_its_own_only_where_its_board_differs(tmp_path: Path) -> None:
    folder = small_design(tmp_path, "bollard", TWO_BOARDS)
    made = [[extra.pack.purpose for extra in offered(folder, variant).extras] for variant in ("", "wider", "thin")]
    assert made == [["test_page", "phone", "shop"], ["phone", "shop"], ["test_page", "phone", "shop"]]


def test_a_trial_has_none(shelf: Path) -> None:
    assert offered(shelf / "bollard", sets=(("radius", "25 mm"),)).extras == ()


def test_a_build_makes_it_on_request_and_a_release_always(
    publisher: Callable[..., Run], shelf: Path, tmp_path: Path
) -> None:
    run = publisher("build", shelf / "bollard", "--paper", "a4", "--out", tmp_path / "plain")
    assert (run.code, NAME in everything(tmp_path / "plain/bollard")) == (0, False)
    run = publisher("build", shelf / "bollard", "--paper", "a4", "--offer", "--out", tmp_path / "offer")
    assert run.code == 0 and "bollard 1.0.0, free test page, A4 paper: 2 pages, proved" in run.out.replace(
        "Bollard", "bollard"
    )
    listed = json.loads((tmp_path / "offer/bollard/packs.json").read_text())
    assert [(one["kind"], one["file"]) for one in listed["extras"]] == [
        ("phone", PHONE),
        ("test_page", NAME),
        ("shop", SHOP),
    ]
    assert [one["file"] for one in listed["packs"]] == ["bollard-1.0.0-foam-5mm-a4.pdf"]
    assert publisher("release", shelf / "bollard", "--out", tmp_path / "releases").code == 0
    folder = tmp_path / "releases/bollard/1.0.0"
    assert (folder / NAME).read_bytes() == (tmp_path / "offer/bollard" / NAME).read_bytes()
    listing = (folder / "LISTING.md").read_text(encoding="utf-8")
    assert "- free test page, A4 paper: try your printer and your board before you buy; 2 pages" in listing
    judged = publisher("proof", folder, "--spec", shelf / "bollard")
    assert (judged.code, NAME in judged.out) == (0, True), judged.err


def test_a_build_without_it_keeps_one_of_the_same_files(
    publisher: Callable[..., Run], shelf: Path, tmp_path: Path
) -> None:
    for words in (("--offer",), ()):
        assert publisher("build", shelf / "bollard", "--paper", "a4", *words, "--out", tmp_path).code == 0
    listed = json.loads((tmp_path / "bollard/packs.json").read_text())
    assert [one["file"] for one in listed["extras"]] == [PHONE, NAME, SHOP]
    assert (tmp_path / "bollard" / NAME).exists()


@pytest.mark.parametrize("spec", [True, False])
def test_one_that_was_changed_is_found(publisher: Callable[..., Run], shelf: Path, tmp_path: Path, spec: bool) -> None:
    assert publisher("build", shelf / "bollard", "--paper", "a4", "--offer", "--out", tmp_path / "out").code == 0
    path = tmp_path / "out/bollard" / NAME
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        pdf.pages[1].contents_add(b"q 1 0 0 1 0 0 cm 0.5 w 100 300 m 300 300 l S Q")
        pdf.save(path)
    judged = publisher("proof", tmp_path / "out/bollard", *(("--spec", shelf / "bollard") if spec else ()))
    assert judged.code == 1
    assert f"{NAME} has" in judged.err
    assert ("which nothing promised" in judged.err or "proof/drawn" in judged.err) == spec, judged.err


def test_it_judges_a_board_and_is_taken_for_no_other_pack(
    publisher: Callable[..., Run], shelf: Path, tmp_path: Path
) -> None:
    assert publisher("build", shelf / "bollard", "--offer", "--out", tmp_path).code == 0
    run = publisher("measure", "--across", "100", "--down", "100", "--pack", tmp_path / "bollard" / NAME)
    assert run.code == 0, run.err
    assert api.pack_facts((tmp_path / "bollard" / NAME).read_bytes(), NAME).whole is False
    pack = NAME.replace("-test-page", "")
    assert api.pack_facts((tmp_path / "bollard" / pack).read_bytes(), pack).whole is True


def test_small_papers_and_odd_names_have_one_too(tmp_path: Path) -> None:
    folder = small_design(tmp_path, "bollard")
    changed(folder, "papers: [a4, letter]", "papers: [a5, {name: roll, width: 170 mm, height: 240 mm}]")
    changed(
        folder,
        "title: Bollard",
        'title: "Bollard 12.5 of 1887, page 7, as large as any in the whole of the town of canals"',
    )
    changed(folder, "name: Disc", 'name: "2 of 3"')
    built = api.build(api.read(folder), previews=False, offered=True)
    assert errors(built.findings) == ()
    assert [(one.pack.purpose, one.pack.paper.name) for one in built.extras] == [
        (purpose, paper) for purpose in ("test_page", "phone", "shop") for paper in ("a5", "roll")
    ]


def test_a_paper_that_holds_no_part_whole_has_none(tmp_path: Path) -> None:
    folder = small_design(tmp_path, "bollard")
    changed(folder, "radius: 20 mm}", "radius: 160 mm}")
    assert [extra.pack.purpose for extra in offered(folder).extras] == ["phone", "shop"]


def test_records_of_what_is_given_are_of_the_documented_form(shelf: Path) -> None:
    judge = Draft202012Validator(record_schema())
    for extra in offered(shelf / "bollard").extras[:2]:
        (file,) = extra.pack.attachments
        assert [error.message for error in judge.iter_errors(json.loads(file.data))] == []


def test_a_phone_copy_is_for_the_screen_and_says_which_pack_it_goes_with(shelf: Path) -> None:
    copy = offered(shelf / "bollard").extras[1]
    assert (copy.pdf.path, copy.pack.purpose) == (PHONE, "phone")
    assert {(page.width, page.height) for page in copy.pack.pages} == {(90.0, 160.0)}
    said = " ".join(" ".join(page.text) for page in copy.pack.pages)
    assert "Steps are numbered as in the pack for A4 paper." in said
    assert "Outlines as promised" in copy.proof.unjudged and "Pictures as the spec asks" in copy.proof.judged
    with pytest.raises(Refusal, match="never printed"):
        api.pack_facts(copy.pdf.data, PHONE)
    (file,) = copy.pack.attachments
    assert json.loads(file.data)["parts"] == []


def test_a_phone_copy_without_its_warning_is_refused(shelf: Path) -> None:
    copy = offered(shelf / "bollard").extras[1]
    first = copy.pack.pages[0]
    kept = tuple(one for one in first.drawn if getattr(one, "text", "") != "Not for printing")
    spoiled = write_pdf(replace(copy.pack, pages=(replace(first, drawn=kept), *copy.pack.pages[1:])))
    found = {finding.check for finding in api.prove(spoiled, PHONE, copy.pack.promises).findings}
    assert {"proof/words", "proof/drawn"} <= found


def pictures_of(built: api.Built) -> dict[str, bytes]:
    return {
        one.path.rsplit("/", 1)[1]: one.data
        for one in built.outputs
        if one.path.startswith("shop/") and one.path.endswith(".png")
    }


def test_pictures_for_a_shop_are_large_and_of_their_shapes(shelf: Path) -> None:
    built = offered(shelf / "bollard")
    sizes = {}
    for name, data in pictures_of(built).items():
        with Image.open(BytesIO(data)) as picture:
            sizes[name] = picture.size
            assert picture.getpixel((2, 2)) == 255  # white round all
    assert all(max(size) >= 2000 for size in sizes.values())
    assert sizes["wide.png"][0] * 3 == sizes["wide.png"][1] * 4
    assert sizes["square.png"][0] == sizes["square.png"][1]
    assert set(sizes) == {"cover.png", "contents.png", "wide.png", "square.png"}
    assert pictures_of(offered(shelf / "bollard")) == pictures_of(built)  # the same bytes


@pytest.mark.parametrize("spec", [True, False])
def test_a_shop_picture_of_something_else_is_found(
    publisher: Callable[..., Run], shelf: Path, tmp_path: Path, spec: bool
) -> None:
    assert publisher("build", shelf / "bollard", "--paper", "a4", "--offer", "--out", tmp_path / "out").code == 0
    folder = tmp_path / "out/bollard"
    (folder / "shop/standard-a4/wide.png").write_bytes((folder / "shop/standard-a4/contents.png").read_bytes())
    judged = publisher("proof", folder, *(("--spec", shelf / "bollard") if spec else ()))
    assert judged.code == 1
    assert "shop/standard-a4/wide.png: does not show its page of shop/standard-a4/pictures.pdf" in judged.err


def test_a_photograph_of_the_cover_is_on_the_pictures_for_a_shop(tmp_path: Path) -> None:
    folder = small_design(tmp_path, "bollard", "cover: {photo: stone.png, alt: The bollard on a quay}\n")
    rgb = np.random.default_rng(7).integers(0, 255, (900, 1200, 3), dtype=np.uint8)
    Image.fromarray(rgb).save(folder / "stone.png")
    pack = offered(folder).extras[-1].pack
    shown = [{thing.image for thing in page.drawn if isinstance(thing, Picture)} for page in pack.pages]
    assert ["stone.png" in images for images in shown] == [True, False, True, True]


def test_photographs_of_the_piece_stand_in_the_pictures_for_a_shop_and_nowhere_else(
    publisher: Callable[..., Run], tmp_path: Path
) -> None:
    folder = small_design(tmp_path, "bollard", "photos: [front.png, side.png]\n")
    for name, size in (("front.png", (1200, 900)), ("side.png", (700, 900))):
        Image.new("L", size, 200).save(folder / name)
    built = offered(folder)
    (shop,) = [extra for extra in built.extras if extra.pack.purpose == "shop"]
    keys = ["shop:photo:1", "shop:photo:2"]
    assert [one.key for one in shop.pack.promises.drawings if one.key.startswith("shop:")] == keys
    assert not any(
        key.startswith("shop:") for pack in built.packs for key in (d.key for d in pack.pack.promises.drawings)
    )
    assert {"shop/standard-a4/photo-1.png", "shop/standard-a4/photo-2.png"} <= {one.path for one in built.outputs}
    promises = shop.pack.promises
    lost = replace(promises, carried=tuple(one for one in promises.carried if one.key != keys[1]))
    other = replace(promises, drawings=tuple(replace(one, width=one.width * 1.3) for one in promises.drawings))
    for wrong in (lost, other):
        assert "proof/step-picture" in {found.check for found in api.prove(shop.pdf.data, SHOP, wrong).findings}
    assert publisher("release", folder, "--out", tmp_path / "releases").code == 0
    judged = publisher("proof", tmp_path / "releases/bollard/1.0.0", "--spec", folder)
    assert judged.code == 0, judged.err
