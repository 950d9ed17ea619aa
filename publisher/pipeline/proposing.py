"""Steps that a design could have, as text of its spec."""

from publisher.basics import Finding, errors
from publisher.brief import Brief, StepText, steps_text, without
from publisher.design import languages_of, uses_of, variant_and_language
from publisher.joints import propose_steps
from publisher.pipeline.trying import make_at


def proposed_steps_of(brief: Brief, variant: str = "") -> tuple[str, tuple[Finding, ...]]:
    """Return the text of steps for one variant of a design, from the key ``steps`` on, in each language of its spec, and what was found
    in the design without its own; '' where that has an error, and its parts cannot be put together."""
    bare, uses = without(brief, "steps"), uses_of(brief)
    base, _ = variant_and_language(brief, variant)
    first, *others = languages_of(brief)
    said: dict[str, tuple[StepText, ...]] = {}
    found: dict[Finding, None] = {}
    for language in (first, *others):
        of_packs = base if language == first else f"{base}_{language}" if base else language
        made = make_at(bare, of_packs)
        if made.design is None or errors(made.findings):
            return "", made.findings
        found |= dict.fromkeys(made.findings)
        said[language] = propose_steps(made.design, made.parts, uses)
    own = said.pop(first)
    return steps_text(own, first, said), tuple(found)
