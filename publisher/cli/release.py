"""``publisher release``: all papers and variants, proved, as one new versioned folder."""

from pathlib import Path

import click

from publisher.cli.options import json_option
from publisher.cli.report import Report, finding_record, write_json
from publisher.pipeline import BASE, Built, build_variant, bundle_of, wanted_variants
from publisher.release import place_bundle


@click.command(short_help="Prove a design's packs and put them in a new versioned folder.")
@click.argument("folders", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FOLDER...")
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default=Path("build/releases"),
    show_default=True,
    help="Where releases go.",
)
@json_option
def release(folders: tuple[Path, ...], out: Path, as_json: bool) -> None:
    """Build every paper and variant of the designs in FOLDER, prove each file, and put the version in place at once.

    Nothing is placed when the proof finds an error, or when the version was released before with other content.

    \b
    Example:  publisher release designs/lock-stair
    """
    report = Report()
    records: list[dict[str, object]] = []
    for brief in report.briefs(folders):
        with report.passing_over():
            builds = tuple(build_variant(brief, variant) for variant in wanted_variants(brief, ()))
            report.add(f for built in builds for f in built.findings)
            records.append(_released(brief.slug, builds, out, as_json))
    if as_json:
        write_json({"format": 1, "releases": records, "findings": [finding_record(f) for f in report.findings]})
    report.leave()


def _released(slug: str, builds: tuple[Built, ...], out: Path, quiet: bool) -> dict[str, object]:
    if not all(built.good for built in builds):
        bad = ", ".join(built.variant or BASE for built in builds if not built.good)
        if not quiet:
            click.echo(f"{slug}: not released, errors in {bad}")
        return {"slug": slug, "released": False}
    bundle = bundle_of(builds)
    place, new = place_bundle(bundle, out)
    if not quiet:
        packs = sum(len(built.packs) for built in builds)
        state = "released" if new else "was released before with the same content"
        click.echo(f"{slug} {bundle.version}: {state}, {packs} packs, {len(bundle.files)} files\n    {place}")
    return {
        "slug": slug,
        "version": bundle.version,
        "released": True,
        "new": new,
        "folder": str(place),
        "files": [name for name, _ in bundle.files],
    }
