"""Steps that speak of a mark which none of their templates has."""

import re

from publisher.basics import Check, Findings, LineKind, Purpose, Severity, checked, record
from publisher.basics.wording import listed
from publisher.design import StepPlan
from publisher.geometry import Part
from publisher.joints.assembled import Assembled


@record
class _Term:
    """Words for a mark (a pattern), what it is for, the kind of its line, or what its own name or that of an edge says."""

    pattern: str
    purposes: tuple[Purpose, ...] = ()
    kinds: tuple[LineKind, ...] = ()
    names: tuple[str, ...] = ()

    def on(self, part: Part) -> bool:
        """Tell whether a template has such a mark."""
        if any(mark.purpose in self.purposes or mark.kind in self.kinds for mark in part.marks):
            return True
        said = [mark.name for mark in part.marks] + [edge.name for path in part.outline.paths for edge in path.edges]
        return any(word in name.lower() for word in self.names for name in said)


TERMS = (
    _Term(r"lap[- ](?:line|mark)s?", (Purpose.LAP,), (), ("lap",)),
    _Term(r"line-up (?:line|mark|notch)(?:e?s)?", (Purpose.LINE_UP,), (), ("line_up", "line up", "notch")),
    _Term(r"cent(?:re|er) (?:cross|line|mark)(?:e?s)?", (Purpose.CENTRE,), (), ("centre", "center", "middle")),
    _Term(r"(?:joint|rim) ticks?", (Purpose.JOINT_TICK, Purpose.LINE_UP), (), ("tick", "joint")),
    _Term(r"(?:hinge|fold) (?:line|mark)s?", (Purpose.BEND,), (LineKind.FOLD, LineKind.SCORE), ("hinge", "fold")),
    _Term(r"course (?:line|mark|joint|end)s?", (Purpose.SURFACE, Purpose.JOINT_TICK), (), ("course", "joint")),
    _Term(r"seat (?:line|mark|outline)s?", (Purpose.LAP, Purpose.MATCH), (), ("seat",)),
    _Term(r"(?:match(?:ing)? |small )+letters?", (Purpose.MATCH,)),
)
"""The words that the docs and the demos use for marks. Words that have a second meaning count only beside line or mark."""

OWN_WORK = re.compile(r"\b(?:draw|drawn|rule|ruled|measure|find|scribe|no)\b", re.IGNORECASE)
"""In a sentence with these words the buyer makes the mark, or is told that there is none."""


@checked(
    "joints/step-names-no-mark",
    "A mark that a step speaks of stands on a template of its parts",
    "a buyer who is told to prick a lap line through, and finds none on the sheet, takes another line for it",
    Severity.WARNING,
    may_be_empty=True,
)
def step_names_no_mark(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look for the words of marks in the steps, and for these marks on the parts that the step names, or on any where it names
    none. Texts in other languages are not read."""
    if subject.design.language.split("-")[0] != "en":
        return 0
    parts = {part.id: part for part in subject.parts}
    looked_at = 0
    for number, step in enumerate(subject.design.steps, 1):
        named = [parts[name] for name in step.parts if name in parts]
        if not named and step.parts:
            continue  # none of them could be drawn, which is found elsewhere
        for words, term in _said(step):
            looked_at += 1
            if any(term.on(part) for part in named or subject.parts):
                continue
            whom = listed(part.name for part in named) if named else "any part"
            yield check.found(
                f"the step speaks of “{words}”, and there is none on the template of {whom}",
                subject=f"step {number}",
                hint="name the part that has it under parts, give the part such a mark, or say it in other words",
                place=step.say.place,
            )
    return looked_at


def _said(step: StepPlan) -> list[tuple[str, _Term]]:
    """Return the words for marks in a step as they stand there, each term once."""
    text = " ".join(
        "".join(piece if isinstance(piece, str) else "0" for piece in said.pieces) for said in (step.title, step.say)
    )
    found: dict[str, tuple[str, _Term]] = {}
    for sentence in re.split(r"(?<=[.;:])\s", " ".join(text.split())):
        if OWN_WORK.search(sentence):
            continue
        for term in TERMS:
            match = re.search(rf"\b{term.pattern}\b", sentence, re.IGNORECASE)
            if match:
                found.setdefault(term.pattern, (match.group(), term))
    return list(found.values())
