"""The list of what pages may say is that of the tables of languages; a run with ``--update-golden`` writes it anew, and fails."""

import json
import re
from itertools import chain
from pathlib import Path

import pytest

from publisher.pages.front.legend import LINES, SLIT, WASTE
from publisher.pages.type.languages import FOLDER, PLACE, known_languages, table_of
from publisher.proof import checks

TABLE = Path(checks.__file__).parent / "own_words.json"
SET_APART = (*((name, meaning) for _, name, meaning in LINES), ("score line", SLIT), ("hatched", WASTE))
"""What stands in one line, though each is a text of its own."""


def placed(text: str) -> str:
    """Return a form with the signs of proof for figures, and for words in its places."""
    return PLACE.sub(lambda found: "*" if found[1] and not found[1].isdigit() else "#", text)


def said_in(language: str) -> list[str]:
    """Return all forms of a language, and what else it says between figures and words."""
    rows = list(
        chain.from_iterable(
            json.loads(file.read_text("utf-8")).items()
            for file in sorted((FOLDER / language if language != "en" else FOLDER / "de").glob("*.json"))
            if file.name != "language.json"
        )
    )
    if language == "en":
        between: dict[str, str] = {word: word for word in ("and", "or", "with")}
        own = [key for key, _ in rows]
        apart = [" ".join(pair) for pair in SET_APART]
    else:
        table = table_of(language)
        between = dict(table.language.between)
        own = [form for _, form in rows]
        forms = dict(rows)
        apart = [" ".join(forms[one] for one in pair) for pair in SET_APART]
    lists = [f"{{a}} {between[word]} {{a}}" for word in ("and", "or", "with")]
    return sorted({re.sub(r"\s+", " ", placed(text)) for text in (*own, *apart, *lists)})


def test_the_list_is_that_of_the_tables(request: pytest.FixtureRequest) -> None:
    made = {language: said_in(language) for language in sorted(known_languages())}
    text = json.dumps(made, indent=1, ensure_ascii=False) + "\n"
    if request.config.getoption("--update-golden"):
        TABLE.write_text(text, "utf-8")
        pytest.fail(f"{TABLE.name} was written anew: read the difference, then run without --update-golden")
    assert TABLE.read_text("utf-8") == text
