"""``publisher release``: all papers and variants, proved, as one new versioned folder."""

from pathlib import Path

import click

from publisher import api
from publisher.api import STANDARD, Brief, Bundle, Released
from publisher.basics.wording import counted, listed
from publisher.cli.ending import attempts
from publisher.cli.options import json_option, parse_sets
from publisher.cli.report import Report, write_json


@click.command(short_help="Prove a design's packs and put them in a new versioned folder.")
@click.argument("folders", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FOLDER...")
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default=Path("build/releases"),
    show_default=True,
    help="Where releases go.",
)
@click.option("--set", "sets", multiple=True, hidden=True, callback=parse_sets)  # to be refused in words that help
@json_option
def release(folders: tuple[Path, ...], out: Path, sets: tuple[tuple[str, str], ...], as_json: bool) -> None:
    """Build every paper and variant of the designs in FOLDER, prove each file, and put the version in place at once.

    Nothing is placed when the proof finds an error, or when the version was released before with other content.

    \b
    Example:  publisher release designs/lock-stair
    """
    report = Report()
    records: list[dict[str, object]] = []
    attempts().places = True
    for brief in report.briefs(folders, sets, apart=True):
        with report.passing_over(brief.slug):
            api.settle(out / brief.slug)
            released = _released(brief, out)
            report.add((f for built in released.builds for f in built.findings), brief.slug)
            if not as_json:
                _show(brief.slug, released)
            records.append(_record(brief.slug, released))
    if as_json:
        write_json({"format": 1, "releases": records, "findings": report.records()})
    report.leave()


def _released(brief: Brief, out: Path) -> Released:
    bundles: list[Bundle] = []
    name = f"{brief.slug} {brief.fields.text('version')}"
    with attempts().at(name, lambda: bool(bundles) and api.is_released(bundles[0], out)):
        return api.release(brief, out, bundles.append)


def _show(slug: str, released: Released) -> None:
    bundle = released.bundle
    if bundle is None:
        bad = ", ".join(built.variant or STANDARD for built in released.builds if not built.good)
        click.echo(f"{slug}: not released, errors in {bad}")
        return
    packs = sum(len(built.packs) for built in released.builds)
    state = "released" if released.new else "was released before with the same content"
    click.echo(
        f"{slug} {bundle.version}: {state}, {counted(packs, 'pack')}, {counted(len(bundle.files), 'file')}\n    {released.folder}"
    )
    if released.others:
        click.echo(f"    also there, and none of the release: {listed(released.others, 4)}")


def _record(slug: str, released: Released) -> dict[str, object]:
    bundle = released.bundle
    if bundle is None:
        return {"slug": slug, "released": False}
    return {
        "slug": slug,
        "version": bundle.version,
        "released": True,
        "new": released.new,
        "folder": str(released.folder),
        "files": [name for name, _ in bundle.files],
        "others": list(released.others),
    }
