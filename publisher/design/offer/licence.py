"""The licence of a design: an expression of SPDX identifiers, as the library ``packaging`` knows them, or one of our own texts."""

import json
from dataclasses import replace
from functools import cache
from pathlib import Path

from packaging.licenses import InvalidLicenseExpression, canonicalize_license_expression

from publisher.basics import record
from publisher.basics.wording import did_you_mean
from publisher.brief import Value
from publisher.design.language import Scope
from publisher.design.rules import plans as rules

USUAL = (
    "CC-BY-4.0", "CC-BY-SA-4.0", "CC-BY-NC-4.0", "CC-BY-NC-SA-4.0", "CC-BY-ND-4.0", "CC-BY-NC-ND-4.0", "CC0-1.0", "MIT", "GPL-3.0-only",
)  # fmt: skip
"""Identifiers that designs come under most: what a slip is likely to mean."""
NOBODY_NAMED = "whoever designed it"


@record
class OwnLicence:
    """A licence whose text is ours and stands in the pack: the words that choose it in the spec, its title, its paragraphs."""

    words: str
    title: str
    text: tuple[str, ...]


@cache
def own_licences() -> tuple[OwnLicence, ...]:
    """Return the licences of ours (``own_licences.json``); ``{designer}`` in their text is the designer's name."""
    rows = json.loads((Path(__file__).parent / "own_licences.json").read_text(encoding="utf-8"))["licences"]
    return tuple(OwnLicence(row["words"], row["title"], tuple(row["text"])) for row in rows)


def own_licence(licence: str, designer: str) -> OwnLicence | None:
    """Return the text of a licence as ``read_licence`` gives it, with the designer's name; None where it is none of ours."""
    own = next((one for one in own_licences() if one.words == licence), None)
    if own is None:
        return None
    name = designer.strip() or NOBODY_NAMED
    return replace(own, text=tuple(paragraph.replace("{designer}", name) for paragraph in own.text))


def licence_choices() -> str:
    """Return in words what can be written as a licence."""
    own = " or ".join(one.words for one in own_licences())
    return f"{own} for a text of ours, an SPDX identifier such as {USUAL[2]} (spdx.org/licenses), or LicenseRef-NAME for terms of your own"


def read_licence(value: Value | None, scope: Scope) -> str:
    """Return the licence as written, one of ours in its own words; a finding when it is neither that nor an expression of SPDX
    identifiers. Capitals make no difference."""
    if value is None or not value.text.strip():
        return ""
    text = value.text.strip()
    own = next((one.words for one in own_licences() if one.words == " ".join(text.lower().split())), "")
    if own:
        return own
    try:
        canonicalize_license_expression(text)
    except InvalidLicenseExpression:
        near = did_you_mean(text, (*USUAL, *(one.words for one in own_licences())))
        hint = f"{near} write {licence_choices()}" if near else f"write {licence_choices()}"
        what = f"“{text}” is no licence that SPDX lists"
        scope.findings.append(rules.LICENCE.found(what, subject="licence", hint=hint, place=value.place))
    return text
