"""What a pack lacks though it could be built: steps, parts that no step mentions, stages in their order, who made it, on what terms."""

import re
from collections.abc import Iterator

from publisher.basics import Finding, Place
from publisher.basics.wording import listed
from publisher.brief import NOBODY, STAGES, Table
from publisher.design.offer.licence import licence_choices
from publisher.design.records import Blank, Design, PartPlan, StepPlan, TextPlan
from publisher.design.rules import plans as rules

# (before, after): stages of which none of the second makes sense before the last of the first has begun. Texture goes with cutting
# in either order, a coupon is put together dry before anything else is cut, and some parts are painted before they are glued.
ORDER = (
    ("glue_templates", "cut"),
    ("glue_templates", "glue"),
    ("cut", "glue"),
    ("cut", "seal"),
    ("cut", "paint"),
    ("texture", "seal"),
    ("texture", "paint"),
    ("dry_fit", "glue"),
    ("glue", "seal"),
    ("glue", "paint"),
    ("seal", "paint"),
)


def gaps(design: Design, fields: Table) -> tuple[Finding, ...]:
    """Return what the instructions of a design that was worked out lack, and who signs it. ``fields``: the spec."""
    return (
        *unsigned(fields),
        *_without_steps(design, fields.place),
        *_in_no_step(design),
        *_out_of_order(design.steps),
    )


def unsigned(fields: Table, releasing: bool = False) -> tuple[Finding, ...]:
    """Return a finding for each of designer and licence that is not said: a release needs both, and when ``releasing`` another
    designer than a new spec begins with."""
    meant = {
        "designer": "add designer: with the name that buyers shall read on the cover",
        "licence": f"add licence: {licence_choices()}",
    }
    found = [
        rules.UNSIGNED.found(f"the design has no {key}", subject=key, hint=hint, place=fields.place)
        for key, hint in meant.items()
        if not fields.text(key).strip()
    ]
    designer = fields.get("designer")
    if releasing and designer is not None and fields.text("designer").strip() == NOBODY:
        hint = "write the name that buyers shall read on the cover"
        words = f"the designer is still “{NOBODY}”"
        found.append(rules.UNSIGNED.found(words, subject="designer", hint=hint, place=designer.place))
    return tuple(found)


def _without_steps(design: Design, place: Place) -> Iterator[Finding]:
    if not design.steps:
        yield rules.NO_STEPS.found(
            "the design has no steps: its packs have no instructions",
            subject="steps",
            hint="add steps: what is cut, and in which order it is put together",
            place=place,
        )


def _in_no_step(design: Design) -> Iterator[Finding]:
    """Find parts that no step lists, shows or names; layers of one part are found once."""
    if not design.steps:
        return
    named = {name for step in design.steps for name in _names_in(step)}
    words = " ".join(_words(text) for step in design.steps for text in (step.title, step.say)).casefold()
    told = [part for part in design.parts if part.id in named or _called(part, words)]
    places = {part.place for part in told}
    for part in design.parts:
        if part.place not in places:
            places.add(part.place)
            called = part.family.name if part.family else part.id
            yield rules.PART_IN_NO_STEP.found(
                f"no step mentions the part {called}",
                subject=f"part {called}",
                hint=f"add it to the steps in which it is cut and put in place: parts: [{called}]",
                place=part.place,
            )


def _names_in(step: StepPlan) -> Iterator[str]:
    """Yield the parts that a step lists, shows or says a fact of."""
    yield from step.parts
    if step.picture is not None:
        yield step.picture.target
    for text in (step.title, step.say):
        for piece in text.pieces:
            if isinstance(piece, Blank):
                yield from re.findall(r"([A-Za-z_]\w*)\.", piece.expression)


def _words(text: TextPlan) -> str:
    return " ".join(piece for piece in text.pieces if isinstance(piece, str))


def _called(part: PartPlan, words: str) -> bool:
    """Tell whether a text calls a part by its name, its id or its letter."""
    names = (part.name, part.id.replace("_", " "), f"part {part.letter}")
    return any(re.search(rf"\b{re.escape(name.casefold())}s?\b", words) for name in names if name)


def _out_of_order(steps: tuple[StepPlan, ...]) -> Iterator[Finding]:
    """Find steps that come before what they need; at most one for each stage."""
    stages = [step.stage for step in steps]
    found: set[str] = set()
    if "print" in stages:
        first = stages.index("print")
        for step in steps[:first]:
            if step.stage and step.stage not in found:
                found.add(step.stage)
                yield _before(step, "print")
    for step, needed in _too_early(steps):
        if step.stage not in found:
            found.add(step.stage)
            yield _before(step, needed)


def _too_early(steps: tuple[StepPlan, ...]) -> Iterator[tuple[StepPlan, str]]:
    """Yield steps with the stage that they come before: all of their stage before all of it, or glue before the part is cut."""
    at = {stage: [n for n, step in enumerate(steps) if step.stage == stage] for stage in {s.stage for s in steps}}
    for before, after in ORDER:
        if before in at and after in at and at[after][-1] < at[before][0]:
            yield steps[at[after][0]], before
    for number, step in enumerate(steps):
        if step.stage == "glue" and _glued_uncut(step, _cuts(steps[:number]), _cuts(steps[number:])):
            yield step, "cut"


def _cuts(steps: tuple[StepPlan, ...]) -> list[StepPlan]:
    return [step for step in steps if step.stage == "cut"]


def _glued_uncut(step: StepPlan, before: list[StepPlan], later: list[StepPlan]) -> bool:
    """Tell whether a step glues a part that only later steps cut; a step that cuts and lists no parts may cut any."""
    cut = {part for one in before for part in one.parts}
    to_cut = {part for one in later for part in one.parts} - cut
    return all(one.parts for one in before) and not to_cut.isdisjoint(step.parts)


def _before(step: StepPlan, needed: str) -> Finding:
    title = _words(step.title).strip()
    return rules.STAGE_ORDER.found(
        f"the step “{title[:60]}” (stage {step.stage}) comes before the first of the stage {needed} that it needs",
        subject="steps",
        hint=f"move it, or give it the stage that it is of; their usual order is {listed(stage for stage, _ in STAGES)}",
        place=step.place,
    )
