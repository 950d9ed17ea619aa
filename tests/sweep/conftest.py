"""Small designs whose sizes are varied."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.whole.conftest import changed, small_design

SQUARES = "shape: rectangle, with: {width: radius, height: radius}"


@pytest.fixture
def design(tmp_path: Path) -> Callable[..., Path]:
    """Make the smallest design with other words in its spec, each pair once; return its folder."""

    def make(*words: tuple[str, str]) -> Path:
        folder = small_design(tmp_path, "bollard")
        for old, new in words:
            changed(folder, old, new)
        return folder

    return make


@pytest.fixture
def squares(design: Callable[..., Path]) -> Path:
    """Squares with the side “radius” on a sheet of 300 × 300 mm, 1 mm apart: k across it up to a side of (301 - k) / k."""
    return design(
        ("shape: disc, with: {radius: radius}", SQUARES),
        ("sheets: [20 x 30 in]", "sheets: [300 x 300 mm], knife_gap: 1 mm"),
        ("papers: [a4, letter]", "needs: [{fact: disc.width, at_least: 72 mm}]\npapers: [a4]"),
    )
