"""One design and its twin before the tool: what it refuses wrongly, gets wrong, or lets through."""

from dataclasses import dataclass

from tests.random_designs.design import Design
from tests.random_designs.make import false_twin, false_twins
from tests.random_designs.tool import Said, build, check

GAPES = "joints/thing-gapes"
"""What gapes stands, and is never more than warned of: a twin that does is found by that."""

SAME = 0.02  # mm or mm²·0.01: a fact of the tool within this of ours is right


@dataclass(frozen=True, slots=True)
class Asked:
    """What came out for one seed. ``change`` is empty where no twin was asked for."""

    design: Design
    said: Said
    wrong_facts: tuple[tuple[str, float, float], ...]  # name, the tool's value, ours
    change: str = ""
    twin: Said | None = None
    built: Said | None = None

    @property
    def found_by(self) -> tuple[str, ...]:
        """Return the errors that the tool finds in the twin and not in the true design, and that a thing gapes there."""
        errors = _new(self.twin.errors, self.said.errors) if self.twin else ()
        return (*errors, *(rule for rule in self.warned_by if rule == GAPES))

    @property
    def warned_by(self) -> tuple[str, ...]:
        """Return the same of warnings."""
        return _new(self.twin.warnings, self.said.warnings) if self.twin else ()


def _new(twin: tuple[tuple[str, str], ...], true: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    return tuple(sorted({rule for rule, _ in twin} - {rule for rule, _ in true}))


def ask_all(design: Design) -> list[Asked]:
    """Ask the tool about a true design and each of its twins."""
    said = check(design.spec, design.files)
    wrong = wrong_facts(design, said)
    return [
        Asked(design, said, wrong, change, check(false.spec, false.files))
        for change, false in false_twins(design).items()
    ]


def ask(design: Design, papers: tuple[str, ...] = (), twin: bool = True) -> Asked:
    """Ask the tool about a true design and its twin; build it on ``papers`` where some are given."""
    said = check(design.spec, design.files)
    built = build(design.spec, design.files, papers) if papers else None
    if not twin:
        return Asked(design, said, wrong_facts(design, said), built=built)
    change, false = false_twin(design)
    return Asked(design, said, wrong_facts(design, said), change, check(false.spec, false.files), built)


def wrong_facts(design: Design, said: Said) -> tuple[tuple[str, float, float], ...]:
    """Return facts of the tool that differ from ours: lengths by 0.02 mm, areas by a hundred-thousandth and a bit."""
    made = []
    for name, ours in design.facts:
        theirs = said.facts.get(name)
        allowed = 1e-4 * ours + 1.0 if name.endswith(".area") else SAME
        if theirs is not None and abs(theirs - ours) > allowed:
            made.append((name, theirs, ours))
    return tuple(made)
