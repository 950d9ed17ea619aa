"""``publisher proof``: read finished PDFs like a stranger and judge their print scale; with the spec, two proofs, told apart.

Identity: is it the file that this spec builds. Truth: does it show what was worked out. Each is said on a line of its own.
"""

import sys
from pathlib import Path

import click

from publisher import api
from publisher.api import Brief, Identity, Proof
from publisher.basics import Finding, Promises, Refusal, errors
from publisher.basics.wording import counted
from publisher.cli.options import json_option, read_file, set_option
from publisher.cli.refused import NOT_PROMISED
from publisher.cli.report import exit_code, finding_record, show_findings, write_json


@click.command(short_help="Read finished PDFs and judge their print scale.")
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FILE.pdf...")
@click.option(
    "--spec", type=click.Path(path_type=Path), help="The design's folder: hold the files against what it promises."
)
@click.option("--truth", is_flag=True, help="With --spec: do not build the files again to compare them.")
@set_option
@json_option
def proof(
    files: tuple[Path, ...], spec: Path | None, truth: bool, sets: tuple[tuple[str, str], ...], as_json: bool
) -> None:
    """Read finished PDFs like a stranger and judge their print scale. A file that cannot be opened ends the command with 2.

    With --spec there are two proofs. Identity: the file is built again, and the two are compared, byte by byte, else page by page.
    Truth: every outline, length, letter and count that the design promises is looked for. Without --spec a file is judged by what
    any PDF can be judged by.

    \b
    Example:  publisher proof build/packs/lock-stair/lock-stair-1.0.0-a4.pdf --spec designs/lock-stair
    """
    if truth and spec is None:
        raise click.UsageError("--truth needs --spec: without the spec nothing is built again")
    found: list[Finding] = []
    records = []
    opened = True
    brief = api.read(spec, sets) if spec is not None else None
    for file in files:
        data = read_file(file)
        promises, built = _expected(brief, file.name, truth) if brief is not None else (None, None)
        result = api.prove(data, str(file), promises)
        same = api.identify(data, built, str(file)) if built is not None and result.opened else None
        findings = (*(same.findings if same else ()), *result.findings)
        found += findings
        opened &= result.opened
        records.append(_record(result, same))
        if not as_json:
            _show(result, same)
        show_findings(findings)
    if as_json:
        write_json({"format": 1, "files": records})
    sys.exit(exit_code(found) if opened else 2)


def _expected(brief: Brief, name: str, truth: bool) -> tuple[Promises, bytes | None]:
    """Return what the design promises under this file name, and, unless ``truth`` alone is asked, the file that it builds.

    Raises Refusal when it promises no such file, or has errors.
    """
    if truth:
        found = api.promised(brief, name)
        if found is not None:
            return found, None
    else:
        made = api.rebuilt(brief, name)
        if made is not None:
            return made
    raise Refusal(
        NOT_PROMISED.found(
            f"the design {brief.slug} promises no file called {name}",
            subject=name,
            hint="keep the file's name as it was built, and give the spec of the same version",
        )
    )


def _identity_words(same: Identity) -> str:
    if same.verdict == "identical":
        return "byte by byte what this spec builds"
    if same.verdict == "alike":
        return (
            "bytes cannot tell: other versions of libraries wrote it, or it was saved again; "
            "every page draws and looks the same as what this spec builds"
        )
    return "not what this spec builds"


def _show(result: Proof, same: Identity | None) -> None:
    if not result.opened:
        click.echo(f"{result.name}: could not be opened, nothing in it was judged")
        return
    bad = len(errors(result.findings))
    scaled = _scale_judged(result)
    good = (
        "proved" if scaled else "nothing wrong found, but its print scale was not judged: give the design with --spec"
    )
    click.echo(f"{result.name}: {good if not bad else counted(bad, 'error')}")
    if same is not None:
        click.echo(f"  identity: {_identity_words(same)}")
    if result.measured:
        worst = max(result.measured, key=lambda m: abs(m.found - m.promised))
        click.echo(
            f"  {counted(len(result.measured), 'reading')}, largest difference {abs(worst.found - worst.promised):.4f} mm "
            f"({worst.what}, page {worst.page})"
        )
    for title, rows in (("judged", result.judged), ("not judged", result.unjudged)):
        if rows:
            click.echo(f"  {title}: {', '.join(rows)}")


def _scale_judged(result: Proof) -> bool:
    """Say whether the file was held against promises: without them nobody knows how long its lines should be."""
    return not result.unjudged


def _record(result: Proof, same: Identity | None) -> dict[str, object]:
    found = (*(same.findings if same else ()), *result.findings)
    return {
        "file": result.name,
        "good": not errors(found),
        "identity": {"verdict": same.verdict, "pages": list(same.pages), "beside": list(same.beside)} if same else None,
        "scale_judged": _scale_judged(result),
        "judged": list(result.judged),
        "unjudged": list(result.unjudged),
        "measured": [
            {"what": m.what, "page": m.page, "promised_mm": m.promised, "found_mm": m.found} for m in result.measured
        ],
        "findings": [finding_record(f) for f in found],
    }
