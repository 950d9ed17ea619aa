"""What a new design begins with."""

import json
from pathlib import Path

import jsonschema
import pytest
import yaml

from publisher.basics import Refusal
from publisher.brief import NOBODY, STARTS, begin, schema_text

MOST_LINES = 60


@pytest.mark.keeps("brief/not-new")
@pytest.mark.parametrize("like", STARTS)
def test_a_spec_is_short_and_editors_that_follow_its_first_line_find_nothing_wrong(like: str, tmp_path: Path) -> None:
    home, files = begin(tmp_path / "my-first", like)
    assert home == tmp_path and not any(tmp_path.iterdir())
    texts = {name: data.decode() for name, data in files}
    spec = texts["my-first/spec.yaml"]
    first, _, schema = spec.splitlines()[0].partition("$schema=")
    assert first == "# yaml-language-server: " and texts[f"my-first/{schema}"] == schema_text()
    assert len(spec.splitlines()) <= MOST_LINES and spec.count("#") >= 8
    judge = jsonschema.Draft202012Validator(json.loads(schema_text()))
    values = yaml.safe_load(spec)
    judge.validate(values)
    assert (values["title"], values["designer"]) == ("My first", NOBODY)
    with pytest.raises(jsonschema.ValidationError):
        judge.validate({**values, "titel": "My first"})


@pytest.mark.breaks("brief/not-new")
@pytest.mark.parametrize("name", ["spec.yaml", "outline.svg", "spec.schema.json"])
def test_nothing_is_written_over(name: str, tmp_path: Path) -> None:
    (tmp_path / "boat").mkdir()
    (tmp_path / "boat" / name).symlink_to(tmp_path / "nowhere")
    with pytest.raises(Refusal, match=name):
        begin(tmp_path / "boat", "drawing")
