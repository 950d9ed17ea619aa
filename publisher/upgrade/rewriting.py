"""A spec of format 1 rewritten in format 2: keys, braces, units; checked that the parts come out the same."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from difflib import unified_diff
from pathlib import Path

from publisher.basics import Finding, Place, Rule, errors
from publisher.brief import Brief, InputFile, SpecText, brief_of, read_brief
from publisher.design import Design, variants, work_out
from publisher.geometry import make_parts
from publisher.joints import facts_of
from publisher.upgrade.rules import LEFT, PARTS, TEXT
from publisher.upgrade.solving import Solved, UnitSolver
from publisher.upgrade.trees import NAME, Changes, bare, brief_with, findings_of, texts_of

SPEC = "spec.yaml"
OLD, NEW = "1", "2"

KEYS = (
    (r"/assembly/[^/]+/joins/[0-9]+/rests", "place"),
    (r"/assembly/[^/]+/joins/[0-9]+/on", "rests_on"),
    (r"/assembly/[^/]+(?:/stack/[0-9]+)+/on", "stands_on"),
    (r"/assembly/[^/]+/brace/every", "under"),
)
"""Where a former key stands, and what it is called now."""

EVERY, ALL = r"/assembly/[^/]+/brace/every", "all"

_BLANK = re.compile(r"\{([^{}]*)\}")


@dataclass(frozen=True, slots=True)
class Upgraded:
    """A spec as it was and as it is rewritten; equal texts when there is nothing to do. ``findings``: what must be done by hand
    before it can be written (errors), and what to look at (warnings)."""

    folder: Path
    before: str
    after: str
    findings: tuple[Finding, ...] = ()

    @property
    def complete(self) -> bool:
        """Whether all of it is rewritten, so that it may be written."""
        return not errors(self.findings)

    @property
    def difference(self) -> str:
        """The difference as a unified diff; '' when there is none."""
        old, new = (text.splitlines(keepends=True) for text in (self.before, self.after))
        return "".join(unified_diff(old, new, f"{SPEC} (format {OLD})", f"{SPEC} (format {NEW})"))


def upgrade(folder: Path) -> Upgraded:
    """Return a design's spec rewritten. Nothing is written. Raises Refusal when there is no spec that can be read."""
    brief = read_brief(folder)
    file = brief.inputs.file(SPEC)
    assert file is not None
    text = file.data.decode("utf-8")
    spec = SpecText(text.removeprefix("\ufeff"))
    form = spec.values.get("/format")
    if form is None or form.text.strip() != OLD:
        about = [f for f in errors(brief.findings) if f.subject == "format" or f.check == "brief/unknown-format"]
        return Upgraded(folder, text, text, tuple(about))
    after, findings = _Upgrade(brief, spec).run()
    return Upgraded(folder, text, ("\ufeff" if text.startswith("\ufeff") else "") + after, findings)


