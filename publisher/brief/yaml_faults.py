"""YAML syntax errors in our own words. The parser only says where and of what kind; the line says what was meant."""

import re
from collections.abc import Sequence

import yaml

from publisher.basics import Finding, Place
from publisher.brief import limits, rules

_TEXT_HINT = (
    "write the text as a block: “{key}: >” on this line and the words indented on the next, or put it in quotes"
)
_KEY = r"^\s*(?:- +)*\{?\s*(?P<key>[\w-]+): +"
_BRACE = re.compile(_KEY + r"\{[^}]*\} *[^\s#,}\]]")
_COLON = re.compile(_KEY + r"(?=[^\s\"'>|\[{]).*:(?:\s|$)")
_QUOTED = re.compile(_KEY + r"(?P<quote>[\"']).*(?P=quote)\s*[^\s#]")


def explain(fault: yaml.YAMLError, text: str, file: str) -> Finding:
    """Return our finding for a parser's error in the text of ``file``."""
    mark = getattr(fault, "problem_mark", None)
    opened = getattr(fault, "context_mark", None)
    problem = str(getattr(fault, "problem", ""))
    lines = re.split(r"\r\n|\r|\n", text)
    row, column = (mark.line, mark.column) if mark is not None else (0, 0)
    line = lines[row] if row < len(lines) else ""
    place = Place(file, row + 1, column + 1)
    start = None if opened is None else Place(file, opened.line + 1, opened.column + 1)
    if "nesting" in problem:  # the parser's own limit, far above ours, met while it looks ahead
        return rules.DEPTH.found(
            f"lists and mappings are nested more than {limits.DEPTH} deep in this line",
            hint="no section of a spec needs it: look for a lost bracket",
            place=place,
            limit=float(limits.DEPTH),
        )
    return (
        _tab(line, column, place)
        or _text(line, column, problem, place)
        or _unclosed(problem, line, column, place, start)
        or _token(problem, line, column, place)
        or _indent(lines, row, problem, place)
        or rules.SYNTAX.found(
            "this line cannot be read as YAML",
            hint="a line is “key: value” or begins with “- ”; look at the indentation, quotes and brackets here",
            place=place,
        )
    )


def _tab(line: str, column: int, place: Place) -> Finding | None:
    blank = line[: len(line) - len(line.lstrip())]
    if "\t" in blank or line[column : column + 1] == "\t":
        where = blank.index("\t") + 1 if "\t" in blank else column + 1
        return rules.TAB.found(
            "a tab stands where YAML allows only blanks",
            hint="replace the tab by blanks (two for each step of indentation)",
            place=Place(place.file, place.line, where),
        )
    return None


def _text(line: str, column: int, problem: str, place: Place) -> Finding | None:
    """Text that YAML takes for structure: it opens with a brace, or holds a colon and a blank."""
    if "expected comment or line break" in problem or "expected a comment or a line break" in problem:
        return rules.UNQUOTED.found(
            "words stand on the line that opens a block of text",
            hint="after “>” or “|” the text begins on the next line, indented",
            place=place,
        )
    structural = any(words in problem for words in ("expected key", "block end", "mapping values", "expected ',' or"))
    if not structural:
        return None
    brace = _BRACE.match(line)
    if brace is not None and "',' or" not in problem:
        return rules.UNQUOTED.found(
            f"the text of “{brace['key']}” opens with “{{”, which YAML takes for a list of keys",
            hint=_TEXT_HINT.format(key=brace["key"]),
            place=place,
        )
    item = re.split(r"[,{\[]", line[:column])[-1]
    if "',' or" in problem and line[column : column + 1] in ("{", ":") and re.search(r": +\S", item):
        return rules.UNQUOTED.found(
            f"a text inside “{{…}}” or “[…]” holds “{line[column]}” without quotes",
            hint="put the text in double quotes, or put a comma before it if it begins another key",
            place=place,
        )
    colon = _COLON.match(line)
    if colon is not None and "mapping values" in problem:
        return rules.UNQUOTED.found(
            f"the text of “{colon['key']}” holds a colon with a blank, which YAML takes for another key",
            hint=_TEXT_HINT.format(key=colon["key"]),
            place=place,
        )
    return None


def _unclosed(problem: str, line: str, column: int, place: Place, start: Place | None) -> Finding | None:
    if "unexpected end of stream" in problem and start is not None:
        return rules.SYNTAX.found(
            "the quotation mark opened here is never closed", hint="close it at the end of the text", place=start
        )
    for bracket, opening in (("'}'", "{"), ("']'", "[")):
        if f"',' or {bracket}" in problem and start is not None:
            return rules.SYNTAX.found(
                f"the list opened here with “{opening}” is not closed before line {place.line}, or a comma is missing",
                hint=f"separate items by commas and close with “{bracket[1]}”",
                place=start,
            )
    if line[column : column + 1] in ("}", "]"):
        return rules.SYNTAX.found(
            f"“{line[column]}” closes something that was not opened", hint="delete it or add its partner", place=place
        )
    return None


def _token(problem: str, line: str, column: int, place: Place) -> Finding | None:
    character = line[column : column + 1]
    if "cannot start any token" in problem and character:
        message = f"a value cannot begin with “{character}”"
        return rules.SYNTAX.found(message, hint="put the value in quotes", place=place)
    if "escape" in problem or "hexdecimal" in problem or "hexadecimal" in problem:
        return rules.SYNTAX.found(
            "a backslash in double quotes begins something that YAML does not know",
            hint="write the backslash twice, or use single quotes",
            place=place,
        )
    if "tag" in problem or "URI" in problem:
        return rules.TAG.found("a YAML tag stands here", hint="delete the word that begins with “!”", place=place)
    if ("document" in problem or "directive" in problem) and re.match(r"%|---|[.]{3}", line):
        return rules.DOCUMENTS.found(
            "a line that begins or ends another document stands here",
            hint="a spec is one document: delete lines that begin with “%”, “---” or “...”",
            place=place,
        )
    quoted = _QUOTED.match(line)
    if quoted is not None:
        return rules.SYNTAX.found(
            f"words stand after the closing quotation mark of “{quoted['key']}”",
            hint="put the whole value in quotes, or write a quotation mark inside it twice",
            place=place,
        )
    return None


def _indent(lines: Sequence[str], row: int, problem: str, place: Place) -> Finding | None:
    if not any(
        words in problem
        for words in ("mapping values", "expected key", "block end", "'-' indicator", "':'", "document")
    ):
        return None
    line = lines[row] if row < len(lines) else ""
    if "':'" in problem or ":" not in line:
        return rules.SYNTAX.found(
            "this line has no “key: value” form", hint="write a colon and a blank between key and value", place=place
        )
    return rules.SYNTAX.found(
        "this line is indented otherwise than the lines it belongs to",
        hint="keys of one section begin in one column; what belongs to a key stands two blanks deeper",
        place=place,
    )
