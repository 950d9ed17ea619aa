"""The worker by itself: one JSON object in, one out."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

WORKER = Path(__file__).parents[2] / "publisher" / "material" / "strip_worker.py"
BOX = [[0.0, 0.0], [50.0, 0.0], [50.0, 20.0], [0.0, 20.0]]


def ask(target: float, count: int = 4, seconds: int = 2) -> dict[str, object]:
    """Ask for boxes of 50 × 20 on a strip 50 high."""
    pieces = [{"points": BOX, "count": count, "turns": [0.0, 90.0]}]
    request = {
        "height": 50.0,
        "target": target,
        "seconds": seconds,
        "clock": 4 * seconds,
        "seed": 2,
        "workers": 1,
        "pieces": pieces,
    }
    done = subprocess.run(
        [sys.executable, str(WORKER)], input=json.dumps(request), capture_output=True, text=True, check=True
    )
    answer: dict[str, object] = json.loads(done.stdout)
    return answer


def test_the_first_layout_short_enough() -> None:
    """Four boxes need 80 or more by area; at most 130 is asked for and given, every box there, the same twice."""
    first = ask(130.0)
    assert isinstance(first["length"], float)
    assert 80.0 <= first["length"] <= 130.0
    assert isinstance(first["places"], list)
    assert [place[0] for place in first["places"]] == [0] * 4
    assert ask(130.0) == first


def test_the_shortest_when_none_is_short_enough() -> None:
    """Less than the area needs is not found; the shortest one says its length."""
    length = ask(60.0, seconds=1)["length"]
    assert length == pytest.approx(ask(0.0, seconds=1)["length"], rel=0.5)
    assert isinstance(length, float)
    assert length >= 80.0
