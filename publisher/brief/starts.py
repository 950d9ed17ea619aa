"""What a new design begins with: a commented spec that builds as it is, the schema for editors, and a drawing where it needs one."""

import json
import os
from dataclasses import replace
from pathlib import Path

from publisher.basics import Place, Refusal, errors
from publisher.basics.wording import listed
from publisher.brief import rules
from publisher.brief.folders import SPEC, name_findings
from publisher.brief.inputs import InputFile, Inputs
from publisher.brief.reader import brief_of
from publisher.brief.schema_of_spec import schema_text

SCHEMA = "spec.schema.json"
"""Where the first line of a new spec tells editors to look."""
DRAWING = "outline.svg"
NOBODY = "Your name"
"""The designer of a new spec, until somebody writes another name there."""
STARTS = {
    "stair": "a stair that winds up in layers",
    "house": "a gabled house of panels",
    "tower": "a tower of six walls, with a spire that lifts off",
    "tiles": "street tiles with paving",
    "hill": "a hill in layers",
    "drawing": "a boat in layers, from a drawing",
}
"""Kinds of designs to begin with, and what each is."""


def begin(folder: Path, like: str, designer: str = "") -> tuple[Path, tuple[tuple[str, bytes], ...]]:
    """Return where to put a new design, and its files: the folder that is to hold ``folder``; paths below it, bytes.

    ``like`` is one of ``STARTS``; ``designer`` signs it ('': the spec says that somebody must). Nothing is written. Raises Refusal when
    the name is none for a design, when no spec takes the designer's name, or when one of the files is there already.
    """
    home = Path(os.path.abspath(folder))  # noqa: PTH100 - a link keeps its name
    findings = name_findings(home.name, folder.as_posix())
    if findings:
        raise Refusal(*findings)
    title = home.name.replace("-", " ").capitalize()
    spec = _text(f"{like}.yaml").replace("@TITLE@", title)
    if designer:
        spec = spec.replace(f"designer: {NOBODY}", f"designer: {json.dumps(designer, ensure_ascii=False)}")
    files = {SPEC: spec, SCHEMA: schema_text(), **({DRAWING: _text(DRAWING)} if like == "drawing" else {})}
    there = [name for name in files if os.path.lexists(home / name)]
    if there:
        raise Refusal(
            rules.NOT_NEW.found(
                f"{folder} holds {listed(there)} already, and nothing is written over",
                subject=home.name,
                hint="give the new design another name",
                place=Place((folder / there[0]).as_posix()),
            )
        )
    _look_through(home.name, files)
    return home.parent, tuple((f"{home.name}/{name}", text.encode("utf-8")) for name, text in files.items())


def _look_through(slug: str, files: dict[str, str]) -> None:
    """Raise Refusal for what no spec may hold: by the words and limits of every spec."""
    read = tuple(InputFile.of(name, text.encode("utf-8", "surrogateescape")) for name, text in files.items())
    try:
        found = errors(brief_of(Inputs(slug, read, folder=slug)).findings)
    except Refusal as refusal:
        found = refusal.findings
    if found:  # without places: there is no file yet
        raise Refusal(*(replace(one, place=None) for one in found))


def _text(name: str) -> str:
    return (Path(__file__).parent / "starts" / name).read_text(encoding="utf-8")
