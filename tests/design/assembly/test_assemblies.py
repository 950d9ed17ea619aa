"""All assemblies of a design together."""

from collections.abc import Callable
from typing import Any

from publisher.brief import Brief
from publisher.design.assembly.assemblies import read_assemblies
from publisher.design.language.scope import Scope
from publisher.design.parts.parts_known import KnownParts

TEXT = """
assembly:
  pile: {stack: [{part: slab, count: 3}, {section: top, stack: [{part: slab, count: 2}]}]}
  pile_b: {stack: [{part: slab}]}
  hut: {panels: {front: wall, back: wall}, stands_on: front.bottom, joins: [{place: back, rests_on: [front.top]}]}
"""


def test_layers_and_copies(brief_of: Callable[[str], Brief]) -> None:
    findings: list[Any] = []
    known = KnownParts({"slab": None, "wall": None})
    built = read_assemblies(brief_of(TEXT).fields.table("assembly"), known, Scope({}, findings))
    assert findings == []
    assert built.names == ("pile", "pile_b", "hut")
    assert built.used() == {"slab": 6, "wall": 2}
    # pile counts its section and not pile_b, whose name only begins alike
    assert built.layers() == {"pile": 5, "pile_top": 2, "pile_b": 1}


def test_a_section_may_not_have_the_name_of_a_part(brief_of: Callable[[str], Brief]) -> None:
    findings: list[Any] = []
    known = KnownParts({"slab": None, "wall": None, "pile_top": None})
    read_assemblies(brief_of(TEXT).fields.table("assembly"), known, Scope({}, findings))
    assert [f.check for f in findings] == ["design/name-taken"]


def test_an_assembly_of_neither_kind(tried: Callable[..., Any]) -> None:
    assert (
        "design/assembly" in tried("assembly: {hut: {loose: true}, pile: {stack: [{part: slab}, {part: wall}]}}").found
    )
