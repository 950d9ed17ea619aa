"""One complaint of the schema to findings. The validator's own text is never shown."""

import re
from collections.abc import Callable
from pathlib import PurePosixPath

from publisher.basics import Finding, Place
from publisher.basics.wording import listed, nearest
from publisher.brief import limits, rules
from publisher.brief.bind import pointer
from publisher.brief.complaint import Complaint
from publisher.brief.nodes import Mapping, Scalar, Sequence
from publisher.brief.wording import expected, proposal, short, shown, ticked

FORMER_FORMATS = ("1",)
"""Formats that were read once: `upgrade` rewrites them."""

_MISREAD = re.compile("(y|n|yes|no|true|false|on|off|null)", re.IGNORECASE)
"""Words that readers of YAML 1.1, many editors among them, take for true, false or nothing where a key stands."""


def complain(complaint: Complaint) -> list[Finding]:
    """Return our findings for one objection of the validator; () when another objection says it better."""
    if complaint.about_key:
        return _key_name(complaint)
    return _WORDS.get(complaint.keyword, _misfit)(complaint)


def _key_name(c: Complaint) -> list[Finding]:
    word = str(c.instance)
    key = c.node.key(word) if isinstance(c.node, Mapping) else None
    if not word or c.keyword not in ("pattern", "maxLength"):
        return []
    message = f"“{short(word)}” is no name" if c.keyword == "pattern" else f"the name “{short(word)}” is too long"
    if c.keyword == "pattern" and _MISREAD.fullmatch(word):
        message = f"“{word}” cannot be a name: many editors read it as true, false or nothing"
        return [rules.KEY.found(message, subject=word, hint="choose a word that says what it is", place=c.place(key))]
    return [rules.KEY.found(message, subject=short(word), hint=f"write {expected(c.schema)}", place=c.place(key))]


def _unknown_keys(c: Complaint) -> list[Finding]:
    if not isinstance(c.node, Mapping):
        return []
    known = list(c.schema.get("properties", {}))
    used = {key.text for key, _ in c.node.entries}
    free = [word for word in known if word not in used]
    found: list[Finding] = []
    for key, _ in c.node.entries:
        if key.text and key.text not in known:
            message = f"“{short(key.text)}” is not a known key of {c.name}"
            if "x-of" in c.schema:  # in the words of the room that judges sizes: what was found, what is allowed
                sizes = [word for word in known if word != "kind"]  # an opening's kind stands beside its sizes
                takes = f"its sizes are {listed(ticked(sizes))}" if sizes else "it takes none"
                message = f"{c.schema['x-of']} has no size “{short(key.text)}”; {takes}"
            hint = _home(c, key.text) or proposal(key.text, free or known)
            if len(found) > limits.FINDINGS:
                break  # more than anybody reads, and looking for near words takes time
            found.append(rules.UNKNOWN_KEY.found(message, subject=short(key.text), hint=hint, place=c.place(key)))
    return found


def _home(c: Complaint, word: str) -> str:
    """Say where a key belongs that was written beside `with` in place of inside it."""
    with_ = c.schema.get("properties", {}).get("with")
    if with_ is None or nearest(word, c.schema["properties"]):
        return ""
    return f"if “{short(word)}” is a size of the shape, write it inside “with: {{…}}”"


def _missing_keys(c: Complaint) -> list[Finding]:
    missing = [key for key in c.wanted if key not in c.instance]
    meant = _meant(c, missing)
    return [_missing(c, key) for key in missing if key not in meant]


def _meant(c: Complaint, missing: list[str]) -> set[str]:
    """Return which missing keys are only misspelt: a misspelt key has its own finding."""
    known = c.schema.get("properties", {})
    if c.schema.get("additionalProperties") is not False and c.schema.get("unevaluatedProperties") is not False:
        return set()
    strange = [key for key in c.instance if key not in known][: limits.FINDINGS]
    return {nearest(key, missing) for key in strange}


def _missing(c: Complaint, key: str, because: str = "") -> Finding:
    field = c.schema.get("properties", {}).get(key, {})
    meaning = str(field.get("description", ""))
    hint = f"add “{key}:” with {expected(field)}" if field else f"add “{key}:”"
    name = f"{c.name} of {c.schema['x-of']}" if "x-of" in c.schema else c.name
    return rules.MISSING_KEY.found(
        f"{name} lacks “{key}”{because}",
        subject=key,
        hint=f"{hint}. {meaning}".strip(),
        place=c.place(c.key) if c.key is None else Place(c.file, c.key.line, c.key.column, pointer(c.path)),
    )


def _companions(c: Complaint) -> list[Finding]:
    found = []
    for key, needed in c.wanted.items():
        if key in c.instance:
            missing = [other for other in needed if other not in c.instance]
            meant = _meant(c, missing)
            found += [_missing(c, other, f", which goes with “{key}”") for other in missing if other not in meant]
    return found


def _kind(c: Complaint) -> list[Finding]:
    kind = c.schema.get("x-kind")
    if kind == "text" and isinstance(c.node, Mapping) and c.node.flow:
        name = str(c.path[-1]) if c.path and isinstance(c.path[-1], str) else "say"
        return [
            rules.UNQUOTED.found(
                f"the text of {c.name} opens with “{{”, which YAML takes for “key: value” pairs",
                subject=name,
                hint=f"write “{name}: >” on this line and the words indented on the next, or put them in quotes",
                place=c.place(),
            )
        ]
    hint = f"write {expected(c.schema)}"
    if c.schema.get("type") == "array" and isinstance(c.node, Scalar):
        hint = f"write it in square brackets: [{short(c.node.text)}]"
    message = f"{c.name} is {shown(c.node)}, but should be {expected(c.schema)}"
    return [rules.WRONG_KIND.found(message, subject=c.name.strip("“”"), hint=hint, place=c.place())]


