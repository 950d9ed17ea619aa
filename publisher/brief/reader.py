"""A designer's folder to a brief, or inputs that were gathered from it before."""

import os
from dataclasses import replace
from pathlib import Path

from publisher.basics import Finding, Place, Refusal
from publisher.brief import limits, rules
from publisher.brief.files import read_files
from publisher.brief.folders import SPEC, name_findings
from publisher.brief.gather import Folder, Gathered, Source
from publisher.brief.inputs import Inputs
from publisher.brief.model import Brief
from publisher.brief.source import decode, hidden_characters, too_big
from publisher.brief.validate import validate
from publisher.brief.versions import versions
from publisher.brief.wording import short
from publisher.brief.yaml_reader import read_nodes


def read_brief(folder: Path, sets: tuple[tuple[str, str], ...] = (), papers: tuple[str, ...] = ()) -> Brief:
    """Return what a designer wrote in a folder, with every mistake found so far, and all that a build reads (``inputs``).

    ``sets`` and ``papers`` are what was asked for with it: sizes (name, value as written), papers by name. Raises Refusal when
    there is no folder or no ``spec.yaml``, or when nothing can be read from it: not UTF-8, no YAML, more than a spec may hold.
    """
    _look_for_spec(folder)
    slug = Path(os.path.abspath(folder)).name  # noqa: PTH100 - a link keeps the name that the designer gave it
    source = Folder(folder)
    brief = _read(slug, folder, source)
    inputs = Inputs(slug, source.files, sets, papers, versions(), source.unread, folder.as_posix())
    return replace(brief, inputs=inputs)


def brief_of(inputs: Inputs) -> Brief:
    """Return the brief of inputs that were gathered before, as ``read_brief`` returned it then. The disk is not looked at.

    Raises Refusal as ``read_brief`` does for what the files hold.
    """
    return replace(_read(inputs.slug, Path(inputs.folder), Gathered(inputs)), inputs=inputs)


def _read(slug: str, folder: Path, source: Source) -> Brief:
    """Return the brief, still without its inputs."""
    file = (folder / SPEC).as_posix()
    text = decode(_spec_bytes(source, file), file)
    found = list(hidden_characters(text, file))
    if found:
        raise Refusal(*found)  # YAML refuses some of these itself, without saying which
    top, findings = read_nodes(text, file)
    bound = validate(top, file)
    files, about_files = read_files(source, bound.files, file)
    return Brief(
        slug,
        bound.fields,
        files,
        _shortened((*name_findings(slug, file), *findings, *bound.findings, *about_files), file),
    )


def _shortened(findings: tuple[Finding, ...], file: str) -> tuple[Finding, ...]:
    """The findings in the order of the file, as many as somebody can read at once; the last one says when there are more."""
    ordered = sorted(findings, key=lambda f: (f.place.line, f.place.column) if f.place else (0, 0))
    if len(ordered) <= limits.FINDINGS:
        return tuple(ordered)
    more = rules.MANY.found(
        f"only the first {limits.FINDINGS} mistakes are shown",
        hint="mend these and run the command again",
        place=Place(file),
        limit=float(limits.FINDINGS),
    )
    return (*ordered[: limits.FINDINGS], more)


def _look_for_spec(folder: Path) -> None:
    """Raise Refusal when there is no folder that can be read, or no spec in it."""
    file = (folder / SPEC).as_posix()
    if not os.path.isdir(folder):  # noqa: PTH112 - unlike pathlib's it also says no to a name that no disk can hold
        what = "is a file, not a folder" if os.path.lexists(folder) else "does not exist"
        hint = f"give the folder that holds {SPEC}"
        raise Refusal(
            rules.NO_FOLDER.found(
                f"“{short(str(folder))}” {what}", subject=folder.name, hint=hint, place=Place(folder.as_posix())
            )
        )
    if not os.access(folder, os.R_OK | os.X_OK):
        hint = "look at the folder's permissions"
        raise Refusal(
            rules.UNREADABLE.found(f"the folder “{short(folder.name)}” cannot be read", hint=hint, place=Place(file))
        )
    if not os.path.lexists(folder / SPEC):
        names = sorted(p.name for p in folder.iterdir())
        other = next((n for n in names if n.lower() in ("spec.yaml", "spec.yml", "spec.yaml.txt")), None)
        message = f"the folder holds no {SPEC}" if names else "the folder is empty: it holds no spec.yaml"
        hint = (
            f"rename “{short(other)}” to “{SPEC}”" if other else f"write a {SPEC}; the demo designs show how one looks"
        )
        raise Refusal(rules.NO_SPEC.found(message, subject=folder.name, hint=hint, place=Place(folder.as_posix())))


def _spec_bytes(source: Source, file: str) -> bytes:
    data = source.read(SPEC, limits.SPEC_BYTES, Place(file))
    if isinstance(data, bytes):
        return data
    raise Refusal(too_big(file) if data.check == rules.FILE_SIZE.id else data)
