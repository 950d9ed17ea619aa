"""A design of two boards: each is named, measured, and has limits of its own."""

import re
from pathlib import Path

import pytest

from publisher import api
from publisher.brief import read_brief
from publisher.pages import Words
from publisher.pipeline import compose_packs, work
from tests.whole.test_languages import left_english

THIN = "  {name}: {{thickness: {thick}, {spread}sheets: [20 x 30 in], knife_gap: 1 mm, edge_margin: 3 mm}}\n"


@pytest.fixture
def house(tmp_path: Path) -> Path:
    """A house of two boards in the making: ``with_roof`` says which the roof is of."""
    folder = tmp_path / "house"
    api.new(folder, "house", "Ebbwater Patterns")
    return folder


def with_roof(
    folder: Path, name: str = "thin", thick: str = "3 mm", spread: str = "thickness_spread: 0.15 mm, "
) -> Path:
    spec = folder / "spec.yaml"
    text = spec.read_text(encoding="utf-8").replace(
        "roof: {name: Roof slope, board: foam", f"roof: {{name: Roof slope, board: {name}"
    )
    text = text.replace("boards:\n", "boards:\n" + THIN.format(name=name, thick=thick, spread=spread))
    spec.write_text(text, encoding="utf-8")
    return folder


def said(folder: Path, paper: str) -> dict[str, str]:
    """Return the words of the print check and of the steps, each as one text."""
    packs, _ = compose_packs(work(read_brief(folder, papers=(paper,))))
    kinds: dict[str, list[str]] = {}
    for page in packs[0].pages:
        kinds.setdefault(page.kind, []).extend(thing.text for thing in page.drawn if isinstance(thing, Words))
    return {kind: " ".join(words) for kind, words in kinds.items()}


def test_each_board_has_its_gauge_its_limits_and_its_name(house: Path) -> None:
    words = said(with_roof(house), "a4")
    check, steps = words["print_check"], words["steps"]
    assert "Board gauge: foam" in check and "Board gauge: thin" in check
    assert "board from 4.7 to 5.3 mm" in check and "between 2.9 and 3.1 mm" in check
    assert "Try a strip of each board in its gauge." in check
    assert re.search(r"2\.0 .*2\.2 .*2\.4", check) and re.search(r"4\.0 .*4\.2 .*4\.4", check)
    assert "Stand a strip of each board on its edge in its gauge on page 2." in steps
    assert (
        "the foam board is from 4.7 to 5.3 mm (0.186 to 0.208 in) thick; the thin board is between 2.9 and 3.1 mm"
        in steps
    )


def test_where_a_page_lacks_room_for_both_gauges_ten_pieces_tell_the_other(house: Path) -> None:
    words = said(with_roof(house), "letter")
    check, steps = words["print_check"], words["steps"]
    assert "Board gauge: thin" not in check
    assert "Of thin press ten pieces together: a tenth of that is between 0.115 and 0.122 in (2.9 and 3.1 mm)." in check
    assert "Stand a strip of the foam board on its edge in the gauge on page 2." in steps
    assert "Of each other one cut a strip off" in steps and "the thin board is between 0.115 and 0.122 in" in steps


def test_one_board_is_spoken_of_as_ever(house: Path) -> None:
    words = said(house, "a4")
    assert "Board gauge:" not in words["print_check"] and "Stand a strip of your board on its edge" in words["steps"]
    assert "Stop and check: the board is from 4.7 to 5.3 mm" in words["steps"]


def test_a_board_that_no_part_is_cut_from_is_not_measured(house: Path) -> None:
    spec = house / "spec.yaml"
    text = spec.read_text(encoding="utf-8").replace(
        "boards:\n", "boards:\n" + THIN.format(name="thin", thick="3 mm", spread="")
    )
    spec.write_text(text, encoding="utf-8")
    assert "thin" not in said(house, "a4")["print_check"]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize(
    ("name", "thick", "spread"),
    [
        ("thin_roof", "3 mm", "thickness_spread: 0.15 mm, "),
        ("card", "2 mm", "material: card, "),
        ("paper", "0.3 mm", "material: paper, thickness_spread: 0.05 mm, "),
    ],
)
def test_such_packs_are_proved_and_have_german_words(
    house: Path, name: str, thick: str, spread: str, paper: str
) -> None:
    folder = with_roof(house, name, thick, spread)
    assert left_english(work(read_brief(folder, papers=(paper,))), "de") == set()
    for language in ("en", "de"):
        spec = folder / "spec.yaml"
        spec.write_text(
            spec.read_text(encoding="utf-8") + f"language: {language}\n" * (language == "de"), encoding="utf-8"
        )
        built = api.build(api.read(folder, papers=(paper,)), previews=False)
        assert [str(one) for one in built.findings] == []
