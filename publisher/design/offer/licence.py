"""The licence of a design: an expression of SPDX identifiers, as the library ``packaging`` knows them."""

from packaging.licenses import InvalidLicenseExpression, canonicalize_license_expression

from publisher.basics.wording import did_you_mean
from publisher.brief import Value
from publisher.design.language import Scope
from publisher.design.rules import plans as rules

USUAL = (
    "CC-BY-4.0", "CC-BY-SA-4.0", "CC-BY-NC-4.0", "CC-BY-NC-SA-4.0", "CC-BY-ND-4.0", "CC-BY-NC-ND-4.0", "CC0-1.0", "MIT", "GPL-3.0-only",
)  # fmt: skip
"""Identifiers that designs come under most: what a slip is likely to mean."""
_HINT = f"write an SPDX identifier such as {USUAL[2]} (spdx.org/licenses), or LicenseRef-NAME for terms of your own"


def read_licence(value: Value | None, scope: Scope) -> str:
    """Return the licence as written; a finding when it is no expression of SPDX identifiers. Capitals make no difference."""
    if value is None or not value.text.strip():
        return ""
    text = value.text.strip()
    try:
        canonicalize_license_expression(text)
    except InvalidLicenseExpression:
        near = did_you_mean(text, USUAL)
        hint = f"{near} {_HINT}" if near else _HINT
        what = f"“{text}” is no licence that SPDX lists"
        scope.findings.append(rules.LICENCE.found(what, subject="licence", hint=hint, place=value.place))
    return text
