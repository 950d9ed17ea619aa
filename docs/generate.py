"""Writes the generated pages of docs/ from the registries, and the list of the tool's own words for proof: ``python -m docs.generate``;
``--check`` fails when one is stale."""

import sys
from pathlib import Path

from docs import entries, limits_page, own_texts, rules_page, spec_page, words_page

DOCS = Path(__file__).parent
FOLDERS = ("pictures/shapes", "pictures/surfaces")  # hold generated pictures only


def fresh() -> dict[str, str]:
    """Return the text of every generated file, by path below docs/."""
    pages = (
        *(entries.shapes, entries.surfaces, rules_page.checks, spec_page.spec, limits_page.limits, words_page.words),
        own_texts.own_texts,
    )
    return {path: text for page in pages for path, text in page().items()}


def stale(files: dict[str, str]) -> list[str]:
    """Return the paths whose file is missing, differs, or is no longer made."""
    wrong = [
        path
        for path, text in files.items()
        if not (DOCS / path).is_file() or (DOCS / path).read_bytes() != text.encode()
    ]
    kept = {path.relative_to(DOCS).as_posix() for folder in FOLDERS for path in (DOCS / folder).glob("*")}
    return sorted({*wrong, *(kept - set(files))})


def main(words: list[str]) -> int:
    """Write or check; return the exit code."""
    files = fresh()
    wrong = stale(files)
    if words == ["--check"]:
        if wrong:
            print(
                f"stale: {', '.join(wrong)}\nrun “python -m docs.generate” and commit what it writes", file=sys.stderr
            )
            return 1
        print(f"all {len(files)} generated files are fresh")
        return 0
    if words:
        print("usage: python -m docs.generate [--check]", file=sys.stderr)
        return 2
    for path in wrong:
        if path not in files:
            (DOCS / path).unlink()
            continue
        (DOCS / path).parent.mkdir(parents=True, exist_ok=True)
        (DOCS / path).write_bytes(files[path].encode())
    print(f"wrote {len(wrong)} of {len(files)} files")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
