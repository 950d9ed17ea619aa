"""A folder is a design, or a folder of designs."""

from pathlib import Path

import pytest

from publisher.basics import Refusal
from publisher.brief import spec_folders


def test_a_design_is_itself_and_a_folder_of_designs_is_each_of_them_by_name(tmp_path: Path) -> None:
    for name in ("stair", "house", "notes"):
        (tmp_path / name).mkdir()
    for name in ("stair", "house"):
        (tmp_path / name / "spec.yaml").write_text("format: 2\n")
    assert spec_folders(tmp_path / "stair") == (tmp_path / "stair",)
    assert spec_folders(tmp_path) == (tmp_path / "house", tmp_path / "stair")


def test_a_folder_without_a_design_and_what_is_no_folder_are_refused(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_text("x")
    for given, words in (
        (tmp_path, "holds no spec.yaml, and no folder in it does"),
        (tmp_path / "a.txt", "is not a folder"),
    ):
        with pytest.raises(Refusal, match=words) as caught:
            spec_folders(given)
        assert caught.value.findings[0].check == "brief/no-spec"


def test_a_misspelt_folder_is_told_which_design_is_near(tmp_path: Path) -> None:
    (tmp_path / "my-tower").mkdir()
    (tmp_path / "my-tower/spec.yaml").write_text("format: 2\n")
    (tmp_path / "my-towel").mkdir()  # no design
    for given, words in (("my-twoer", "did you mean “my-tower”?"), ("quay", "give a design's folder")):
        with pytest.raises(Refusal) as caught:
            spec_folders(tmp_path / given)
        assert caught.value.findings[0].hint.startswith(words)
