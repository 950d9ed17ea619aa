"""``publisher yield``: lay parts out on board sheets; ``--keep`` stores the layouts beside the spec."""

from pathlib import Path

import click

from publisher.cli.options import json_option, set_option, variant_option
from publisher.cli.report import Report, finding_record, write_json
from publisher.material import BoardNeeds, layouts_document
from publisher.pipeline import BASE, Worked, wanted_variants, work
from publisher.release import put_in_place


@click.command(short_help="Lay the parts out on board sheets and keep the best layouts.")
@click.argument("folder", type=click.Path(path_type=Path))
@variant_option
@set_option
@click.option(
    "--effort",
    type=click.Choice(["quick", "careful", "patient"]),
    default="quick",
    show_default=True,
    help="How long to look.",
)
@click.option(
    "--keep", is_flag=True, help="Write the layouts to layouts.json beside the spec: builds then only verify them."
)
@json_option
def yields(
    folder: Path, variants: tuple[str, ...], sets: tuple[tuple[str, str], ...], effort: str, keep: bool, as_json: bool
) -> None:
    """Lay the parts of the design in FOLDER out on its board sheets.

    \b
    Example:  publisher yield designs/lock-stair --keep
    """
    report = Report()
    records = []
    for brief in report.briefs((folder,)):
        kept: list[BoardNeeds] = []
        for variant in wanted_variants(brief, variants):
            worked = work(brief, variant, sets, effort)
            records.append(_record(worked, variant))
            if not as_json:
                _show(worked, variant)
            report.add(worked.findings)
            if worked.needs is not None:
                kept.append(worked.needs)
        if keep and kept:
            store = brief.file("layouts.json")
            put_in_place(
                _home(folder, brief.slug),
                [("layouts.json", layouts_document(tuple(kept), store.data if store else None))],
            )
    if as_json:
        write_json({"format": 1, "designs": records})
    report.leave()


def _home(given: Path, slug: str) -> Path:
    """Return the design's own folder: the one given, or the one in it."""
    return given if (given / "spec.yaml").exists() else given / slug


def _show(worked: Worked, variant: str) -> None:
    click.echo(f"{worked.brief.slug}, {variant or BASE}")
    for need in worked.needs.yields if worked.needs else ():
        click.echo(f"  {need.board}, {need.sheet.label}: at least {len(need.sheets)} sheet(s) for the whole list,")
        click.echo(
            f"      {need.grid_sheets} on a grid, {need.bound} by area; {100 * need.offcut_share:.0f} % left over"
        )
        for row in need.rows:
            click.echo(f"    {row.part:20} alone: at least {row.careful:3} a sheet, {row.grid:3} on a grid")


def _record(worked: Worked, variant: str) -> dict[str, object]:
    return {
        "slug": worked.brief.slug,
        "variant": variant or BASE,
        "yields": [
            {
                "board": need.board,
                "sheet": need.sheet.label,
                "width_mm": need.sheet.width,
                "height_mm": need.sheet.height,
                "sheets": len(need.sheets),
                "grid_sheets": need.grid_sheets,
                "bound": need.bound,
                "offcut_share": need.offcut_share,
                "cut_length_mm": need.cut_length,
                "score_length_mm": need.score_length,
                "parts": [{"part": r.part, "careful": r.careful, "grid": r.grid} for r in need.rows],
            }
            for need in (worked.needs.yields if worked.needs else ())
        ],
        "findings": [finding_record(f) for f in worked.findings],
    }
