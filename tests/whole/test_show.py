"""``publisher show``: what a stage gave, as text and as JSON."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from publisher.basics import LineKind
from publisher.dumps import as_json

Publisher = Callable[..., Any]
QUAY = {
    "sizes": "size board length 5.000 5 mm",
    "parts": "edge bottom 0.000 0.000 480.000 0.000",
    "assembly": "fact box.height length 100.000",
    "layouts": "copy side 1 3.000 3.000 0.000",
    "pages": "paper letter",
}


@pytest.mark.parametrize("stage", QUAY)
def test_every_stage_is_shown_in_mm(stage: str, publisher: Publisher, designs: Path) -> None:
    run = publisher("show", designs / "quay", "--stage", stage, "--paper", "letter")
    assert (run.code, run.err) == (0, "")
    lines = run.out.splitlines()
    assert lines[0] == "quay, standard"
    assert QUAY[stage] in lines


def test_a_size_that_is_set_is_seen_in_what_follows_from_it(publisher: Publisher, designs: Path) -> None:
    run = publisher("show", designs / "quay", "--stage", "assembly", "--set", "board=4 mm")
    assert "fact box.inside_width length 452.000" in run.out  # 460 mm less two boards of 4 mm
    assert "added 6.2 box west,west_inner,east_inner,east put 0.000 -1.000 0.000\n" in run.out


def test_json_has_every_field(publisher: Publisher, designs: Path) -> None:
    run = publisher("show", designs / "quay", "--stage", "parts", "--json")
    (design,) = json.loads(run.out)["designs"]
    side = next(part for part in design["parts"] if part["id"] == "side")
    assert (side["thickness"], side["count"]) == (5.0, 2)
    assert [edge["name"] for edge in side["edges"]] == ["bottom", "right", "top", "left"]


def test_a_stage_that_was_not_reached_is_empty_and_the_errors_say_why(publisher: Publisher, designs: Path) -> None:
    spec = designs / "quay/spec.yaml"
    spec.write_text(spec.read_text().replace("inner: 160 mm", "inner: 900 mm"))
    run = publisher("show", designs / "quay", "--stage", "pages", "--json")
    assert run.code == 1
    assert "spec.yaml:" in run.err
    assert json.loads(run.out)["designs"][0]["pages"] is None
    assert publisher("show", designs / "quay", "--stage", "walls").code == 2


def test_values_as_json() -> None:
    assert as_json((1.23456789, float("inf"), -0.0, True, None)) == [1.234568, None, 0.0, True, None]
    assert as_json(LineKind("cut")) == "cut"
    assert (
        as_json(b"abc")
        == {
            "bytes": 3,
            "sha256": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",  # FIPS 180-4, the example of one block
        }
    )
