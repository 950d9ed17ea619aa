"""Designs that ``publisher new`` begins."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher import api
from publisher.design import fill, unsigned, work_out
from publisher.release import disk
from tests.whole.conftest import ROOT, Run, everything

Publisher = Callable[..., Run]


@pytest.mark.parametrize("like", api.STARTS)
def test_a_new_design_gives_pages_without_a_finding(like: str, tmp_path: Path) -> None:
    paths = api.new(tmp_path / "my-first", like)
    assert all(path.is_file() for path in paths)
    worked = api.work(api.read(tmp_path / "my-first", papers=("a4",)))
    packs, found = api.compose(worked)
    assert (worked.findings, found) == ((), ())
    assert [pack.paper.name for pack in packs] == ["a4"]


def test_a_tower_with_other_sides_says_how_many_walls_it_takes(tmp_path: Path) -> None:
    api.new(tmp_path / "tower", "tower")
    worked = api.work(api.read(tmp_path / "tower", sets=(("sides", "8"),)))
    assert [finding.check for finding in worked.findings] == ["joints/ring-does-not-close"] * 2
    assert all("close in a ring of 8, and this one has 6" in str(finding.hint) for finding in worked.findings)


def test_a_size_in_inches_is_printed_as_the_guide_says(tmp_path: Path) -> None:
    api.new(tmp_path / "tiles", "tiles")
    design = work_out(api.read(tmp_path / "tiles", sets=(("tile", "3 in"),)))
    printed = [fill(design.summary, design, (), first)[0] for first in ("mm", "in")]
    assert printed == [
        f"Street tiles of {tile} with a grid of 3 fields a side." for tile in ("76.2 mm (3 in)", "3 in (76.2 mm)")
    ]
    assert "`tile: 3 in` is printed as `76.2 mm (3 in)`" in (ROOT / "docs/spec.md").read_text(encoding="utf-8")


def test_a_new_design_is_built_and_proved(publisher: Publisher, tmp_path: Path) -> None:
    begun = publisher("new", tmp_path / "my-boat", "--like", "drawing")
    assert begun.code == 0 and f"wrote {tmp_path / 'my-boat' / 'spec.yaml'}" in begun.out
    run = publisher("build", tmp_path / "my-boat", "--out", tmp_path / "packs", "--paper", "a4", "--variant", "barge")
    assert (run.code, run.err) == (0, "")
    assert (tmp_path / "packs" / "my-boat" / "my-boat-1.0.0-barge-foam-5mm-a4.pdf").is_file()


@pytest.mark.parametrize("name", ["My-boat", "my boat", "my_boat", "con", "böot", "-boat", "x" * 41, ".."])
def test_a_name_that_no_design_may_have_is_refused(name: str, publisher: Publisher, tmp_path: Path) -> None:
    run = publisher("new", tmp_path / "Shelf" / name)
    assert run.code == 2 and "error" in run.err
    assert not list(tmp_path.iterdir())


def test_a_design_of_nobody_is_not_released(publisher: Publisher, tmp_path: Path) -> None:
    publisher("new", tmp_path / "boat", "--like", "drawing")
    run = publisher("release", tmp_path / "boat", "--out", tmp_path / "releases")
    assert run.code == 1 and "spec.yaml:7:11: error: the designer is still “Your name”" in run.err
    assert not (tmp_path / "releases").exists()


def test_a_design_that_is_signed_may_be_released(publisher: Publisher, tmp_path: Path) -> None:
    name = '"Quay": Söhne & #1'
    assert publisher("new", tmp_path / "boat", "--like", "tiles", "--designer", name).code == 0
    brief = api.read(tmp_path / "boat", papers=("a4",))
    assert brief.fields.text("designer") == name
    assert unsigned(brief.fields, releasing=True) == ()


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("a\nb", "should be text on one line"),
        ("x" * 121, "at most 120"),
        ("  ", "has no value"),
        ("a\u202eb", "invisible"),
    ],
)
def test_a_name_that_no_spec_takes_signs_none(name: str, said: str, publisher: Publisher, tmp_path: Path) -> None:
    run = publisher("new", tmp_path / "boat", "--designer", name)
    assert run.code == 2 and said in run.err and "spec.yaml" not in run.err
    assert not list(tmp_path.iterdir())


def test_two_runs_begin_one_design_and_the_second_is_told(
    publisher: Publisher, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Another run begins it just before this one holds the folder."""
    before = disk.before

    def other(what: str, path: Path) -> None:
        if what == "lock":
            monkeypatch.setattr(disk, "before", before)
            api.new(tmp_path / "boat", "house")

    monkeypatch.setattr(disk, "before", other)
    run = publisher("new", tmp_path / "boat")
    assert run.code == 2 and "brief/not-new" in run.err
    assert "gabled house" in (tmp_path / "boat/spec.yaml").read_text(encoding="utf-8")


def test_a_design_is_begun_once(publisher: Publisher, tmp_path: Path) -> None:
    assert publisher("new", tmp_path / "boat", "--json").code == 0
    before = everything(tmp_path)
    again = publisher("new", tmp_path / "boat", "--like", "house")
    assert again.code == 2 and "brief/not-new" in again.err
    assert everything(tmp_path) == before


def test_a_place_that_cannot_be_written_is_a_sentence(publisher: Publisher, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    run = publisher("new", tmp_path / "file" / "boat")
    assert run.code == 2 and "error" in run.err
