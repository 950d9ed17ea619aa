"""``publisher build``: make and prove packs, put them in place, print one summary each."""

from pathlib import Path

import click

from publisher import api
from publisher.api import STANDARD, Built, BuiltPack, PlacedSet, Proof
from publisher.basics import errors
from publisher.basics.wording import listed
from publisher.cli.ending import attempts
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
@click.option("--discard-trials", is_flag=True, help="First remove what was built of these designs with --set before.")
@json_option
def build(
    folders: tuple[Path, ...],
    papers: tuple[str, ...],
    variants: tuple[str, ...],
    sets: tuple[tuple[str, str], ...],
    out: Path,
    discard_trials: bool,
    as_json: bool,
) -> None:
    """Make the packs of the designs in FOLDER (a design's folder, or a folder of them; “designs” when none is given).

    Every finished PDF is opened again and its print scale proved. A design's packs are one set: it is put in place whole, or not at
    all when there is an error in it, and the other designs go on. Packs of an earlier build that are not built now stay if they
    were made of the same files, else they are removed. What --set tries is marked as a trial on its pages,
    goes into a folder of its own and replaces nothing.

    \b
    Example:  publisher build designs/lock-stair --paper a4 --set board="3/16 in"
    """
    chosen = tuple(dict.fromkeys(p.lower() for p in papers))
    report = Report()
    attempts().places = True
    records: list[dict[str, object]] = []
    discarded: list[PlacedSet] = []
    for brief in report.briefs(folders or (Path("designs"),), sets, chosen, apart=True):
        with report.passing_over():
            api.settle(out / brief.slug)
            if discard_trials:
                discarded += api.discard_trials(brief.slug, out)
            builds: list[Built] = []
            for variant in api.variants(brief, variants):
                builds.append(api.build(brief, variant))
                report.add(builds[-1].findings)
            placed = _placed(tuple(builds), out, report) if all(built.good for built in builds) else None
            records += [_record(built, placed) for built in builds]
            if not as_json:
                _summary(builds, placed)
    if as_json:
        trials = (
            {"discarded": [{"folder": str(one.folder), **_left(one)} for one in discarded]} if discard_trials else {}
        )
        found = [finding_record(f) for f in report.findings]
        write_json({"format": 1, "packs": records, **trials, "findings": found})
    else:
        for one in discarded:
            click.echo(f"{one.folder}: trial discarded")
            _show_left(one)
    report.leave()


def _placed(builds: tuple[Built, ...], out: Path, report: Report) -> PlacedSet | None:
    """Put a design's builds in place; None when that is refused, which is shown."""
    with report.passing_over(), attempts().at(builds[0].slug, lambda: api.is_placed(builds, out)):
        return api.place(builds, out)
    return None


def _summary(builds: list[Built], placed: PlacedSet | None) -> None:
    good = all(built.good for built in builds)
    for built in builds:
        title = f"{built.slug}" + (f", {built.variant}" if built.variant else "")
        if not built.good:
            click.echo(f"{title}: not built, {len(errors(dict.fromkeys(built.findings)))} error(s)")
        elif placed is None:
            why = "" if good else ": a design is put in place whole, and there are errors in it"
            click.echo(f"{title}: built, but not put in place{why}")
        else:
            for one in built.packs:
                click.echo(_line(title, one, placed.folder))
    if placed is not None:
        _show_left(placed)


def _show_left(placed: PlacedSet) -> None:
    for word, left in (("removed", placed.removed), ("stays, made by an earlier build", placed.stays)):
        for why in dict.fromkeys(one.why for one in left):
            gone = ("all else that it made" if one.name == "." else one.name for one in left if one.why == why)
            names = sorted(gone, key=lambda name: not name.endswith(".pdf"))
            click.echo(f"    {word}: {listed(names, 4)} ({why})")


def _left(placed: PlacedSet) -> dict[str, object]:
    return {
        word: [{"file": str(placed.folder / one.name), "why": one.why} for one in left]
        for word, left in (("removed", placed.removed), ("stays", placed.stays))
    }


def _line(title: str, one: BuiltPack, folder: Path) -> str:
    pack, proof = one.pack, one.proof
    return (
        f"{title} {pack.version}, {pack.paper.title}: {len(pack.pages)} pages, proved "
        f"({len(pack.promises.lengths)} lengths, {len(pack.promises.outlines)} outlines, "
        f"largest difference {_worst(proof):.4f} mm)\n    {folder / one.pdf.path}"
    )


def _worst(proof: Proof) -> float:
    return max((abs(m.found - m.promised) for m in proof.measured), default=0.0)


def _record(built: Built, placed: PlacedSet | None) -> dict[str, object]:
    folder = placed.folder if placed is not None else None
    return {
        "slug": built.slug,
        "variant": built.variant or STANDARD,
        "good": built.good,
        "placed": folder is not None,
        "files": [str(folder / o.path) for o in built.outputs] if folder else [],
        "packs": [
            {
                "file": str(folder / one.pdf.path),
                "paper": one.pack.paper.name,
                "pages": len(one.pack.pages),
                "lengths": len(one.pack.promises.lengths),
                "outlines": len(one.pack.promises.outlines),
                "worst_mm": _worst(one.proof),
            }
            for one in built.packs
            if folder
        ],
        **(_left(placed) if placed is not None else {"removed": [], "stays": []}),
        "findings": [finding_record(f) for f in built.findings],
    }
