"""A spec of format 1 rewritten in format 2. All that the house still knows of format 1 stands here.

What format 1 meant: a plain number where a length or an angle is wanted was mm or degrees; a join said ``rests`` and ``on``, a section
``on``, a brace ``every`` so many-th step from the top. The meaning is first written out in format 2 word for word
(``reach * 1 mm`` at every use); then sizes get the unit where that reads better, as long as parts and facts come out equal.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, fields, is_dataclass, replace
from difflib import unified_diff
from pathlib import Path

from publisher.basics import Finding, Place, Rule, Severity, errors
from publisher.brief import Brief, InputFile, Node, Row, SpecText, Table, Value, Word, brief_of, read_brief
from publisher.design import Design, variants, work_out
from publisher.geometry import make_parts
from publisher.joints import facts_of

SPEC = "spec.yaml"
OLD, NEW = "1", "2"

LEFT = Rule(
    "upgrade/by-hand",
    "Everything of a former format can be rewritten",
    "What cannot be rewritten with the same meaning is not guessed: the designer says what was meant.",
    Severity.ERROR,
)
PARTS = Rule(
    "upgrade/parts-differ",
    "The parts of a rewritten spec are those of the spec as it was",
    "A new way to write a size must not change what is cut.",
    Severity.ERROR,
)
TEXT = Rule(
    "upgrade/text-prints-unit",
    "A text says the same as before",
    "A size that got its unit prints it: behind it a unit of the text's own would stand twice.",
    Severity.WARNING,
)
RULES = (LEFT, PARTS, TEXT)

NO_UNIT, RATIO = "design/no-unit", "design/ratio-as-size"
MIXED, WRONG_KIND = "design/mixed-kinds", "design/wrong-kind"
SIZES = ("/sizes/", "/variants/")
KEYS = (
    (r"/assembly/[^/]+/joins/[0-9]+/rests", "place"),
    (r"/assembly/[^/]+/joins/[0-9]+/on", "rests_on"),
    (r"/assembly/[^/]+(?:/stack/[0-9]+)+/on", "stands_on"),
    (r"/assembly/[^/]+/brace/every", "under"),
)
"""Where a former key stands, and what it is called now."""

EVERY, ALL = r"/assembly/[^/]+/brace/every", "all"
UPGRADE_ROUNDS = 30
"""Of mending and looking again: a value that is mended can let the next one be seen."""

MOST_NAMES = 2000
"""Names that are looked up behind expressions: no spec may hang the machine."""

_NUMBER = re.compile(r"\s*-?\s*(?:[0-9]+\s+)?(?:[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]*)?|\.[0-9]+)\s*")
_ZERO = re.compile(r"\s*0+(?:\.0*)?\s*")
_TURNING = re.compile(r"\b(?:sin|cos|tan)\s*\(")
_NAME = re.compile(r"[^\W\d]\w*")
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


Changes = dict[str, str]  # pointer of a value: its new text


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


@dataclass(frozen=True, slots=True)
class _Solved:
    """New texts that give everything its unit, as far as they can, and what is found when the spec is read with them."""

    changes: Changes
    found: tuple[Finding, ...]
    sums: Changes  # of the changes those where a number got a unit because it is added to something that has one

    @property
    def wrong(self) -> set[tuple[str, str]]:
        """What is an error then: rule and pointer."""
        return {(f.check, f.place.pointer if f.place else "") for f in errors(self.found)}


class _Upgrade:
    def __init__(self, brief: Brief, spec: SpecText) -> None:
        self.brief = brief
        self.file = (brief.inputs.folder + "/" if brief.inputs.folder else "") + SPEC
        self.former = spec
        self.left: list[Finding] = []
        self.spec = SpecText(self._with_new_keys(spec))
        self.read = self._brief(self.spec.text)
        self.before = frozenset((f.check, f.message) for f in brief.findings)  # such as a file that is not there

    def run(self) -> tuple[str, tuple[Finding, ...]]:
        """Return the text rewritten, and what is left to do or to look at."""
        if wrong := self._new_errors(self.read):
            return self.spec.text, (*self.left, *wrong)
        word_for_word = self._solved({})
        braces = self._numbered_braces(word_for_word)
        best, named = self._with_sizes(word_for_word)
        after = self.spec.replaced(best.changes | braces)
        brief = self._brief(after)
        wrong = self._new_errors(brief) or errors(self._findings(brief))
        before = self._changed(word_for_word.changes | braces)
        if not wrong and best is not word_for_word and self._made(brief) != self._made(before):
            self._leave(PARTS, "the parts come out otherwise than before", "report this: it is a fault of ours", "")
        return after, (*self.left, *wrong, *self._changed_texts(brief, named))

    # --- keys -------------------------------------------------------------------------------------------------------

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

    def _numbered_braces(self, solved: _Solved) -> Changes:
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

    # --- units ------------------------------------------------------------------------------------------------------

    def _solved(self, fixed: Changes, unit: str = "") -> _Solved:
        """Return the texts that give a unit to what lacks one, at its use, beside those that are ``fixed``; numbers that are added
        to a size which got ``unit`` get it too."""
        changes, sums = dict(fixed), Changes()
        for _ in range(UPGRADE_ROUNDS):
            found = self._findings(self._changed(changes))
            step = dict(self._mended(found, changes, fixed, unit))
            if not step:
                break
            changes |= step
            mixed = {finding.place.pointer for finding in found if finding.check == MIXED and finding.place}
            sums |= {at: new for at, new in step.items() if at in mixed}
        return _Solved(changes, found, sums)

    def _mended(
        self, found: Iterable[Finding], changes: Changes, fixed: Changes, unit: str
    ) -> Iterator[tuple[str, str]]:
        for finding in found:
            place = finding.place
            word = self.spec.values.get(place.pointer) if place else None
            if place is None or word is None or place.pointer in fixed:
                continue
            at, new = place.pointer, ""
            text = changes.get(at, word.text)
            if finding.check == NO_UNIT:
                new = _turned(text, place.column - self.spec.line(at)[1]) or with_unit(text, "mm")
            elif finding.check == RATIO and self._turns(at, changes, set()):
                new = with_unit(text, "mm")
            elif finding.check == MIXED and unit and unit not in text:
                new = with_units_in_sum(text, unit)
            elif finding.check == WRONG_KIND and text.endswith(" mm") and at in changes:
                new = text.removesuffix("mm") + "deg"
            if new:
                yield from ((alias, new) for alias in self.spec.alike(at))

    def _turns(self, at: str, changes: Changes, seen: set[str]) -> bool:
        """Tell whether a sine or the like that was given its degrees stands in a value, or in a size that it needs."""
        word = self.spec.values.get(at)
        if word is None or at in seen:
            return False
        seen.add(at)
        return (at in changes and _TURNING.search(word.text) is not None) or any(
            self._turns(size, changes, seen) for name in _NAME.findall(word.text) for size in self._places(name)
        )

    def _with_sizes(self, start: _Solved) -> tuple[_Solved, tuple[str, ...]]:
        """Return the texts with the unit at the sizes where that spares writing it at their uses; and those sizes."""
        best, fixed, named = start, Changes(), []
        for name in self._sizes_behind(self._wrapped(start)):
            uses = [at for at in self._wrapped(best) if name in self._sizes_behind([at])]
            for unit in dict.fromkeys(best.changes[at].rpartition(" ")[2] for at in uses):
                own = {at: with_unit(start.changes.get(at, word.text), unit) for at, word in self._plain(name)}
                if not own:
                    continue
                tried = self._solved(fixed | own, unit)
                if tried.wrong <= best.wrong and len(self._wrapped(tried)) < len(self._wrapped(best)):
                    best, fixed = tried, fixed | own | tried.sums
                    named.append(name)
                    break
        return best, tuple(named)

    def _wrapped(self, solved: _Solved) -> tuple[str, ...]:
        """Return the fields, sizes left out, where an expression was given a unit."""
        return tuple(
            at
            for at in solved.changes
            if not at.startswith(SIZES) and (word := self.spec.values[at]) and not _NUMBER.fullmatch(word.text)
        )

    def _sizes_behind(self, uses: Iterable[str]) -> tuple[str, ...]:
        """Return the sizes that the expressions of these fields need, those first that need no other."""
        found: list[str] = []
        waiting = list(uses)
        for _ in range(MOST_NAMES):  # sizes may go round in a circle
            word = self.spec.values.get(waiting.pop(0)) if waiting else None
            for name in _NAME.findall(word.text) if word else ():
                places = self._places(name)
                if places and name in found:
                    found.remove(name)
                if places:
                    found.append(name)
                    waiting += places
        return tuple(reversed(found))

    def _places(self, name: str) -> tuple[str, ...]:
        """Return the pointers of a size: in the sizes, and in each variant that changes it."""
        forms = (f"/sizes/{name}", *(f"{at}/sizes/{name}" for at in self.spec.below("/variants")))
        return tuple(at for at in forms if at in self.spec.values)

    def _plain(self, name: str) -> Iterator[tuple[str, Word]]:
        for at in self._places(name):
            word = self.spec.values[at]
            if word is not None and not _ZERO.fullmatch(word.text):
                yield at, word

    # --- what comes of it -------------------------------------------------------------------------------------------

    def _brief(self, text: str) -> Brief:
        files = (*(f for f in self.brief.inputs.files if f.name != SPEC), InputFile.of(SPEC, text.encode("utf-8")))
        return brief_of(replace(self.brief.inputs, files=tuple(sorted(files, key=lambda f: f.name))))

    def _new_errors(self, brief: Brief) -> tuple[Finding, ...]:
        return tuple(f for f in errors(brief.findings) if (f.check, f.message) not in self.before)

    def _changed(self, changes: Changes) -> Brief:
        """Return the brief with other values, without reading the text again."""
        fields = _with_values(self.read.fields, changes)
        assert isinstance(fields, Table)
        return replace(self.read, fields=fields)

    def _findings(self, brief: Brief) -> tuple[Finding, ...]:
        return tuple(dict.fromkeys(f for v in ("", *variants(brief)) for f in work_out(brief, v).findings))

    def _worked(self, solved: _Solved) -> Iterator[tuple[Design, dict[str, float]]]:
        brief = self._changed(solved.changes)
        for variant in ("", *variants(brief)):
            design = work_out(brief, variant)
            yield design, {fact.name: fact.value for fact in facts_of(design, make_parts(design)[0])}

    def _made(self, brief: Brief) -> list[object]:
        """Return the parts of every variant and what is planned with them, without their places in the text."""
        designs = [work_out(brief, variant) for variant in ("", *variants(brief))]
        return [_bare((make_parts(d)[0], d.boards, d.stacks, d.panels, d.needs, d.papers)) for d in designs]

    def _changed_texts(self, brief: Brief, sizes: tuple[str, ...]) -> Iterator[Finding]:
        """Yield a finding for each text that prints a size which got a unit."""
        for value in _texts(brief.fields) if sizes else ():
            printed = [name for blank in _BLANK.findall(value.text) for name in _NAME.findall(blank) if name in sizes]
            for name in dict.fromkeys(printed):
                what = f"this text prints the size {name}, which has a unit now"
                yield TEXT.found(what, subject=name, hint="take away a unit that stands behind it", place=value.place)

    def _leave(self, rule: Rule, message: str, hint: str, at: str) -> None:
        place = Place(self.file, *self.former.line(at), at)
        self.left.append(rule.found(message, subject=at.rpartition("/")[2], hint=hint, place=place))


def _bare(value: object) -> object:
    """Return a record as tuples, without the places in the text."""
    if isinstance(value, tuple):
        return tuple(map(_bare, value))
    if is_dataclass(value):
        return tuple(
            _bare(one) for one in (getattr(value, f.name) for f in fields(value)) if not isinstance(one, Place)
        )
    return value


def _with_values(node: Node, changes: Changes) -> Node:
    """Return a tree with other texts where ``changes`` has them, by pointer; the number of a step for a list of them too."""
    if isinstance(node, Value):
        new = changes.get(node.place.pointer)
        if new is None or not new.startswith("["):
            return node if new is None else replace(node, text=new)
        return Row(tuple(Value(n, "count", node.place) for n in new.strip("[]").split(", ")), node.place)
    if isinstance(node, Table):
        return replace(node, entries=tuple(replace(e, node=_with_values(e.node, changes)) for e in node.entries))
    return replace(node, items=tuple(_with_values(item, changes) for item in node.items))


def _texts(node: Node) -> Iterator[Value]:
    match node:
        case Value(kind="text"):
            yield node
        case Table():
            for entry in node.entries:
                yield from _texts(entry.node)
        case Row():
            for item in node.items:
                yield from _texts(item)


def with_unit(text: str, unit: str) -> str:
    """Return an expression with a unit: ``4 mm``, ``2 * 25 mm``, ``360 deg / 18``, ``reach * 1 mm``, ``(2 * reach - 74) * 1 mm``."""
    inner = text.strip()
    terms = _terms(inner)
    if all(_numbers_only(term) for term in terms):
        return "".join(_number_with_unit(term, unit) for term in terms)
    return f"({inner}) * 1 {unit}" if len(terms) > 1 else f"{inner} * 1 {unit}"


def with_units_in_sum(text: str, unit: str) -> str:
    """Return an expression whose terms of numbers alone have a unit: ``180 deg - 2 * pitch``."""
    return "".join(_number_with_unit(term, unit) if _numbers_only(term) else term for term in _terms(text.strip()))


def _terms(text: str) -> list[str]:
    """Return the terms of a sum, each with the sign before it; what stands in brackets is not looked into."""
    deep, start, terms = 0, 0, []
    for at, letter in enumerate(text):
        deep += {"(": 1, ")": -1}.get(letter, 0)
        if deep == 0 and letter in "+-−–" and text[start:at].strip(" -−–"):
            terms.append(text[start:at])
            start = at
    return [*terms, text[start:]]


def _numbers_only(term: str) -> bool:
    """Tell whether a term is a product of numbers, and of sines and the like that have their degrees."""
    while (found := _TURNING.search(term)) and "deg" in term[found.end() : (end := _closing(term, found.end()))]:
        term = term[: found.start()] + "1" + term[end + 1 :]
    return re.fullmatch(r"[-+−–\s]*[0-9./*×·÷\s]+", term) is not None


def _number_with_unit(term: str, unit: str) -> str:
    """Give the first number of a term its unit, or the last where nothing is divided and nothing turned."""
    numbers = list(re.finditer(r"(?:[0-9]+\s+)?[0-9]+/[0-9]+|[0-9.]+", term))
    end = (numbers[0] if re.search(r"[(÷]|[0-9.]\s*/\s|\s/", term) else numbers[-1]).end()
    return f"{term[:end]} {unit}{term[end:]}"


def _turned(text: str, offset: int) -> str:
    """Return an expression with degrees in the sine, cosine or tangent at ``offset``, or in the first that lacks them; '' where
    there is none."""
    calls = [found for found in _TURNING.finditer(text) if "deg" not in text[found.end() : _closing(text, found.end())]]
    found = next((call for call in calls if call.start() == offset), calls[0] if calls else None)
    if found is None:
        return ""
    end = _closing(text, found.end())
    return text[: found.end()] + with_unit(text[found.end() : end], "deg") + text[end:]


def _closing(text: str, at: int) -> int:
    """Return the offset of the bracket that closes what was opened before ``at``; the end where none does."""
    deep = 1
    for offset in range(at, len(text)):
        deep += {"(": 1, ")": -1}.get(text[offset], 0)
        if deep == 0:
            return offset
    return len(text)
