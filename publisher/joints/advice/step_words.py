"""The words of proposed steps, in the languages that a spec can be in.

They become a designer's own words once they are pasted, and no page of ours says them: so they stand here, and not in the tables of pages.
"""

import json
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import Any

FORMS = Path(__file__).with_name("step_words.json")
ENGLISH = "en"


class StepWords:
    """Says the words of steps in one language."""

    def __init__(self, language: str, forms: dict[str, Any]) -> None:
        """Keep the forms of a language; a form has places in braces, and doubles those that stay."""
        self.language = language
        self._forms = forms

    def say(self, form: str, **words: str) -> str:
        """Return a form with its places filled. Raises KeyError for one that there is not."""
        return str(self._forms[form]).format_map(words)

    def all_of(self, names: Iterable[str], last: str = "all") -> str:
        """Return names as a sentence lists them: ``a, b and c``; ``last``: the form that stands before the last of them."""
        *before, name = (*names,) or ("",)
        return f"{', '.join(before)}{self._forms[last]}{name}" if before else name

    def often(self, count: int) -> str:
        """Return how often that is: ``twice``."""
        known: list[str] = self._forms["often"]
        return known[count - 1] if count <= len(known) else self.say("oftener", count=str(count))

    def called(self, name: str) -> str:
        """Return what a part is called within a sentence: in German with the capital of a noun."""
        small = self.language == ENGLISH and not name[1:2].isupper()
        return name[:1].lower() + name[1:] if small else name


@cache
def step_words(language: str) -> StepWords:
    """Return the words of a language, or of a country's form of it; English for one that has none."""
    known: dict[str, dict[str, Any]] = json.loads(FORMS.read_text("utf-8"))
    name = language.partition("-")[0]
    name = name if name in known else ENGLISH
    return StepWords(name, known[name])
