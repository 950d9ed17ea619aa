"""Fonts that chance has spoilt, that are called oddly, or that share a name: a pack that is proved, or a finding at the spec's line."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.basics import errors
from publisher.brief import read_brief
from publisher.pipeline import Built, build
from tests.odd_fonts import BOLD, LETTERS, lettering, mutant
from tests.searches.profile import seeds
from tests.whole.conftest import changed, small_design

Build = Callable[..., Built]


@pytest.fixture
def lettered(tmp_path: Path) -> Build:
    """Build a small design of which a step is written in letters of the given fonts."""

    def make(*fonts: bytes, say: str = LETTERS) -> Built:
        names = [f"font{number}.ttf" for number in range(len(fonts))]
        folder = small_design(tmp_path, "lettered", f"fonts: [{', '.join(names)}]\n")
        changed(folder, "Print page 2 first.", say)
        changed(folder, "[a4, letter]", "[a4]")
        for name, data in zip(names, fonts, strict=True):
            (folder / name).write_bytes(data)
        return build(read_brief(folder), previews=False)

    return make


def _judge(built: Built) -> None:
    """Assert that a pack was proved, or that each error names the line of the spec where the font stands."""
    for found in errors(built.findings):
        assert found.place is not None, found
        assert (Path(found.place.file).name, found.place.line) == ("spec.yaml", 13), found
    assert built.good == bool(built.outputs)


@pytest.mark.search
@seeds(3, 1000, head_of_an_unknown_version=2, ink_beyond_its_box=8, wide_letters=22, heights_of_lines=258)
def test_a_spoilt_font_is_a_font_or_a_finding(seed: int, lettered: Build) -> None:
    _judge(lettered(mutant(seed)))


@pytest.mark.parametrize("said", ["Odd (Bold) [x] <y> {z}/%", "NotoSans-Regular", ""])
def test_a_font_may_be_called_anything(said: str, lettered: Build) -> None:
    built = lettered(lettering(ps_name=said))
    assert built.findings == ()


def test_a_table_of_names_of_the_later_form_is_no_matter(lettered: Build) -> None:
    """OpenType 1.9, ``name``: version 1 has language tags behind the names; of those that are not there nothing is asked."""
    at = int.from_bytes(lettering()[(entry := lettering().index(b"name")) + 8 : entry + 12], "big")
    assert lettered(lettering()[:at] + b"\0\1" + lettering()[at + 2 :]).findings == ()


def test_two_fonts_of_one_name_both_print(lettered: Build) -> None:
    built = lettered(lettering(), lettering(fs_type=8), BOLD.read_bytes())
    assert built.findings == ()
    names = [font.name for font in built.packs[0].pack.fonts]
    assert len(names) == len(set(names)) == 5


def test_one_font_under_two_names_prints(lettered: Build) -> None:
    assert lettered(lettering(), lettering()).findings == ()


def test_letters_that_no_font_has_are_told_at_the_fonts(lettered: Build) -> None:
    built = lettered(lettering(), say="漢")
    assert [found.check for found in built.findings] == ["pages/letter-missing"]
    _judge(built)
