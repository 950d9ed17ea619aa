"""Sizes as given: the spec's words, a variant's over them, those set with the command over both. And the names that they may have."""

from publisher.basics import Finding, Place, Refusal
from publisher.brief import Brief, Row, Table, Value
from publisher.design.language.functions import CONSTANTS, FUNCTIONS
from publisher.design.language.units import UNIT_BY_NAME
from publisher.design.language.wording import pick_hint
from publisher.design.rules import expressions as rules

STANDARD = "standard"
"""What the sizes as written are called where a variant's name would stand: in folders, on the command line."""

ENGLISH = "en"
PASTED = "paste"
"""What the packs to paste are called where a design offers both ways of use: by themselves, and after a variant's name and a ``_``."""


def variants(brief: Brief) -> tuple[str, ...]:
    """Return the names of the variants as written, without the base ''; with both ways of use, then those of all packs to paste; then
    all of them once more for each further language of the spec."""
    named = tuple(entry.key for entry in brief.fields.table("variants").entries)
    if len(uses_of(brief)) > 1:
        named = (*named, PASTED, *(f"{name}_{PASTED}" for name in named))
    others = languages_of(brief)[1:]
    return (*named, *(name for other in others for name in (other, *(f"{name}_{other}" for name in named))))


def languages_of(brief: Brief) -> tuple[str, ...]:
    """Return the languages that the spec names, the first one first; English when it names none."""
    several = tuple(item.text for item in brief.fields.row("languages") if isinstance(item, Value))
    return tuple(dict.fromkeys(several)) or (brief.fields.text("language", ENGLISH),)


def variant_and_language(brief: Brief, variant: str) -> tuple[str, str]:
    """Return which variant this is in the first language of the spec ('' for the sizes as written), and its language."""
    first, *others = languages_of(brief)
    for other in others:
        if variant == other:
            return "", other
        if variant.endswith(f"_{other}"):
            return variant.removesuffix(f"_{other}"), other
    return variant, first


def variant_and_use(brief: Brief, variant: str) -> tuple[str, str]:
    """Return which variant of the spec this is ('' for the sizes as written), and its way of use: trace or paste."""
    uses = uses_of(brief)
    variant, _ = variant_and_language(brief, variant)
    if len(uses) < 2:
        return variant, uses[0] if uses else "trace"
    if variant == PASTED:
        return "", PASTED
    base = variant.removesuffix(f"_{PASTED}")
    return base, PASTED if base != variant else "trace"


def uses_of(brief: Brief) -> tuple[str, ...]:
    """Return the ways of use that the spec names: trace, paste or both."""
    node = brief.fields.get("use")
    if isinstance(node, Value):
        return (node.text,)
    return tuple(item.text for item in node.items if isinstance(item, Value)) if isinstance(node, Row) else ()


def asked_variants(brief: Brief, asked: tuple[str, ...] = ()) -> tuple[str, ...]:
    """Return the variants that are asked for by name, or all of them, the sizes as written ('') first.

    Raises Refusal for a name that the design does not have.
    """
    known = ("", *variants(brief))
    for name in asked:
        if name not in known and name != STANDARD:
            words, offered = f"{brief.slug} has no variant called “{name}”", ", ".join((STANDARD, *known[1:]))
            raise Refusal(rules.UNKNOWN_VARIANT.found(words, subject=brief.slug, hint=f"it has: {offered}"))
    return tuple(dict.fromkeys("" if name == STANDARD else name for name in asked)) or known


def given_sizes(brief: Brief, variant: str, findings: list[Finding]) -> dict[str, Value]:
    """Return every size as given, in the order of the spec: the variant's words over the spec's, the inputs' ``sets`` over both."""
    findings += _taken_names(brief)
    variant, _ = variant_and_use(brief, variant)
    given: dict[str, Value] = {}
    for entry in brief.fields.table("sizes").entries:
        if isinstance(entry.node, Value) and _name_is_free(entry.key, entry.place, findings):
            given[entry.key] = entry.node
    if variant:
        _override_by_variant(brief, variant, given, findings)
    for name, text in brief.inputs.sets:
        place = Place(f"--set {name}")
        if name in given:
            given[name] = Value(text, "quantity", place)
        else:
            findings.append(
                rules.UNKNOWN_SET.found(
                    f"there is no size “{name}” in this design",
                    subject=brief.slug,
                    hint=pick_hint(name, given, "sizes"),
                    place=place,
                )
            )
    return given


def _taken_names(brief: Brief) -> list[Finding]:
    taken = {STANDARD: "sizes as written"}
    ends = {PASTED: "packs to paste"} if len(uses_of(brief)) > 1 else {}
    ends |= {other: f"packs in “{other}”" for other in languages_of(brief)[1:]}
    return [
        rules.VARIANT_NAME_TAKEN.found(
            f"a variant is called “{entry.key}”, which is what the {what} are called",
            subject=entry.key,
            hint="give the variant another name",
            place=entry.place,
        )
        for entry in brief.fields.table("variants").entries
        if (what := taken.get(entry.key) or next((said for end, said in ends.items() if entry.key.endswith(end)), ""))
    ]


def _override_by_variant(brief: Brief, variant: str, given: dict[str, Value], findings: list[Finding]) -> None:
    known = brief.fields.table("variants")
    wanted = known.get(variant)
    if not isinstance(wanted, Table):
        hint = pick_hint(variant, variants(brief), "variants")
        findings.append(
            rules.UNKNOWN_VARIANT.found(
                f"there is no variant “{variant}”", subject=brief.slug, hint=hint, place=known.place
            )
        )
        return
    for entry in wanted.table("sizes").entries:
        if not isinstance(entry.node, Value):
            continue
        if entry.key in given:
            given[entry.key] = entry.node
        else:
            hint = pick_hint(entry.key, given, "sizes")
            findings.append(
                rules.UNKNOWN_VARIANT.found(
                    f"the variant “{variant}” changes “{entry.key}”, but there is no such size",
                    subject=f"variant {variant}",
                    hint=hint,
                    place=entry.place,
                )
            )


def _name_is_free(name: str, place: Place, findings: list[Finding]) -> bool:
    what = "a unit" if name in UNIT_BY_NAME else "a function" if name in FUNCTIONS else ""
    what = what or ("a constant" if name in CONSTANTS else "")
    if what:
        findings.append(
            rules.RESERVED.found(
                f"“{name}” is {what} of the language and cannot name a size",
                subject=f"size {name}",
                hint=f"choose another name, such as {name}_size",
                place=place,
            )
        )
    elif not name.isidentifier():
        findings.append(
            rules.RESERVED.found(
                f"“{name}” cannot be used in an expression",
                subject=f"size {name}",
                hint="a size's name has letters, digits and _, and does not start with a digit",
                place=place,
            )
        )
    else:
        return True
    return False
