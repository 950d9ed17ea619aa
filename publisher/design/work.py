"""The room's main function: from a brief to a design, everything worked out."""

from collections import Counter

from publisher.basics import Finding, errors
from publisher.brief import Brief, Table
from publisher.design import rules_plans as rules
from publisher.design.boards import read_boards
from publisher.design.model import Design, PanelPlan, StackPlan, TextPlan
from publisher.design.needs import read_needs
from publisher.design.panels import read_panels
from publisher.design.papers import read_papers
from publisher.design.parts import PartsReader
from publisher.design.parts_known import KnownParts, know_parts
from publisher.design.scope import Scope
from publisher.design.sizes import given_sizes, work_out_sizes
from publisher.design.stacks import check_layers, read_stacks
from publisher.design.steps import StepsReader, names_in
from publisher.design.texts import read_text
from publisher.design.treatments import treat
from publisher.design.wording import say


def work_out(brief: Brief, variant: str = "", sets: tuple[tuple[str, str], ...] = ()) -> Design:
    """Work out one variant of a design ('' for the sizes as written), with sizes set on the command line over both.

    Never raises for what a designer wrote: the design carries findings, and what they are about is left out. Lengths in
    mm, angles in degrees.
    """
    fields = brief.fields
    findings: list[Finding] = []
    sizes, amounts = work_out_sizes(given_sizes(brief, variant, sets, findings), findings)
    scope = Scope(amounts, findings)
    boards = read_boards(fields.table("boards"), scope)
    named = tuple(entry.key for entry in fields.table("boards").entries)
    known = know_parts(fields.table("parts"), boards, named, scope)
    stacks, panels = _assemblies(fields.table("assembly"), known, scope)
    treatments = treat(panels, known, scope)
    use = fields.text("use", "trace")
    buildable = check_layers(stacks, scope)
    parts = PartsReader(known, _used(stacks, panels), treatments, use, scope).read(fields.table("parts"))
    assemblies = tuple(entry.key for entry in fields.table("assembly").entries)
    reader = StepsReader(brief, tuple(known.boards), assemblies, stacks, scope)
    tools = names_in(fields.get("tools"))
    materials = reader.materials()
    cover = fields.get("cover")
    at_hand = (*tools, *(material.name for material in materials if material.name))
    return Design(
        slug=brief.slug,
        variant=variant,
        variant_title=_variant_title(fields, variant, scope),
        title=fields.text("title", brief.slug),
        version=fields.text("version"),
        designer=fields.text("designer"),
        licence=fields.text("licence"),
        summary=reader.text(fields.value("summary"), fields.place, "summary"),
        language=fields.text("language", "en"),
        use="paste" if use == "paste" else "trace",
        sizes=sizes,
        boards=boards,
        parts=parts,
        stacks=stacks if buildable else (),
        panels=panels,
        needs=read_needs(fields.row("needs"), reader.owners, scope),
        tools=tools,
        materials=materials,
        steps=reader.steps(at_hand),
        papers=read_papers(fields.row("papers"), scope),
        fonts=names_in(fields.get("fonts")),
        files=brief.files,
        cover=reader.picture(cover, "cover") if isinstance(cover, Table) else None,
        findings=tuple(findings),
    )


def _assemblies(table: Table, known: KnownParts, scope: Scope) -> tuple[tuple[StackPlan, ...], tuple[PanelPlan, ...]]:
    """Return all stacks and all panel assemblies, in the order of the spec."""
    stacks: list[StackPlan] = []
    panels: list[PanelPlan] = []
    for entry in table.entries:
        if not isinstance(entry.node, Table):
            continue
        is_stack, is_panels = entry.node.get("stack") is not None, entry.node.get("panels") is not None
        if is_stack and not is_panels:
            stacks.extend(read_stacks(entry.key, entry.node, known, scope))
        elif is_panels and not is_stack:
            plan = read_panels(entry.key, entry.node, known, scope)
            panels.extend(() if plan is None else (plan,))
        else:
            scope.findings.append(
                rules.ASSEMBLY.found(
                    f"the assembly {entry.key} has {'both a stack and panels' if is_stack else 'neither a stack nor panels'}",
                    subject=f"assembly {entry.key}",
                    hint="make two assemblies of it" if is_stack else "say stack: … or panels: …",
                    place=entry.place,
                )
            )
    return tuple(stacks), tuple(panels)


def _used(stacks: tuple[StackPlan, ...], panels: tuple[PanelPlan, ...]) -> dict[str, int]:
    """Copies of each part that the assemblies need."""
    used: Counter[str] = Counter()
    for stack in stacks:
        for row in stack.rows:
            used[row.part] += row.count
    for panel in panels:
        used.update(place.part for place in panel.places)
    return dict(used)


def _variant_title(fields: Table, variant: str, scope: Scope) -> str:
    """Return a variant's title with its blanks filled from sizes: no fact is known yet, and none is allowed."""
    wanted = fields.table("variants").get(variant) if variant else None
    title = wanted.value("title") if isinstance(wanted, Table) else None
    if title is None:
        return variant
    text: TextPlan = read_text(title, (), scope, f"variant {variant}")
    words = []
    for piece in text.pieces:
        if isinstance(piece, str):
            words.append(piece)
            continue
        amount = None if errors(scope.findings) else scope.amount(piece.expression, piece.place, f"variant {variant}")
        kind = amount.kind() if amount else None
        words.append(say(amount.value, kind) if amount and kind else "{" + piece.expression + "}")
    return "".join(words)
