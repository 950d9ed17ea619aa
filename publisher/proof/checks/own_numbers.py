"""The numbers in the tool's own words: each is one that was promised, a page or a step that there is, or stands in a fixed saying."""

import re

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.measuring import ELSEWHERE, Case, figures_in, known_figures, written_numbers

SQUARES = (  # squares of 100 mm and 4 in, of pages that print true and of those that were fitted to other papers
    r"|3 15/16 to 3 31/32 in|3 59/64 to 3 63/64 in|3 13/16 to 3 29/32 in|under 3 13/16 in|4 1/(?:32|64) in or more"
    r"|\b98 mm|\b95 mm|\b98 to|\b95 to under 98 mm"
)
CARD = r"0\.3 to 0\.5 mm|0\.012 to 0\.02 in"  # thin card
HALF_LINE = r"less (?:than|as) 1/(?:32|64) in more or less"
TEN = r"|\bin(?:to)? 10 pieces|divide by 10\b|\bby 10 divide|more (?:than|as) 10 times"  # scraps in a pile, whose height is measured
AN_INCH = re.compile(r"\b1 in\b")  # the marks at an inch of a page's square
FIXED = {  # sayings with numbers that no design changes, stated here once more, by the kind of page where they are said
    "cover": r"about 500 g",
    "print_check": rf"85\.60 × 53\.98 mm|3\.370 × 2\.125 in|2 to 3 %|{HALF_LINE}{SQUARES}",  # a bank card: ISO/IEC 7810, ID-1
    "about": CARD,
    "cut_list": CARD,
    "cautions": r"0\.05 mm|0\.002 in|1 cut the card|2 pencil line|3 cut the foam|2, 3 inside|1 card|3 foam",
    "one_part": CARD,
    "before": CARD,
    "acts": f"{CARD}|{HALF_LINE}{TEN}",
    "steps": f"{CARD}|{HALF_LINE}{TEN}",
}
SAYINGS = {kind: re.compile(words) for kind, words in FIXED.items()}
NOTHING = re.compile(r"(?!)")
CALLED = re.compile(r"\b(\d+): (?:check|[A-Z]+(?:, [A-Z]+)*)(?![\w])")
PAGE_RUN = r"\d+(?:-\d+)?(?:, \d+(?:-\d+)?)*(?: and \d+(?:-\d+)?)?"
PAGES = re.compile(rf"[Pp]ages? ({PAGE_RUN})(?: of (\d+))?")
TILES = re.compile(
    r"[Tt]ile (?:\S+ )?\d+ of \d+|[Tt]ile \d+|[Rr]ow \d+, column \d+(?: of \d+ × \d+)?|this is \d+ of \d+|\bcopy \d+"
    # which copy it is (held by proof/piece; a narrow one says it on two lines), or which tiles of a part
    # which copy it is (held by proof/piece; a narrow one says it on two lines), or which tiles of a part
    r"|(?<![\d.])\d+(?:(?:, \d+)* and \d+)? of(?: (?:\| )?\d+(?![\d.]\d| mm| in\b)|(?= \|))"
    r"|\b[A-Z]{1,2}\d*(?:\.\d+)? \d+(?= \()|\b[A-Z]{1,2}\d*\.\d+\b"  # a neighbouring tile, the copy of which tiles are
)
MOST_DECIMALS = {"mm": 3, "in": 3, "": 3, "°": 2}  # of a number in words of ours; two behind any other unit
STEPS = re.compile(r"Steps? (\d+)(?: to (\d+))?")


@judged(
    "proof/number",
    "Numbers in the tool's own words",
    "a buyer measures, counts and turns pages by them: each is one that was worked out before any page was made, the number of a page "
    "or a step that there is, or stands in a saying that is the same in every pack; none has more than three decimals",
    may_be_empty=True,
)
def own_numbers(case: Case, check: Check[Case]) -> Findings:
    """Look at every number in visible words, but for those of texts that are promised whole."""
    looked, written = 0, written_numbers(case.promises)
    squared = {line.page for line in case.promises.lengths if line.purpose == "calibration"}
    for page in case.promises.pages if case.promises.figures else ():
        known = known_figures(case.promises, page.page, written)
        text = case.own_words(page.page)
        inch = AN_INCH if page.page in squared else NOTHING
        for saying in (SAYINGS.get(page.kind, NOTHING), inch, PAGES, TILES, STEPS, CALLED):
            text = saying.sub(ELSEWHERE, text)
        wrong = []
        for said in figures_in(text):
            looked += 1
            decimals = len(said.words.partition(".")[2])
            if not known.knows(said) or (said.words not in known.words and decimals > MOST_DECIMALS.get(said.unit, 2)):
                wrong.append(said)
        for said in wrong[:MOST_SAID]:
            around = text[max(0, said.at - 30) : said.at + 30].strip()
            amount = f"{said.words}{' ' if said.unit else ''}{said.unit}"
            what = f": {amount} in “{around}” is no number that was worked out, as a rule shows it"
            yield about(
                check, page_name(page.page), what, "say numbers of the design as the rooms worked them out, rounded"
            )
    return looked
