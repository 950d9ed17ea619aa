"""The room's main function: from a brief to a design, everything worked out."""

from publisher.basics import Finding, gathered
from publisher.brief import Brief, Table
from publisher.design.assembly import brace_parts, plan_folds, read_assemblies, read_meets, treat
from publisher.design.language import (
    PASTED,
    Scope,
    given_sizes,
    in_language,
    variant_and_language,
    variant_and_use,
    work_out_sizes,
)
from publisher.design.offer import (
    StepsReader,
    filled,
    names_in,
    read_boards,
    read_figure,
    read_fits,
    read_licence,
    read_needs,
    read_papers,
    read_text,
)
from publisher.design.parts import PartsReader, know_parts
from publisher.design.records import Design, Size

TO_PASTE = "to paste"


def work_out(brief: Brief, variant: str = "", tried: tuple[Size, ...] = ()) -> Design:
    """Work out one variant of a design ('' for the sizes as written), with the sizes that the inputs set over both.

    ``tried`` are sizes with values to try in place of all that was written for them.

    Never raises for what a designer wrote: the design carries findings, and what they are about is left out. Lengths in
    mm, angles in degrees.
    """
    findings: list[Finding] = []
    _, language = variant_and_language(brief, variant)
    brief = in_language(brief, language, findings)
    fields = brief.fields
    sizes, amounts = work_out_sizes(given_sizes(brief, variant, findings), findings, tried)
    scope = Scope(amounts, findings)
    boards = read_boards(fields.table("boards"), scope)
    named = tuple(entry.key for entry in fields.table("boards").entries)
    known = know_parts(fields.table("parts"), boards, named, scope)
    built = read_assemblies(fields.table("assembly"), known, scope)
    treatments = treat(built.panels, built.complete, known, scope)
    base, use = variant_and_use(brief, variant)
    parts = PartsReader(known, built.used(), treatments, use, scope, written=fields.text("use", "both")).read(
        fields.table("parts")
    )
    parts = (*parts, *brace_parts(built, parts, boards, known, scope))
    whole = tuple(p for p in built.panels if p.name in built.complete for _ in range(built.copies(p.name)))
    folds = plan_folds(whole, parts, boards, findings)
    reader = StepsReader(
        brief, tuple(known.boards), built.names, built.layers(), scope, known.families, use, base, built.buildable()
    )
    tools = names_in(fields.get("tools"))
    materials = reader.materials()
    elsewhere = reader.elsewhere()
    cover = fields.get("cover")
    at_hand = (*tools, *(material.name for material in materials if material.name))
    return Design(
        slug=brief.slug,
        variant=variant,
        variant_title=_variant_title(brief, variant, scope),
        title=fields.text("title", brief.slug),
        version=fields.text("version"),
        designer=fields.text("designer"),
        licence=read_licence(fields.value("licence"), scope),
        summary=reader.text(fields.value("summary"), fields.place, "summary"),
        language=language,
        use="paste" if use == "paste" else "trace",
        sizes=sizes,
        boards=boards,
        parts=parts,
        stacks=built.stacks,
        panels=built.panels,
        needs=read_needs(fields.row("needs"), reader.owners, scope),
        tools=tuple(name for name in tools if name not in elsewhere),
        materials=tuple(material for material in materials if material.name not in elsewhere),
        steps=reader.steps(at_hand),
        papers=read_papers(fields.row("papers"), scope),
        fonts=names_in(fields.get("fonts")),
        files=brief.files,
        cover=reader.picture(cover, "cover") if isinstance(cover, Table) else None,
        photos=reader.photos(fields.row("photos")),
        meets=read_meets(fields.table("meets")),
        folds=folds,
        fits=read_fits(fields.row("fits"), reader.owners, scope),
        wholes=built.wholes,
        figure=read_figure(sizes, findings),
        handled=fields.text("handled") == "true",
        findings=gathered(findings),
    )


def _variant_title(brief: Brief, variant: str, scope: Scope) -> str:
    """Return a variant's title; where a design offers both ways of use, packs to paste say so."""
    base, use = variant_and_use(brief, variant)
    title = _written_title(brief.fields, base, scope)
    return ", ".join(text for text in (title, TO_PASTE if variant != base and use == PASTED else "") if text)


def _written_title(fields: Table, variant: str, scope: Scope) -> str:
    """Return a variant's title with its blanks filled from sizes: no fact is known yet, and none is allowed."""
    wanted = fields.table("variants").get(variant) if variant else None
    title = wanted.value("title") if isinstance(wanted, Table) else None
    if title is None:
        return variant
    before = len(scope.findings)
    text = read_text(title, (), scope, f"variant {variant}")
    return title.text if len(scope.findings) > before else filled(text, scope)
