"""``publisher proof``: read finished files like a stranger and judge them: PDFs, whole folders of packs, releases and their zips.

With the spec there are two proofs, told apart. Identity: is it the file that this spec builds. Truth: does it show what was worked out.
"""

import sys
from pathlib import Path

import click

from publisher import api
from publisher.api import Brief
from publisher.basics import Finding, Promises, Refusal
from publisher.cli.options import json_option, read_file, set_option
from publisher.cli.proof_words import folder_record, pdf_record, show_folder, show_pdf
from publisher.cli.refused import NOT_PROMISED
from publisher.cli.report import exit_code, show_findings, write_json


@click.command(short_help="Read finished PDFs, or a whole folder, and judge them.")
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FILE.pdf|FOLDER|ZIP...")
@click.option(
    "--spec", type=click.Path(path_type=Path), help="The design's folder: hold the files against what it promises."
)
@click.option("--truth", is_flag=True, help="With --spec: do not build the files again to compare them.")
@set_option
@json_option
def proof(
    files: tuple[Path, ...], spec: Path | None, truth: bool, sets: tuple[tuple[str, str], ...], as_json: bool
) -> None:
    """Read finished PDFs like a stranger and judge them. A file that cannot be opened ends the command with 2.

    With --spec there are two proofs. Identity: the file is built again, and the two are compared, byte by byte, else page by page.
    Truth: every outline, length, letter and count that the design promises is looked for. Without --spec a file is judged by what
    any PDF can be judged by.

    Of a FOLDER that build or release made, or the ZIP of a release, all files are judged: PDFs, cut files, tables, pictures, lists.

    \b
    Example:  publisher proof build/packs/lock-stair --spec designs/lock-stair
    """
    if truth and spec is None:
        raise click.UsageError("--truth needs --spec: without the spec nothing is built again")
    brief = api.read(spec, sets) if spec is not None else None
    found: list[Finding] = []
    records: list[dict[str, object]] = []
    opened = True
    for file in files:
        if file.is_dir() or file.suffix.casefold() == ".zip":
            api.settle(file)
            whole = api.prove_files(str(file), api.contents(file), brief, truth)
            opened &= all(one.proof.opened for one in whole.pdfs)
            found += whole.findings
            records.append(folder_record(whole))
            if not as_json:
                show_folder(whole)
            show_findings(whole.findings)
            continue
        data = read_file(file)
        promises, built = _expected(brief, file.name, truth) if brief is not None else (None, None)
        result = api.prove(data, str(file), promises)
        same = api.identify(data, built, str(file)) if built is not None and result.opened else None
        findings = (*(same.findings if same else ()), *result.findings)
        found += findings
        opened &= result.opened
        records.append(pdf_record(result, same))
        if not as_json:
            show_pdf(result, same)
            click.echo(f"  {api.covers(design=brief is not None)}")
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
