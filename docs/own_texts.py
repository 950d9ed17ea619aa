"""All that pages may say of ours, in each language, as the list by which proof judges words: made of the tables of languages."""

import json
import re
from itertools import chain

from publisher.pages.front.legend import LINES, SLIT, WASTE
from publisher.pages.type.languages import ENGLISH, FOLDER, PLACE, known_languages, table_of

LIST = "../publisher/proof/checks/own_words.json"
IN_ONE_LINE = (*((name, meaning) for _, name, meaning in LINES), ("score line", SLIT), ("hatched", WASTE))
"""What stands in one line, though each is a text by itself."""

BETWEEN = ("and", "or", "with")


def own_texts() -> dict[str, str]:
    """Return the list: ``#`` in the place of each figure, ``*`` of words that are filled in."""
    made = {language: _said_in(language) for language in sorted(known_languages())}
    return {LIST: json.dumps(made, indent=1, ensure_ascii=False) + "\n"}


def _said_in(language: str) -> list[str]:
    other = next(one for one in known_languages() if one != ENGLISH) if language == ENGLISH else language
    tables = (file for file in sorted((FOLDER / other).glob("*.json")) if file.name != "language.json")
    forms = dict(chain.from_iterable(json.loads(file.read_text("utf-8")).items() for file in tables))
    between = dict(table_of(other).language.between)
    if language == ENGLISH:
        forms, between = {key: key for key in forms}, {word: word for word in BETWEEN}
    one_line = (" ".join(forms[text] for text in pair) for pair in IN_ONE_LINE)
    lists = (f"{{a}} {between[word]} {{a}}" for word in BETWEEN)
    return sorted({re.sub(r"\s+", " ", PLACE.sub(_place, text)) for text in (*forms.values(), *one_line, *lists)})


def _place(found: re.Match[str]) -> str:
    return "*" if found[1] and not found[1].isdigit() else "#"
