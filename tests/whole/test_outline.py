"""``publisher outline`` as a user runs it."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image

from tests.whole.conftest import Run

Publisher = Callable[..., Run]
ISLAND = Path(__file__).parents[1] / "cases" / "drawings" / "island.svg"
SIGN = """<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">
<path id="plate" d="M5 5H55V35H5Z M20 15V25H40V15Z"/>
<circle id="nail" cx="10" cy="10" r="1" fill="none" stroke="black"/>
<text x="9" y="9">Lock</text>
</svg>"""


@pytest.fixture
def sign(tmp_path: Path) -> Path:
    file = tmp_path / "sign.svg"
    file.write_text(SIGN)
    return file


@pytest.mark.keeps("cli/file-unreadable", "cli/no-outline")
def test_words(publisher: Publisher, sign: Path) -> None:
    run = publisher("outline", sign)
    assert run.code == 0
    assert "sign.svg: 60.0 mm (2.36 in) wide, 40.0 mm (1.57 in) high" in run.out
    assert "plate  50.0 mm (1.97 in) by 30.0 mm (1.18 in)" in run.out and "nail " in run.out
    assert "text (line 4): words, no outline" in run.out


@pytest.mark.keeps("cli/picture-not-written")
def test_json_has_exactly_its_keys(publisher: Publisher, sign: Path) -> None:
    document = json.loads(publisher("outline", sign, "--json").out)
    assert list(document) == ["width_mm", "height_mm", "outlines", "filled_area_mm2", "bbox_mm", "left_out"]
    plate, nail = document["outlines"]
    assert plate == {"id": "plate", "area_mm2": pytest.approx(1300.0), "bbox_mm": pytest.approx([5.0, 5.0, 55.0, 35.0])}
    assert nail["id"] == "nail" and nail["bbox_mm"] == pytest.approx([9.0, 29.0, 11.0, 31.0], abs=0.002)  # y upward
    assert document["filled_area_mm2"] == pytest.approx(1300.0) and document["bbox_mm"] == pytest.approx(
        [5.0, 5.0, 55.0, 35.0]
    )


@pytest.mark.breaks("cli/picture-not-written")
def test_one_outline_by_id_with_a_picture(publisher: Publisher, tmp_path: Path) -> None:
    picture = tmp_path / "island.png"
    run = publisher("outline", ISLAND, "--id", "shore", "--picture", picture, "--json")
    assert run.code == 0 and [o["id"] for o in json.loads(run.out)["outlines"]] == ["shore"]
    with Image.open(picture) as image:
        assert image.size == (1220, 860)
    nowhere = publisher("outline", ISLAND, "--id", "shore", "--picture", tmp_path / "no" / "island.png")
    assert nowhere.code == 2 and "cannot write" in nowhere.err


@pytest.mark.breaks("cli/file-unreadable")
def test_refusals_name_the_line_and_end_with_two(publisher: Publisher, sign: Path, tmp_path: Path) -> None:
    wrong = publisher("outline", sign, "--id", "plat")
    assert wrong.code == 2 and "did you mean “plate”?" in wrong.err and wrong.out == ""
    crossed = publisher("outline", ISLAND, "--id", "landing")
    assert crossed.code == 2 and f"{ISLAND}:16:1: error: the outline “landing” is open" in crossed.err
    missing = publisher("outline", tmp_path / "no.svg")
    assert missing.code == 2 and "cannot read" in missing.err
    endless = tmp_path / "endless.svg"
    endless.write_text(SIGN.replace("<text", '<use id="u" href="#u"/><text'))
    run = publisher("outline", endless, "--json")
    assert run.code == 2 and "contains a copy of itself" in run.err and run.out == ""


@pytest.mark.breaks("cli/no-outline")
def test_nothing_closed_is_an_error_in_the_work(publisher: Publisher, tmp_path: Path) -> None:
    file = tmp_path / "line.svg"
    file.write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"><path d="M0 0L9 9" stroke="red" fill="none"/></svg>'
    )
    run = publisher("outline", file, "--json")
    assert run.code == 1 and "has no closed outline" in run.err
    document = json.loads(run.out)
    assert document["outlines"] == [] and document["bbox_mm"] is None and document["filled_area_mm2"] == 0.0


def test_the_example_and_the_axes_are_in_the_help(publisher: Publisher) -> None:
    run = publisher("outline", "--help")
    assert "Example:" in run.out and "y upward" in run.out
