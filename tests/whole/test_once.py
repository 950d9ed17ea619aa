"""What is made once in a run: by one process, whole, and told to the others when it fails."""

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from tests.once import made_once


def test_each_is_made_by_one_of_many(tmp_path: Path) -> None:
    made: list[str] = []

    def make(name: str, room: Path) -> Path:
        made.append(name)
        (room / "x").mkdir()
        (room / "x" / "file").write_text(name)
        return room / "x"

    with ThreadPoolExecutor(4) as pool:
        folders = list(pool.map(lambda _: made_once(tmp_path / "all", "abc", make), range(8)))
    assert sorted(made) == ["a", "b", "c"]
    assert set(folders) == {tmp_path / "all"}
    assert [(tmp_path / "all" / name / "file").read_text() for name in "abc"] == ["a", "b", "c"]


def test_a_failure_is_told_to_all(tmp_path: Path) -> None:
    def fail(name: str, room: Path) -> Path:
        raise ValueError(name)

    with pytest.raises(ValueError, match="a"):
        made_once(tmp_path / "all", "a", fail)
    with pytest.raises(RuntimeError, match="a could not be made"):
        made_once(tmp_path / "all", "a", fail)
