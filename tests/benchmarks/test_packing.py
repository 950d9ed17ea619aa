"""The packing benchmark runs, states its figures, and fails when a density cannot be true."""

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
FU = ROOT / "tests" / "benchmarks" / "nesting" / "fu.json"


def run(file: Path) -> subprocess.CompletedProcess[str]:
    """Run the benchmark for a blink."""
    command = [sys.executable, "-m", "tests.benchmarks.packing", str(file), "--seconds", "0.2"]
    return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)


def test_density_beside_the_published_figures() -> None:
    """A bottom-left placement reaches 60 % or more on ``fu``, and the judge accepts it."""
    done = run(FU)
    assert done.returncode == 0, done.stderr
    assert "the judge: holds" in done.stdout
    assert "best known 92.41" in done.stdout
    assert 60.0 <= float(done.stdout.split("density ")[1].split(" %")[0]) <= 92.41


def test_a_density_that_cannot_be_true_is_said(tmp_path: Path) -> None:
    """An instance whose stated area is too large seems to beat the published best: the benchmark fails and says why."""
    data = json.loads(FU.read_text(encoding="utf-8"))
    data["total_piece_area"] *= 1.5
    wrong = tmp_path / "fu.json"
    wrong.write_text(json.dumps(data), encoding="utf-8")
    done = run(wrong)
    assert done.returncode == 1
    assert "the overlap check is broken" in done.stdout