class _Upgrade:
    def __init__(self, brief: Brief, spec: SpecText) -> None:
        self.brief = brief
        self.file = (brief.inputs.folder + "/" if brief.inputs.folder else "") + SPEC
        self.former = spec
        self.left: list[Finding] = []
        self.spec = SpecText(self._with_new_keys(spec))
        self.read = self._brief(self.spec.text)
        self.units = UnitSolver(self.spec, self.read)
        self.before = frozenset((f.check, f.message) for f in brief.findings)  # such as a file that is not there

    def run(self) -> tuple[str, tuple[Finding, ...]]:
        """Return the text rewritten, and what is left to do or to look at."""
        if wrong := self._new_errors(self.read):
            return self.spec.text, (*self.left, *wrong)
        word_for_word = self.units.solved({})
        braces = self._numbered_braces(word_for_word)
        best, named = self.units.with_sizes(word_for_word)
        after = self.spec.replaced(best.changes | braces)
        brief = self._brief(after)
        wrong = self._new_errors(brief) or errors(findings_of(brief))
        before = brief_with(self.read, word_for_word.changes | braces)
        if not wrong and best is not word_for_word and self._made(brief) != self._made(before):
            self._leave(PARTS, "the parts come out otherwise than before", "report this: it is a fault of ours", "")
        return after, (*self.left, *wrong, *self._changedtexts_of(brief, named))

    def _with_new_keys(self, spec: SpecText) -> str:
        """Return the text with the new format and the new keys; a brace under all its steps for now."""
        values: Changes = {"/format": NEW}
        keys: Changes = {}
        for at in spec.values:
            for form, new in KEYS:
                if re.fullmatch(form, at):
                    keys[at] = new
            if re.fullmatch(EVERY, at):
                values[at] = ALL
        for changes, words in ((values, spec.values), (keys, spec.keys)):
            for at in [at for at in changes if words.get(at) is None]:
                del changes[at]
                self._leave(LEFT, f"{at} cannot be rewritten as it stands", "write it on one line", at)
        return spec.replaced(values, keys)

    def _numbered_braces(self, solved: Solved) -> Changes:
        """Return the numbers of the steps that ``every`` meant: they follow from the facts."""
        changes: Changes = {}
        for at in [at for at in self.former.values if re.fullmatch(EVERY, at)]:
            word = self.former.values[at]
            every = word.text if word else ""
            steps = {self._braced(*worked, at.split("/")[2], every) for worked in self._worked(solved)}
            if len(steps) == 1 and steps != {""}:
                changes[at.removesuffix("every") + "under"] = steps.pop()
                continue
            why = "it means other steps in each variant" if len(steps) > 1 else "which steps it means cannot be told"
            hint = "write in its place under: weak, under: all or the numbers of the steps, such as under: [4, 8]"
            self._leave(LEFT, f"every: {every}: {why}", hint, at)
        return changes

    def _braced(self, design: Design, facts: dict[str, float], name: str, every: str) -> str:
        sizes = {size.name: size.value for size in design.sizes}
        nth = float(every) if every.strip().isdigit() else sizes.get(every.strip(), 0.0)
        steps = sum(1 for fact in facts if re.fullmatch(rf"{name}[.]layer_[0-9]+[.]tread", fact))
        high = int(facts.get(f"{name}.braces", 0))  # the highest ones: lower ones have no room for the knee
        if nth < 1 or nth != int(nth) or not steps:
            return ""
        numbers = [n for n in range(steps, 0, -int(nth)) if n > steps - high] or [steps]
        return ALL if nth == 1 else f"[{', '.join(map(str, reversed(numbers)))}]"

    def _brief(self, text: str) -> Brief:
        files = (*(f for f in self.brief.inputs.files if f.name != SPEC), InputFile.of(SPEC, text.encode("utf-8")))
        return brief_of(replace(self.brief.inputs, files=tuple(sorted(files, key=lambda f: f.name))))

    def _new_errors(self, brief: Brief) -> tuple[Finding, ...]:
        return tuple(f for f in errors(brief.findings) if (f.check, f.message) not in self.before)

    def _worked(self, solved: Solved) -> Iterator[tuple[Design, dict[str, float]]]:
        brief = brief_with(self.read, solved.changes)
        for variant in ("", *variants(brief)):
            design = work_out(brief, variant)
            yield design, {fact.name: fact.value for fact in facts_of(design, make_parts(design)[0])}

    def _made(self, brief: Brief) -> list[object]:
        """Return the parts of every variant and what is planned with them, without their places in the text."""
        designs = [work_out(brief, variant) for variant in ("", *variants(brief))]
        return [bare((make_parts(d)[0], d.boards, d.stacks, d.panels, d.needs, d.papers)) for d in designs]

    def _changedtexts_of(self, brief: Brief, sizes: tuple[str, ...]) -> Iterator[Finding]:
        """Yield a finding for each text that prints a size which got a unit."""
        for value in texts_of(brief.fields) if sizes else ():
            printed = [name for blank in _BLANK.findall(value.text) for name in NAME.findall(blank) if name in sizes]
            for name in dict.fromkeys(printed):
                what = f"this text prints the size {name}, which has a unit now"
                yield TEXT.found(what, subject=name, hint="take away a unit that stands behind it", place=value.place)

    def _leave(self, rule: Rule, message: str, hint: str, at: str) -> None:
        place = Place(self.file, *self.former.line(at), at)
        self.left.append(rule.found(message, subject=at.rpartition("/")[2], hint=hint, place=place))
