"""Sizes as given: the spec's words, a variant's over them, those set with the command over both. And the names that they may have."""

from publisher.basics import Finding, Place, Refusal
from publisher.brief import Brief, Table, Value
from publisher.design.language.functions import CONSTANTS, FUNCTIONS
from publisher.design.language.units import UNIT_BY_NAME
from publisher.design.language.wording import pick_hint
from publisher.design.rules import expressions as rules

STANDARD = "standard"
"""What the sizes as written are called where a variant's name would stand: in folders, on the command line."""


def variants(brief: Brief) -> tuple[str, ...]:
    """Return the names of the variants as written, without the base ''."""
    return tuple(entry.key for entry in brief.fields.table("variants").entries)


def asked_variants(brief: Brief, asked: tuple[str, ...] = ()) -> tuple[str, ...]:
    """Return the variants that are asked for by name, or all of them, the sizes as written ('') first.

    Raises Refusal for a name that the design does not have.
    """
    known = ("", *variants(brief))
    for name in asked:
        if name not in known and name != STANDARD:
            words, offered = f"{brief.slug} has no variant called “{name}”", ", ".join((STANDARD, *known[1:]))
            raise Refusal(rules.UNKNOWN_VARIANT.found(words, subject=brief.slug, hint=f"it has: {offered}"))
    return tuple("" if name == STANDARD else name for name in asked) or known


def given_sizes(brief: Brief, variant: str, findings: list[Finding]) -> dict[str, Value]:
    """Return every size as given, in the order of the spec: the variant's words over the spec's, the inputs' ``sets`` over both."""
    findings += _taken_names(brief)
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
    return [
        rules.VARIANT_NAME_TAKEN.found(
            f"a variant is called “{entry.key}”, which is what the sizes as written are called",
            subject=entry.key,
            hint="give the variant another name",
            place=entry.place,
        )
        for entry in brief.fields.table("variants").entries
        if entry.key == STANDARD
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
