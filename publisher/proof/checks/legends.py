"""What a line means: beside each meaning in a legend stands a sample of that very line, as the templates of the file have it."""

from publisher.basics import Check, Findings, Promises
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import PaintedPath, TextLine, normal

CUT = "cut"
LEGEND_PAGE = "cautions"
MEANINGS = {
    CUT: ("cut line cut right through", "Schnittlinie ganz durchschneiden"),
    "score": (
        "score line cut half through", "Ritzlinie halb durchschneiden",
        "score line cut as deep as its step says", "Ritzlinie so tief schneiden, wie ihr Schritt sagt",
    ),
    "fold": ("fold line bend, do not cut", "Falzlinie biegen, nicht schneiden"),
    "draw": ("drawn line draw or press in, do not cut", "Anreißlinie nur anreißen oder eindrücken"),
    "glue": ("glue line glue within or along it", "Klebelinie darin oder daran kleben"),
    "reference": ("dotted line look at it, do not cut", "gepunktete Linie nur ansehen, nicht schneiden"),
}  # fmt: skip
"""By the kind of a line: what a legend calls it and says of it, in each language."""

WASTE = ("hatched cut it out and throw it away", "schraffiert ausschneiden und wegwerfen")
LEAST_STROKES = 3  # of hatching in a sample of waste
LEAST_SAMPLE = 10.0  # mm
SAMPLE_BEFORE = 60.0  # mm from the end of a sample to the words about it
SAMPLE_LEVEL = 3.0  # mm that a sample may be above the foot of its words
SAME = 0.02  # mm of width and dashes


@judged(
    "proof/legend",
    "Each line means what it is",
    "who takes a score for a cut cuts through: in the legend each meaning stands beside a sample of that line, as wide and with the dashes "
    "that it has on the templates, and every kind of line that they have stands there",
    may_be_empty=True,
)
def legend_lines(case: Case, check: Check[Case]) -> Findings:
    """Look for the meaning of each kind of line that templates of the file show, and at the sample beside it."""
    pages = [page.page for page in case.promises.pages if page.kind == LEGEND_PAGE]
    pages = pages or [page.page for page in case.promises.pages]
    looked = 0
    for kind, (width, dash) in _kinds(case.promises).items():
        said = tuple(_plain(case, words) for words in MEANINGS.get(kind, ()))
        found = [(page, line) for page in pages for line in case.lines(page) if normal(line.text) in said]
        looked += len(found)
        if said and not found and len(pages) < len(case.promises.pages):
            what = f": no legend says what to do along a line to {kind}"
            yield about(check, page_name(pages[0]), what, "give each kind of line its row")
        for page, line in found:
            sample = _sample(case, page, line)
            if sample is None or not _alike(sample, width, dash):
                what = f": beside “{line.text[:60]}” stands no sample of that line as it is on the templates"
                yield about(check, page_name(page), what, "draw the sample with the line's own width and dashes")
    waste = tuple(_plain(case, words) for words in WASTE)
    found = [(page, line) for page in pages for line in case.lines(page) if normal(line.text) in waste]
    if not found and _falls_out(case.promises) and len(pages) < len(case.promises.pages):
        yield about(check, page_name(pages[0]), ": no legend says what is hatched", "give what is cut out its row")
    for page, line in found:
        if not _hatched(case, page, line):
            what = f": beside “{line.text[:60]}” nothing is hatched"
            yield about(check, page_name(page), what, "draw the sample of what is cut out")
    return looked


def _falls_out(promises: Promises) -> bool:
    """Say whether a template of the file has an opening that is cut out."""
    return any(len(outline.rings) > 1 for outline in promises.outlines)


def _kinds(promises: Promises) -> dict[str, tuple[float, tuple[float, ...]]]:
    """Return by its kind the width and the dashes of each line of the templates."""
    found: dict[str, tuple[float, tuple[float, ...]]] = {}
    for outline in promises.outlines:
        found.setdefault(CUT, (outline.width, ()))
    for mark in promises.marks:
        found.setdefault(mark.kind, (mark.width, mark.dash))
    return found


def _plain(case: Case, words: str) -> str:
    return normal(case.take_down(words) if case.take_down is not None else words)


def _sample(case: Case, page: int, line: TextLine) -> PaintedPath | None:
    """Return the level line that ends nearest before words, None where there is none."""
    read = case.page(page)
    level = [piece for piece in (read.pieces if read else ()) if _is_before(piece, line)]
    return max(level, key=lambda piece: piece.box.right, default=None)


def _is_before(piece: PaintedPath, line: TextLine) -> bool:
    box = piece.box
    flat = piece.grey is not None and box.height <= SAME and box.width >= LEAST_SAMPLE
    return flat and 0.0 <= line.x - box.right <= SAMPLE_BEFORE and 0.0 <= box.bottom - line.y <= SAMPLE_LEVEL


def _hatched(case: Case, page: int, line: TextLine) -> bool:
    """Say whether a sample of hatching stands before words, on their level."""
    read = case.page(page)
    for piece in read.pieces if read else ():
        box = piece.box
        before = 0.0 <= line.x - box.right <= SAMPLE_BEFORE and box.width >= LEAST_SAMPLE
        level = abs((box.bottom + box.top) / 2 - line.y) <= SAMPLE_LEVEL and SAME < box.height <= 2 * SAMPLE_LEVEL
        if before and level and len(piece.starts) > LEAST_STROKES:
            return True
    return False


def _alike(sample: PaintedPath, width: float, dash: tuple[float, ...]) -> bool:
    dashes = len(sample.dash) == len(dash) and all(abs(a - b) <= SAME for a, b in zip(sample.dash, dash, strict=True))
    return dashes and abs(sample.width - width) <= SAME
