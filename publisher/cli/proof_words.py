"""What ``publisher proof`` says of a PDF and of a whole folder, in words and as JSON."""

import click

from publisher import api
from publisher.api import Identity, Proof, ProvedFolder
from publisher.basics import errors
from publisher.basics.wording import counted
from publisher.cli.report import finding_record


def _identity_words(same: Identity) -> str:
    if same.verdict == "identical":
        return "byte by byte what this spec builds"
    if same.verdict == "alike":
        return (
            "bytes cannot tell: other versions of libraries wrote it, or it was saved again; "
            "every page draws and looks the same as what this spec builds"
        )
    return "not what this spec builds"


def show_pdf(result: Proof, same: Identity | None) -> None:
    """Print what was found in a PDF: the verdict, how far readings were off, what was judged and what not."""
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


def pdf_record(result: Proof, same: Identity | None) -> dict[str, object]:
    """Return the JSON form of what was found in a PDF."""
    found = (*(same.findings if same else ()), *result.findings)
    return {
        "file": result.name,
        "good": not errors(found),
        "identity": {"verdict": same.verdict, "pages": list(same.pages), "beside": list(same.beside)} if same else None,
        "scale_judged": _scale_judged(result),
        "covers": api.covers(design=_scale_judged(result)) if result.opened else "",
        "judged": list(result.judged),
        "unjudged": list(result.unjudged),
        "measured": [
            {"what": m.what, "page": m.page, "promised_mm": m.promised, "found_mm": m.found} for m in result.measured
        ],
        "pages": [
            {
                "page": page.page,
                "looked_at": [
                    {"what": one.what, "reader": one.reader, "things": one.things, "largest_difference_mm": one.largest}
                    for one in page.looked
                    if one.things
                ],
            }
            for page in result.pages
        ],
        "findings": [finding_record(f) for f in found],
    }


def show_folder(whole: ProvedFolder) -> None:
    """Print what was found in a folder: its PDFs each on a line, then what was looked at beside them."""
    bad = len(errors(whole.findings))
    alone = whole.by == "records"
    good = "proved" if whole.proved else "nothing wrong found"
    click.echo(f"{whole.name}: {good if not bad else counted(bad, 'error')}")
    for one in whole.pdfs:
        if not one.proof.opened:
            state = "could not be opened, nothing in it was judged"
        elif own := len(errors(one.findings)):
            state = counted(own, "error")
        else:
            readings = counted(len(one.proof.measured), "reading")
            state = f"proved, {readings}" if _scale_judged(one.proof) else "print scale not judged"
            state += f", largest difference {worst:.4f} mm" if (worst := _largest(one.proof)) is not None else ""
        click.echo(f"  {one.proof.name}: {state}")
        if one.identity is not None:
            click.echo(f"    identity: {_identity_words(one.identity)}")
    for looked in whole.looked:
        if looked.things:
            click.echo(f"  {looked.what}: {looked.things:,} looked at")
    if whole.as_built is not None:
        click.echo(f"  cut files and tables that are byte by byte what this spec builds: {whole.as_built}")
    click.echo(f"  {api.covers(folder=True, design=not alone)}")


def _largest(result: Proof) -> float | None:
    return max((abs(m.found - m.promised) for m in result.measured), default=None)


def folder_record(whole: ProvedFolder) -> dict[str, object]:
    """Return the JSON form of what was found in a folder."""
    return {
        "folder": whole.name,
        "good": not errors(whole.findings),
        "held_against": whole.by,
        "covers": api.covers(folder=True, design=whole.by == "design"),
        "files": [pdf_record(one.proof, one.identity) for one in whole.pdfs],
        "beside": [{"what": one.what, "things": one.things} for one in whole.looked],
        "as_built": whole.as_built,
        "findings": [finding_record(f) for f in whole.findings],
    }
