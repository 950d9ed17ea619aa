"""Which texts give everything in a spec its unit: tried with ``design``, until nothing lacks one."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from publisher.basics import Finding, Place, errors
from publisher.brief import Brief, SpecText, Word
from publisher.upgrade.trees import NAME, Changes, brief_with, findings_of
from publisher.upgrade.units import TURNING, with_degrees, with_unit, with_units_in_sum

NO_UNIT, RATIO = "design/no-unit", "design/ratio-as-size"
MIXED, WRONG_KIND = "design/mixed-kinds", "design/wrong-kind"
SIZES = ("/sizes/", "/variants/")
UPGRADE_ROUNDS = 30
"""Of mending and looking again: a value that is mended can let the next one be seen."""

MOST_NAMES = 2000
"""Names that are looked up behind expressions: no spec may hang the machine."""

_NUMBER = re.compile(r"\s*-?\s*(?:[0-9]+\s+)?(?:[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]*)?|\.[0-9]+)\s*")
_ZERO = re.compile(r"\s*0+(?:\.0*)?\s*")


@dataclass(frozen=True, slots=True)
class Solved:
    """New texts that give everything its unit, as far as they can, and what is found when the spec is read with them."""

    changes: Changes
    found: tuple[Finding, ...]
    sums: Changes  # of the changes those where a number got a unit because it is added to something that has one

    @property
    def wrong(self) -> set[tuple[str, str]]:
        """What is an error then: rule and pointer."""
        return {(f.check, f.place.pointer if f.place else "") for f in errors(self.found)}


class UnitSolver:
    """Gives everything in a spec its unit: at its use, or at the size where that spares writing it at uses."""

    def __init__(self, spec: SpecText, read: Brief) -> None:
        """Start with a spec's text, and with what was read from it."""
        self.spec, self.read = spec, read

    def solved(self, fixed: Changes, unit: str = "") -> Solved:
        """Return the texts that give a unit to what lacks one, at its use, beside those that are ``fixed``; numbers that are added
        to a size which got ``unit`` get it too."""
        changes, sums = dict(fixed), Changes()
        for _ in range(UPGRADE_ROUNDS):
            found = findings_of(brief_with(self.read, changes))
            step = dict(self._mended(found, changes, fixed, unit))
            if not step:
                break
            changes |= step
            mixed = {finding.place.pointer for finding in found if finding.check == MIXED and finding.place}
            sums |= {at: new for at, new in step.items() if at in mixed}
        return Solved(changes, found, sums)

    def _mended(
        self, found: Iterable[Finding], changes: Changes, fixed: Changes, unit: str
    ) -> Iterator[tuple[str, str]]:
        """Yield pointers of values with texts that mend what was found there; all that share a value by an alias."""
        for finding in found:
            place = finding.place
            word = self.spec.values.get(place.pointer) if place else None
            if place is None or word is None or place.pointer in fixed:
                continue
            text = changes.get(place.pointer, word.text)
            if new := self._mended_text(finding.check, text, place, changes, unit):
                yield from ((alias, new) for alias in self.spec.alike(place.pointer))

    def _mended_text(self, wrong: str, text: str, place: Place, changes: Changes, unit: str) -> str:
        """Return a value's text without what is ``wrong`` with it; '' where no unit mends that."""
        if wrong == NO_UNIT:
            return with_degrees(text, place.column - self.spec.line(place.pointer)[1]) or with_unit(text, "mm")
        if wrong == RATIO and self._turns(place.pointer, changes, set()):
            return with_unit(text, "mm")
        if wrong == MIXED and unit and unit not in text:
            return with_units_in_sum(text, unit)
        if wrong == WRONG_KIND and text.endswith(" mm") and place.pointer in changes:
            return text.removesuffix("mm") + "deg"
        return ""

    def _turns(self, at: str, changes: Changes, seen: set[str]) -> bool:
        """Tell whether a sine or the like that was given its degrees stands in a value, or in a size that it needs."""
        word = self.spec.values.get(at)
        if word is None or at in seen:
            return False
        seen.add(at)
        return (at in changes and TURNING.search(word.text) is not None) or any(
            self._turns(size, changes, seen) for name in NAME.findall(word.text) for size in self._places(name)
        )

    def with_sizes(self, start: Solved) -> tuple[Solved, tuple[str, ...]]:
        """Return the texts with the unit at the sizes where that spares writing it at their uses; and those sizes."""
        best, fixed, named = start, Changes(), []
        for name in self._sizes_behind(self._wrapped(start)):
            uses = [at for at in self._wrapped(best) if name in self._sizes_behind([at])]
            for unit in dict.fromkeys(best.changes[at].rpartition(" ")[2] for at in uses):
                own = {at: with_unit(start.changes.get(at, word.text), unit) for at, word in self._plain(name)}
                if not own:
                    continue
                tried = self.solved(fixed | own, unit)
                if tried.wrong <= best.wrong and len(self._wrapped(tried)) < len(self._wrapped(best)):
                    best, fixed = tried, fixed | own | tried.sums
                    named.append(name)
                    break
        return best, tuple(named)

    def _wrapped(self, solved: Solved) -> tuple[str, ...]:
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
            for name in NAME.findall(word.text) if word else ():
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