def _word(c: Complaint) -> list[Finding]:
    if not isinstance(c.node, Scalar):
        return _kind(c)
    word = c.node.text.strip()
    message = f"{shown(c.node)} is not a known word for {c.name}"
    hint = proposal(word, c.schema.get("enum", ()))
    return [rules.UNKNOWN_WORD.found(message, subject=short(word), hint=hint, place=c.place())]


def _format(c: Complaint) -> list[Finding]:
    if not isinstance(c.node, Scalar):
        return _kind(c)
    message = f"the spec says format {shown(c.node)}, but this version of the tool reads format {c.wanted}"
    hint = f"write “format: {c.wanted}”, or use a later version of the tool"
    if c.node.text.strip() in FORMER_FORMATS:
        hint = (
            f"“publisher upgrade {PurePosixPath(c.file).parent}” rewrites it, and shows what changes before it writes"
        )
    return [rules.FORMAT.found(message, hint=hint, place=c.place())]


def _form(c: Complaint) -> list[Finding]:
    message = f"{c.name} is {shown(c.node)}, but should be {expected(c.schema)}"
    hint = "look for a missing unit, a blank or a letter that does not belong there"
    return [rules.BAD_FORM.found(message, subject=c.name.strip("“”"), hint=hint, place=c.place())]


def _long(c: Complaint) -> list[Finding]:
    count = len(str(c.instance))
    message = f"{c.name} has {count:,} letters; at most {c.wanted} can be used"
    return [rules.LENGTH.found(message, hint="shorten it", place=c.place(), value=float(count), limit=float(c.wanted))]


def _number_of_items(c: Complaint) -> list[Finding]:
    count = len(c.node.items) if isinstance(c.node, Sequence) else len(c.instance)
    if isinstance(c.node, Mapping):
        count = len(c.node.entries)
    bound = "at least" if c.keyword.startswith("min") else "at most"
    message = f"{c.name} holds {count}, but should hold {bound} {c.wanted}"
    if c.schema.get("minItems") == c.schema.get("maxItems") is not None:
        message = f"{c.name} holds {count}, but should hold exactly {c.wanted}"
    hint = "add what is missing" if bound == "at least" else "take some away"
    if isinstance(c.node, Mapping) and "x-says" in c.schema:
        given = listed(ticked(key.text for key, _ in c.node.entries))
        message = f"{c.name} has {given}: {count} fields, where {bound} {c.wanted} go together"
        hint = str(c.schema["x-says"])
    return [rules.ITEMS.found(message, hint=hint, place=c.place(), value=float(count), limit=float(c.wanted))]


def _repeated(c: Complaint) -> list[Finding]:
    seen: set[str] = set()
    found = []
    for item in c.node.items if isinstance(c.node, Sequence) else ():
        if isinstance(item, Scalar):
            word = item.text.strip()
            if word in seen:
                place = Place(c.file, item.line, item.column, pointer(c.path))
                found.append(
                    rules.REPEATED.found(
                        f"“{short(word)}” stands in {c.name} twice", hint="delete one of them", place=place
                    )
                )
            seen.add(word)
    return found or [
        rules.REPEATED.found(f"two items of {c.name} are alike", hint="delete one of them", place=c.place())
    ]


def _choice(c: Complaint) -> list[Finding]:
    if not isinstance(c.instance, dict):
        return []  # the wrong kind of value is another objection
    options = [key for option in c.wanted for key in option.get("required", ())]
    given = [key for key in options if key in c.instance]
    if not given and _meant(c, options) - {""}:
        return []
    message = (
        f"{c.name} gives {listed(ticked(given))} together"
        if given
        else f"{c.name} gives none of {listed(ticked(options))}"
    )
    hint = str(c.schema.get("x-says", "")) + ("" if not given else ": delete the others")
    return [rules.UNCLEAR.found(message, hint=hint, place=c.place())]


def _never(c: Complaint) -> list[Finding]:
    message = str(c.schema.get("x-never", f"{c.name} cannot stand here"))
    return [rules.UNKNOWN_KEY.found(message, subject=c.name.strip("“”"), hint=f"delete {c.name}", place=c.place())]


def _misfit(c: Complaint) -> list[Finding]:
    message = f"{c.name} is {shown(c.node)}, which the schema does not allow here"
    hint = f"write {expected(c.schema)}; “publisher schema” prints all rules"
    return [rules.MISFIT.found(message, subject=c.name.strip("“”"), hint=hint, place=c.place())]


def _nothing(_: Complaint) -> list[Finding]:
    return []  # an empty value has its own finding already


_WORDS: dict[str, Callable[[Complaint], list[Finding]]] = {
    "additionalProperties": _unknown_keys,
    "required": _missing_keys,
    "dependentRequired": _companions,
    "type": _kind,
    "enum": _word,
    "const": _format,
    "pattern": _form,
    "maxLength": _long,
    "minLength": _nothing,
    "minItems": _number_of_items,
    "maxItems": _number_of_items,
    "minProperties": _number_of_items,
    "maxProperties": _number_of_items,
    "uniqueItems": _repeated,
    "oneOf": _choice,
    "anyOf": _choice,
    "not": _never,
}
