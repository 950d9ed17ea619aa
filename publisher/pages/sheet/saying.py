"""A pack in another language than English: what the designer wrote for it, and all that pages and other rooms say of ours."""

import re
from collections.abc import Iterable
from dataclasses import replace

from publisher.basics import Finding, Promises, Rule, Severity, reworded
from publisher.design import Design, Fact, fill
from publisher.joints import JOINT, WAYS_UP
from publisher.pages.model import Drawn, Fill, Picture, Stroke, Words
from publisher.pages.sheet.draft import Body, PageDraft
from publisher.pages.type import ENGLISH, Tongue, known_languages

MOST_NOT_SAID = 5  # texts without a row that the finding names
OURS = ("cover:", "pile:", JOINT, WAYS_UP)  # keys of sentences in words of ours: all others are texts of the spec
NOT_TRANSLATED = Rule(
    "pages/not-translated",
    "A text of ours that the pack's language lacks",
    "a sentence in another language than the rest is not read, and it may be the one that says how to print",
    Severity.WARNING,
)


def tongue_of(
    design: Design, paper: str = "", wholes: Iterable[str] = (), facts: tuple[Fact, ...] = ()
) -> Tongue | None:
    """Return what says words of ours in the design's language, the title of its ``paper`` among them; None for English, and for a
    language without a table. ``wholes``: names of stacks whose sections have names of their own; ``facts`` fill what the designer
    wrote of materials."""
    language = design.language.split("-")[0]
    if language == ENGLISH or language not in known_languages():
        return None
    own = [design.title, design.variant_title, design.designer]
    own += (part.name for part in design.parts)
    own += (fit.name for fit in design.fits)
    own += (fill(one.text, design, facts)[0] for one in design.materials if one.text)
    tongue = Tongue(language, filter(None, own))
    keys = [plan.name for plan in design.stacks]
    keys += (plan.name for plan in design.panels)
    keys += (plan.name for plan in design.wholes)
    keys += wholes
    keys += (place.name for plan in design.panels for place in plan.places)
    keys += (thing.name for plan in design.wholes for thing in plan.things)
    keys += [design.licence] if design.licence else []
    keys += (board.id for board in design.boards)
    keys += [paper.partition(",")[0].removesuffix(" paper")] if paper else []
    for key in (key.replace("_", " ") for key in keys):
        if tongue.maybe(key) == key:  # a key that is no word of the table stands as it was written
            tongue.keep(key)
            tongue.keep(key.capitalize())
    return tongue


def untranslated(design: Design, tongue: Tongue | None) -> tuple[Finding, ...]:
    """Return the one finding that names texts of ours without a row in the language's table."""
    if tongue is None or not tongue.missing:
        return ()
    named = "; ".join(f"“{text}”" for text in list(tongue.missing)[:MOST_NOT_SAID])
    found = NOT_TRANSLATED.found(
        f"{len(tongue.missing)} texts of ours have no form in “{tongue.table.language.title}” and stand in English: {named}",
        subject=design.language,
        hint="add a row for each to the table of the language, or build in English",
    )
    return (found,)


def said_draft(draft: PageDraft, tongue: Tongue | None) -> PageDraft:
    """Return a draft with its title, its task and its bookmarks in the language of the pack."""
    if tongue is None:
        return draft
    marks = tuple((tongue.say(title), depth, key) for title, depth, key in draft.bookmarks)
    return replace(draft, title=tongue.say(draft.title), task=tongue.say(draft.task), bookmarks=marks)


def said_body(body: Body, tongue: Tongue | None) -> Body:
    """Return what stands on a page with its promised words, and what stands for its pictures, in the language of the pack."""
    if tongue is None:
        return body
    drawn = tuple(_said_thing(thing, tongue) for thing in body.drawn)
    texts = tuple(replace(text, text=tongue.say(text.text)) for text in body.texts)
    lengths = tuple(replace(line, label=tongue.say(line.label)) for line in body.lengths)
    return replace(body, drawn=drawn, texts=texts, lengths=lengths)


def _said_thing(thing: Drawn, tongue: Tongue) -> Drawn:
    """Return a thing with the words in its place: those of a picture, or of the figure that it is tagged as."""
    if isinstance(thing, Picture):
        return replace(thing, alt=tongue.say(thing.alt))
    if isinstance(thing, Stroke | Fill | Words) and ":" in thing.tag:
        tag, _, alt = thing.tag.partition(":")
        return replace(thing, tag=f"{tag}:{tongue.say(alt)}")
    return thing


def said_promises(promises: Promises, tongue: Tongue | None) -> Promises:
    """Return what other rooms promised of words, in the language of the pack; ``drawn``, ``tags`` and ``bookmarks`` are said already."""
    if tongue is None:
        return promises
    return reworded(
        promises,
        tongue.say,
        sentence=lambda one: tongue.say(one.text) if one.key.startswith(OURS) else tongue.keep(one.text),
        alone=tongue.maybe,
    )


def page_words(tongue: Tongue | None) -> tuple[re.Pattern[str], ...]:
    """Return what finds numbers of pages in words of another language than English; () for English."""
    return () if tongue is None else (tongue.page_words,)


def said_for(design: Design, texts: Iterable[str]) -> tuple[str, ...]:
    """Return words of ours in the language of a design, for what is written beside its pages."""
    tongue = tongue_of(design)
    return tuple(texts) if tongue is None else tuple(map(tongue.say, texts))
