"""``publisher check``: the rooms up to material, no pages: needs, facts, findings."""

import math
from pathlib import Path

import click

from publisher.cli.options import folders_argument, json_option, set_option, variant_option
from publisher.cli.report import Report, finding_record, write_json
from publisher.design import NeedPlan, say
from publisher.pipeline import BASE, Worked, wanted_variants, work


@click.command(short_help="Check designs without making pages: facts, needs, findings.")
@folders_argument
@variant_option
@set_option
@json_option
def check(
    folders: tuple[Path, ...], variants: tuple[str, ...], sets: tuple[tuple[str, str], ...], as_json: bool
) -> None:
    """Check the designs in FOLDER (“designs” when none is given) without making pages.

    \b
    Example:  publisher check designs/toll-house
    """
    report = Report()
    records = []
    for brief in report.briefs(folders or (Path("designs"),)):
        for variant in wanted_variants(brief, variants):
            worked = work(brief, variant, sets)
            records.append(_record(worked, variant))
            if not as_json:
                _show(worked, variant)
            report.add(worked.findings)
    if as_json:
        write_json({"format": 1, "designs": records})
    report.leave()


def _show(worked: Worked, variant: str) -> None:
    count = len(worked.findings)
    state = "nothing found" if not count else f"{count} finding{'s' if count > 1 else ''}"
    click.echo(f"{worked.brief.slug}, {variant or BASE}: {len(worked.parts)} parts, {state}")
    if worked.design is None or worked.joined is None:
        return
    for need in worked.design.needs:
        fact = worked.joined.fact(need.fact)
        if fact is not None:
            click.echo(f"  {need.fact}: {_said(fact.value, need.kind)}, {_limit(need)}")


def _said(value: float, kind: str) -> str:
    return "open" if math.isinf(value) else say(value, kind)  # type: ignore[arg-type]


def _limit(need: NeedPlan) -> str:
    limits = []
    if need.at_least is not None:
        limits.append(f"at least {say(need.at_least, need.kind)}")
    if need.at_most is not None:
        limits.append(f"at most {say(need.at_most, need.kind)}")
    return " and ".join(limits)


def _record(worked: Worked, variant: str) -> dict[str, object]:
    return {
        "slug": worked.brief.slug,
        "variant": variant or BASE,
        "parts": [p.id for p in worked.parts],
        "findings": [finding_record(f) for f in worked.findings],
    }
