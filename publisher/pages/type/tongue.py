"""Says words of ours in the language of a pack, by the tables of ``languages``.

A text is looked up whole, then sentence by sentence, then by the parts of a list. What the designer wrote stays; only its decimal signs are
those of the language. A text without a row stays English and is told: it is never silent.
"""

import re
from collections.abc import Iterable, Iterator
from functools import cache
from typing import TYPE_CHECKING

from publisher.pages.type.languages import PLACE, Language, PlacedRow, table_of

if TYPE_CHECKING:
    from pyphen import Pyphen

_NUMBER = r"\d+(?:,\d{3})*(?:\.\d+)?(?: \d+/\d+|/\d+)?"
_UNIT = (
    r"(?: ?(?:mm|cm²|cm|sq in|ft|kg|m|g|h|N|min|%|°)(?![\w²])"
    r"|[ ]?in\b(?! (?:a|an|the|one|each|its|their|order|row|all|\d+ strokes?)\b))"
)
_MEASURE = rf"[-−≥≤]?{_NUMBER}(?:(?: × | x | to |-){_NUMBER})*{_UNIT}?"
_RUN = r"\d+(?:-\d+)?"
_RUNS = rf"{_RUN}(?:(?:, {_RUN})+(?: and {_RUN})?| and {_RUN})(?![\w./]|{_UNIT}| ×)"
_FIGURE = re.compile(rf"(?<![\w.])(?:{_RUNS}|{_MEASURE}(?: \({_MEASURE}\))?)(?![\w/]|\.\d)")
_DECIMAL = re.compile(r"(?<![\w.])(?<![A-Za-z]-)(\d+(?:,\d{3})*)(\.\d+)?(?![\w]|\.\d)")
_WORDS = re.compile(r"[^\W\d_]{2,}")
# words with blanks between them that keep a line, without the sign of a sentence behind them
_TOGETHER = re.compile(r"[^\s:;,.]+(?:[.,]\d+)?(?:\u00a0[^\s:;,]*[^\s:;,.])+")
_LETTERS = re.compile(r"[A-Z]{1,4}\d*(?:\.\d+)?[a-z]?|[a-z]{1,2}\d*")
_SENTENCES = re.compile(r"(?<=[.!?]) +|(?<=[.!?][”)]) +")
_JOINTS = (" · ", "; ", ", ", " / ")
_LETTER_PLACES = ("letter",)  # in which the letter of a part stands
_NAME_PLACES = (
    "name",
    "title",
    "who",
    "paper",
)  # in which words of the designer stand, or words with a row of their own
_SORT_PLACE = (
    "sort"  # in which a sort of paper stands: it has a name, and a figure there is the size of a sheet of board
)
_UNITS_ALONE = {"mm", "in", "cm", "ft", "sq", "kg"}


