"""``publisher build``: make and prove packs, put them in place, print one summary each."""

from dataclasses import replace
from pathlib import Path

import click

from publisher import api
from publisher.api import STANDARD, Built, BuiltPack, Proof
from publisher.basics import Refusal, errors
from publisher.cli.options import folders_argument, json_option, paper_option, set_option, variant_option
from publisher.cli.report import Report, finding_record, write_json


@click.command(short_help="Make the packs of one or more designs, and prove them.")
@folders_argument
@paper_option
@variant_option
@set_option
@click.option(
    "--out", type=click.Path(path_type=Path), default=Path("build/packs"), show_default=True, help="Where the packs go."
)
@json_option
def build(
    folders: tuple[Path, ...],
    papers: tuple[str, ...],
    variants: tuple[str, ...],
    sets: tuple[tuple[str, str], ...],
    out: Path,
    as_json: bool,
) -> None:
    """Make the packs of the designs in FOLDER (a design's folder, or a folder of them; “designs” when none is given).

    Every finished PDF is opened again and its print scale proved. A design with an error is not put in place; the others go on.

    \b
    Example:  publisher build designs/lock-stair --paper a4 --set board="3/16 in"
    """
    chosen = tuple(dict.fromkeys(p.lower() for p in papers))
    report = Report()
    records: list[dict[str, object]] = []
    for brief in report.briefs(folders or (Path("designs"),), sets, chosen):
        with report.passing_over():
            for variant in api.variants(brief, variants):
                built = _placed(api.build(brief, variant), out)
                report.add(built.findings)
                records.append(_record(built, out))
                if not as_json:
                    _summary(built, out)
    if as_json:
        write_json({"format": 1, "packs": records, "findings": [finding_record(f) for f in report.findings]})
    report.leave()


def _placed(built: Built, out: Path) -> Built:
    if not built.good:
        return built
    try:
        api.place(built, out)
    except Refusal as refusal:
        return replace(built, outputs=(), findings=(*built.findings, refusal.findings[0]))
    return built


def _summary(built: Built, out: Path) -> None:
    title = f"{built.slug}" + (f", {built.variant}" if built.variant else "")
    if not built.good:
        click.echo(f"{title}: not built, {len(errors(dict.fromkeys(built.findings)))} error(s)")
        return
    for one in built.packs:
        click.echo(_line(title, one, out / built.slug))


def _line(title: str, one: BuiltPack, folder: Path) -> str:
    pack, proof = one.pack, one.proof
    return (
        f"{title} {pack.version}, {pack.paper.title}: {len(pack.pages)} pages, proved "
        f"({len(pack.promises.lengths)} lengths, {len(pack.promises.outlines)} outlines, "
        f"largest difference {_worst(proof):.4f} mm)\n    {folder / one.pdf.path}"
    )


def _worst(proof: Proof) -> float:
    return max((abs(m.found - m.promised) for m in proof.measured), default=0.0)


def _record(built: Built, out: Path) -> dict[str, object]:
    return {
        "slug": built.slug,
        "variant": built.variant or STANDARD,
        "good": built.good,
        "files": [str(out / built.slug / o.path) for o in built.outputs],
        "packs": [
            {
                "file": str(out / built.slug / one.pdf.path),
                "paper": one.pack.paper.name,
                "pages": len(one.pack.pages),
                "lengths": len(one.pack.promises.lengths),
                "outlines": len(one.pack.promises.outlines),
                "worst_mm": _worst(one.proof),
            }
            for one in built.packs
            if built.good
        ],
        "findings": [finding_record(f) for f in built.findings],
    }
