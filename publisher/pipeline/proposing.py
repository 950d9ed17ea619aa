"""Steps that a design could have, as text of its spec."""

from publisher.basics import Finding, errors
from publisher.brief import Brief, steps_text, without
from publisher.design import uses_of
from publisher.joints import propose_steps
from publisher.pipeline.trying import make_at


def proposed_steps_of(brief: Brief, variant: str = "") -> tuple[str, tuple[Finding, ...]]:
    """Return the text of steps for one variant of a design, from the key ``steps`` on, and what was found in the design without its
    own; '' where that has an error, and its parts cannot be put together."""
    made = make_at(without(brief, "steps"), variant)
    if made.design is None or errors(made.findings):
        return "", made.findings
    return steps_text(propose_steps(made.design, made.parts, uses_of(brief))), made.findings