class Tongue:
    """Says words of ours in one language, for one pack. ``missing``: English forms without a row, in the order in which they came up."""

    def __init__(self, language: str, own: Iterable[str] = ()) -> None:
        """Keep the table, and what the designer wrote: that stays as it is."""
        self.table = table_of(language)
        self.missing: dict[str, None] = {}
        self._said: dict[str, str] = {}
        self._own: set[str] = set()
        self._unknown: set[str] = set()
        words = "|".join(map(re.escape, self.table.language.pages))
        self._between = dict(self.table.language.between)
        self.page_words = re.compile(
            rf"\b(?:{words}) ({_RUN}(?:(?:, | {self._between['and']} ){_RUN})*)", re.IGNORECASE
        )
        kept = "|".join(rf"(?<=\b{re.escape(word)})" for word in self.table.language.bound)
        self._bound = re.compile(rf"(?:{kept}) (?=\d)")
        for words in own:
            self.keep(words)

    def keep(self, text: str) -> str:
        """Return a text of the designer with the decimal signs of the language, and know it and its paragraphs from now on."""
        said = self.figures(text)
        for paragraph in (text, *re.split(r"\n\s*\n", text)):
            one = re.sub(r"\s+", " ", paragraph).strip()
            self._own.add(one)
            self._unknown.discard(one)
            self._said[one] = self.figures(one)
        self.known(said)
        return said

    def known(self, *texts: str) -> None:
        """Know texts that are in the language already: lines of a paragraph that was said before it was broken."""
        plain = (text.replace("\u00a0", " ") for text in texts)  # as pages promise them
        for text in (*texts, *plain):
            self._said.setdefault(text, text)
            self._unknown.discard(text)

    def bound(self, text: str) -> str:
        """Return a text with words and the numbers behind them kept on one line."""
        return self._bound.sub("\u00a0", text)

    def _as_bound(self, text: str, said: str) -> str:
        """Return what is said for a text with the words kept on one line that are kept so in it: a page promises them as one."""
        for run in _TOGETHER.findall(text) if "\u00a0" in text else ():
            whole = self.maybe(run.replace("\u00a0", " "))
            said = re.sub(rf"(?<!\w){re.escape(whole)}(?!\w)", lambda found: found[0].replace(" ", "\u00a0"), said)
        return said

    def hyphens(self, word: str) -> tuple[int, ...]:
        """Return behind how many letters of a word it may be parted by a hyphen."""
        return tuple(int(place) for place in _hyphens(self.table.language.hyphens).positions(word))

    def figures(self, text: str) -> str:
        """Return a text with the decimal signs of the language; a version such as 1.0.0 stays."""
        about = self.table.language
        return _DECIMAL.sub(lambda found: self._number(found, about), text)

    def _number(self, found: re.Match[str], about: Language) -> str:
        whole = found[1].replace(",", about.thousands)
        return whole + (about.decimal + found[2][1:] if found[2] else "")

    def say(self, text: str) -> str:
        """Return a text of ours in the language; what has no row stays English, and is told in ``missing``."""
        if (said := self._said.get(text)) is not None:
            return said
        blank = len(text) - len(text.lstrip(" ")), len(text) - len(text.rstrip(" "))
        bare = re.sub(r"[ \u00a0\n]+", " ", text).strip()
        lost: list[str] = []
        paragraphs = re.split(r"\n\s*\n", text.strip())
        found = [self.say(one) for one in paragraphs] if len(paragraphs) > 1 else [self._whole(bare, lost)]
        made = "\n\n".join(found)
        self.missing.update(dict.fromkeys(lost))
        made = self._as_bound(text, " " * blank[0] + made + " " * blank[1]) if bare else text
        self._said[text] = made
        self._said.setdefault(made, made)
        return made

    def meant(self, meaning: str, text: str) -> str:
        """Return a text in one meaning of several: its row has the meaning before it, ``straight cut: cut {}``."""
        said = self.say(f"{meaning}: {text}")
        self.known(said)
        return said

    def maybe(self, text: str) -> str:
        """Return a text in the language where it has a row, as it is where it has none: a key of the spec may be a word of ours."""
        found = self._one(text)
        return self.figures(text) if found is None else found

    def _whole(self, text: str, lost: list[str]) -> str:
        """Return a text said whole, by its sentences, or by the parts of a list."""
        if (found := self._one(text)) is not None:
            return found
        sentences = _SENTENCES.split(text)
        if len(sentences) > 1:
            return self._sentences(sentences, lost)
        listed, end = (text[:-1], ".") if text.endswith(".") else (text, "")
        if end and (found := self._one(listed)) is not None:
            return found + end
        for joint in _JOINTS:
            if joint in listed:
                tried: list[str] = []
                made = joint.join(self._whole(part, tried) for part in listed.split(joint))
                if not tried:
                    return made + end
                if joint == " · ":
                    lost.extend(tried)
                    return made + end
        lost.append(self._key(text)[0])
        return self.figures(text)

    def _sentences(self, sentences: list[str], lost: list[str]) -> str:
        """Say as many sentences together as have a row, from the first on."""
        made: list[str] = []
        at = 0
        while at < len(sentences):
            for end in range(len(sentences), at, -1):
                found = self._one(" ".join(sentences[at:end]))
                if found is not None:
                    made.append(found)
                    at = end
                    break
            else:
                made.append(self._whole(sentences[at], lost))
                at += 1
        return " ".join(made)

    def _one(self, text: str) -> str | None:
        """Return a text by its own row; None when it has none."""
        if text in self._unknown:
            return None
        found = self._found(text)
        if found is None:
            self._unknown.add(text)
        return found

    def _found(self, text: str) -> str | None:
        if (known := self._said.get(text)) is not None and (text in self._own or known != text):
            return known
        key, figures = self._key(text)
        if (row := self._row(key)) is not None:
            return self._filled(row, [self._figure(one) for one in figures], {})
        if not _wordy(key) or _LETTERS.fullmatch(text):
            return self._figure(text)
        if text in self._own or text in self._said:
            return self._said[text]
        said = self._by_form(key, figures)
        if said is None and key[:1].isupper():
            said = self._by_form(key[:1].lower() + key[1:], figures)
            return said and said[:1].upper() + said[1:]
        return said

    def _by_form(self, key: str, figures: list[str]) -> str | None:
        """Return a text by a row with words in places; None when none fits."""
        for form in (*self.table.forms.get(key.split(" ", 1)[0], ()), *self.table.forms.get("", ())):
            match = form.finds.fullmatch(key)
            if match is not None and (said := self._formed(form, match, figures)) is not None:
                return said
        return None

    def _named(self, text: str) -> str | None:
        """Return a name: of the designer, with a row of its own, or letters such as those of a paper."""
        if _LETTERS.fullmatch(text):
            return text
        if text in self._own or text in self._said:
            return self._said[text]
        key, figures = self._key(text)
        row = self._row(key)
        return None if row is None else self._filled(row, [self._figure(one) for one in figures], {})

    def _row(self, key: str) -> str | None:
        """Return the row of a key, or that of the same words with another first letter, which begin a sentence or do not."""
        rows = self.table.rows
        if (row := rows.get(key)) is not None:
            return row
        first = key[:1]
        if first.isupper() and (row := rows.get(first.lower() + key[1:])) is not None:
            return row[:1].upper() + row[1:]
        return rows.get(first.upper() + key[1:]) if first.islower() else None

    def _formed(self, form: PlacedRow, match: re.Match[str], figures: list[str]) -> str | None:
        """Return a row with its places filled; None when the words in one have no row themselves."""
        left = iter(figures)
        own: list[str] = []
        words: dict[str, str] = {}
        for name, found in zip(form.names, match.groups(), strict=True):
            if not name:
                own.append(self._figure(next(left)))
                continue
            if name == _SORT_PLACE and found.startswith("{}"):
                return None
            text = PLACE.sub(lambda _: next(left), found)
            lost: list[str] = []
            if name in _LETTER_PLACES:
                if not _LETTERS.fullmatch(text):
                    return None
                words[name] = text
            elif name in _NAME_PLACES:
                if (said := self._named(text)) is None:
                    return None
                words[name] = said
            else:
                if _SENTENCES.search(text) and text not in self._own:
                    return (
                        None  # a place holds no sentences of ours: “glue to {part}” is no form of “Glue to card. Pin …”
                    )
                words[name] = self._words(text, lost)
                if lost:
                    return None
        return self._filled(form.said, own, words)

    def _words(self, text: str, lost: list[str]) -> str:
        """Return words in a place: a name, a letter, a figure, or a list of them."""
        if (found := self._one(text)) is not None:
            return found
        for english in ("and", "or", "with"):
            first, joint, last = text.rpartition(f" {english} ")
            if joint:
                tried: list[str] = []
                made = f"{self._words(first, tried)} {self._between[english]} {self._words(last, tried)}"
                if not tried:
                    return made
        return self._whole(text, lost)

    def _filled(self, row: str, figures: list[str], words: dict[str, str]) -> str:
        left: Iterator[str] = iter(figures)

        def fill(found: re.Match[str]) -> str:
            name = found[1]
            if not name:
                return next(left)
            return figures[int(name) - 1] if name.isdigit() else words[name]

        return PLACE.sub(fill, row)

    def _figure(self, text: str) -> str:
        """Return a figure as the language writes it, the words between its numbers too."""
        said = self.figures(text)
        for english, other in self._between.items():
            said = re.sub(rf"(?<=[\w)]) {english} (?=\d)", f" {other} ", said)
        return said

    def _key(self, text: str) -> tuple[str, list[str]]:
        """Return the key of a text, and the figures that stand in it."""
        figures: list[str] = []

        def take(found: re.Match[str]) -> str:
            figures.append(found[0])
            return "{}"

        return _FIGURE.sub(take, text), figures


@cache
def _hyphens(rules: str) -> "Pyphen":
    from pyphen import Pyphen  # only for packs in other languages

    return Pyphen(lang=rules, left=3, right=3)


def _wordy(text: str) -> bool:
    """Say whether a text has words, not figures, units and signs alone."""
    return any(word not in _UNITS_ALONE for word in _WORDS.findall(text))
