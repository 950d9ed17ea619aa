"""Steps as text of a spec, to be pasted into one."""

import json
from collections.abc import Iterable, Mapping, Sequence
from re import escape, split
from textwrap import wrap

from publisher.basics import record

LETTERS_A_LINE = 110


@record
class StepText:
    """A step: its ``title``, ``stage`` and ``say``; names under ``parts``, ``acts`` and ``uses``, items of ``adds``; the way of use that
    it is ``only`` for, '' for all; ``remark``: a comment over it, '' for none; ``wait``: how long it dries then, '' for not at all;
    ``blanks``: the sizes that its words ask for by ``{name}``."""

    title: str
    stage: str
    say: str
    parts: tuple[str, ...] = ()
    uses: tuple[str, ...] = ()
    adds: tuple[str, ...] = ()
    only: str = ""
    remark: str = ""
    wait: str = ""
    acts: tuple[str, ...] = ()
    blanks: tuple[str, ...] = ()


def steps_text(
    steps: Sequence[StepText], language: str = "", others: Mapping[str, Sequence[StepText]] | None = None
) -> str:
    """Return steps as they stand in a spec, from the key ``steps`` on. Braces in words, which would ask for a size, are left
    out, but for those of a step's own blanks. ``others``: the same steps in other languages than the ``language`` of these: then each text
    stands in all of them."""
    every = {language: steps, **(others or {})}
    each = zip(*every.values(), strict=True)
    return (
        "\n".join(("steps:", *(line for said in each for line in _lines(dict(zip(every, said, strict=True)))))) + "\n"
    )


def _lines(said: Mapping[str, StepText]) -> Iterable[str]:
    step = next(iter(said.values()))
    if step.remark:
        yield from (f"  # {line}" for line in wrap(step.remark, LETTERS_A_LINE))
    if len(said) == 1:
        yield f"  - title: {_quoted(_plain(step.title))}"
    else:
        yield "  - title:"
        yield from (f"      {language}: {_quoted(_plain(one.title))}" for language, one in said.items())
    yield f"    stage: {step.stage}"
    if step.only:
        yield f"    only: {step.only}"
    if len(said) == 1:
        yield from _block("    say", step)
    else:
        yield "    say:"
        for language, one in said.items():
            yield from _block(f"      {language}", one)
    for key in ("parts", "acts", "uses", "adds"):
        if names := getattr(step, key):
            yield from _list(key, names)
    if step.wait:
        yield f"    wait: {step.wait}"


def _block(key: str, step: StepText) -> Iterable[str]:
    blanks = " " * (len(key) - len(key.lstrip()) + 2)
    yield f"{key}: >"
    yield from (f"{blanks}{line}" for line in wrap(_plain(step.say, step.blanks), LETTERS_A_LINE))


def _list(key: str, items: Sequence[str]) -> Iterable[str]:
    whole = f"    {key}: [{', '.join(items)}]"
    if len(whole) <= LETTERS_A_LINE:
        yield whole
        return
    yield f"    {key}:"
    yield from (f"      - {item}" for item in items)


def _plain(words: str, blanks: Sequence[str] = ()) -> str:
    kept = {f"{{{name}}}" for name in blanks}
    pieces = split("|".join(map(escape, sorted(kept))).join("()"), words) if kept else [words]
    bare = (piece if piece in kept else piece.translate({ord("{"): None, ord("}"): None}) for piece in pieces)
    return " ".join("".join(bare).split())


def _quoted(words: str) -> str:
    """Return words on one line as YAML takes them; in quotes where they would mean something else."""
    bare = words[:1].isalpha() and not any(mark in words for mark in (": ", " #", '"', "'")) and not words.endswith(":")
    return words if bare else json.dumps(words, ensure_ascii=False)
