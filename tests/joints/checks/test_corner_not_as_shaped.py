"""Two facets that close no ring: the corner that their shapes make, written and written otherwise."""

from pathlib import Path

import pytest

from tests.reference.solids import Built, build

HALF = """sizes: {{board: 5 mm}}
parts:
  facet: {{name: Facet, board: foam, shape: spire_facet, with: {{sides: 6, width: 60 mm, height: 60 mm}}}}
  first: {{name: First, like: facet}}
  last: {{name: Last, like: facet}}
assembly:
  apse:
    panels: {{a: first, b: facet, c: last}}
    stands_on: a.base
    joins:
      - {{edges: [a.right, b.left], joint: mitre{corner}}}
      - {{edges: [b.right, c.left], joint: mitre{corner}}}
"""


def apse(tmp_path: Path, corner: str) -> Built:
    return build(HALF.format(corner=corner), tmp_path)


@pytest.mark.keeps("joints/corner-not-as-shaped")
@pytest.mark.parametrize("corner", ["", ", corner: 135.584691 deg"])
def test_a_corner_that_follows_or_is_written_right_passes(tmp_path: Path, corner: str) -> None:
    """Faces of pitch p, tan p = 60 / (30 / tan 30°): their normals make acos(sin²p·cos 60° + cos²p) = 44.4153°."""
    assert "joints/corner-not-as-shaped" not in apse(tmp_path, corner).says()


@pytest.mark.breaks("joints/corner-not-as-shaped")
def test_a_corner_that_is_written_otherwise_is_told_the_right_one(tmp_path: Path) -> None:
    found = [f for f in apse(tmp_path, ", corner: 130 deg").findings if f.check == "joints/corner-not-as-shaped"]
    assert len(found) == 2
    assert "joined at 130°; their shapes are made to meet at 135.5847°" in found[0].message
    assert "leave corner out" in found[0].hint
