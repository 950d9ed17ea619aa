"""Words: in fonts that are in the file, readable in size and colour, and where they were promised."""

import shapely

from publisher.basics import Check, Finding, Findings, TextPromise
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import normal, says, unbroken

LEAST_X_HEIGHT = 1.2  # mm: Regulation (EU) 1169/2011, article 13(2)
X_HEIGHT_ROUNDING = 0.005  # mm
WORDS_OFF = 0.5  # mm


@judged(
    "proof/font-not-embedded",
    "All fonts embedded",
    "a substitute has other widths and may lack letters, so that words run over lines and numbers go missing",
    may_be_empty=True,
)
def fonts_embedded(case: Case, check: Check[Case]) -> Findings:
    """Look at every font that pages and forms name."""
    fonts = {(f.name, f.kind): f for page in case.file.pages for f in page.fonts}
    for font in fonts.values():
        if not font.embedded:
            yield check.found(
                f"the font {font.name} is not in the file: every viewer puts another one in its place",
                subject=font.name,
                hint="embed the font, or take it out of the page's resources if it is not used",
            )
    return len(fonts)


@judged(
    "proof/letter-missing",
    "No missing letters",
    "an empty box instead of a letter spoils a part's name; letters without meaning can be neither searched nor read aloud",
    may_be_empty=True,
)
def letters(case: Case, check: Check[Case]) -> Findings:
    """Look at every shown letter: its glyph must not be the missing-letter box, and /ToUnicode must name it."""
    for page in case.file.pages:
        for words in page.texts:
            if words.broken:
                what = f": {words.broken} letter{'s' * (words.broken > 1)} of “{words.text.strip()[:60]}” "
                what += f"cannot be read: the font {words.font} lacks the letter or its meaning"
                hint = "use a font that has the letter, or write the word in another way"
                yield about(check, page_name(page.number), what, hint, float(words.broken), 0.0)
    for name in sorted({f.name for page in case.file.pages for f in page.fonts if f.shown and not f.meaning}):
        message = f"the letters of the font {name} have no meaning in the file"
        yield check.found(message, subject=name, hint="write a ToUnicode map")
    return sum(len(page.texts) for page in case.file.pages)


@judged(
    "proof/text-hidden",
    "No hidden words",
    "words that the file holds but the print does not show are missed by the buyer and found by every other check",
    may_be_empty=True,
)
def text_hidden(case: Case, check: Check[Case]) -> Findings:
    """Look at every run of letters: painted, dark enough, and nothing over it."""
    looked = 0
    for page in case.file.pages:
        hidden = case.hidden(page.number)
        looked += len(hidden)
        for words, why in zip(page.texts, hidden, strict=True):
            if why:
                what = f": “{words.text.strip()[:60]}” {why}"
                hint = "take the words out, or bring them to the front in a dark colour"
                yield about(check, page_name(page.number), what, hint)
    return looked


@judged(
    "proof/text-too-small",
    "Readable size",
    f"an x-height of {LEAST_X_HEIGHT:g} mm is the least that the law allows on food labels "
    "(Regulation (EU) 1169/2011, article 13)",
    may_be_empty=True,
)
def text_size(case: Case, check: Check[Case]) -> Findings:
    """Measure the x-height of every run by the glyphs of its font."""
    looked = 0
    for page in case.file.pages:
        shown = [words for words in page.texts if any(c.isalnum() for c in words.text)]
        looked += len(shown)
        small = [words for words in shown if words.x_height < LEAST_X_HEIGHT - X_HEIGHT_ROUNDING]
        if small:
            worst = min(small, key=lambda words: words.x_height)
            more = f" and {len(small) - 1} more" if len(small) > 1 else ""
            what = f": “{worst.text.strip()[:60]}”{more} is too small: its letter x is {worst.x_height:.2f} mm high"
            hint = f"set it so that the letter x is at least {LEAST_X_HEIGHT} mm high"
            yield about(check, page_name(page.number), what, hint, worst.x_height, LEAST_X_HEIGHT)
    return looked


@judged(
    "proof/words",
    "Letters and counts as promised",
    "a wrong letter or count sends the buyer to cut the wrong part, or too few; words may stand "
    f"{WORDS_OFF:g} mm farther from their place than promised",
)
def words_promised(case: Case, check: Check[Case]) -> Findings:
    """Look for each text among the visible lines of its page."""
    promises = [promise for promise, _ in case.there(case.promises.texts) if normal(promise.text)]
    for promise in promises:
        finding = _missing(case, check, promise)
        if finding is not None:
            yield finding
    return len(promises)


def _missing(case: Case, check: Check[Case], promise: TextPromise) -> Finding | None:
    lines, wanted, who = case.lines(promise.page), normal(promise.text), page_name(promise.page)
    having = [i for i, line in enumerate(lines) if says(line.text, wanted)]
    if not having and promise.near is None and says(unbroken(" ".join(line.text for line in lines)), wanted):
        return None
    if not having:
        return about(check, who, f": “{promise.text}” is not on the page", "print it, in dark letters and on top")
    if promise.near is None:
        return None
    away = float(shapely.distance(case.areas(promise.page)[having], shapely.Point(promise.near)).min())
    if away <= promise.within + WORDS_OFF:
        return None
    x, y = promise.near
    what = f": “{promise.text}” stands {away:.1f} mm away from {x:.1f}, {y:.1f} mm, where it belongs"
    return about(check, who, what, "print it at its part", away, promise.within)
