"""Lines and pictures that a home printer can draw: wide, dark and fine enough, and not too many."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import PALEST_LINE, Case
from publisher.proof.reading import MM_PER_INCH, PageRead, PaintedPath

LEAST_WIDTH = 0.18  # mm: the thinnest line of the ISO 128-2 series that home printers draw without gaps
WIDTH_ROUNDING = 0.001  # mm
LEAST_DOTS = 150.0  # dots per inch
DOTS_ROUNDING = 0.5
MOST_PAGE_OPERATORS = 4000  # of one page of 210 × 297 mm; a printer of larger paper has memory for as much more
A4 = 210.0 * 297.0  # mm²


@judged(
    "proof/line-too-thin",
    "Lines wide enough",
    f"a hairline is one device dot wide: plain on a screen, gone in print; {LEAST_WIDTH:g} mm is the least (ISO 128-2)",
    may_be_empty=True,
)
def line_width(case: Case, check: Check[Case]) -> Findings:
    """Look at the width of every stroke; width 0 means as thin as the device can."""
    for page in case.file.pages:
        thin = [p for p in _strokes(page) if p.width < LEAST_WIDTH - WIDTH_ROUNDING]
        if thin:
            worst = min(thin, key=lambda p: p.width)
            x, y = worst.points[0].tolist()
            what = f": {len(thin)} stroke{'s are' if len(thin) > 1 else ' is'} too thin; "
            what += f"the one at {x:.1f}, {y:.1f} mm is {worst.width:.3f} mm wide"
            hint = f"draw lines at least {LEAST_WIDTH} mm wide"
            yield about(check, page_name(page.number), what, hint, worst.width, LEAST_WIDTH)
    return sum(len(_strokes(page)) for page in case.file.pages)


@judged(
    "proof/line-too-pale",
    "Lines dark enough",
    f"a white line is a lost line, or a way to hide another one; the palest grey that counts is {PALEST_LINE:g} (1 is white)",
    may_be_empty=True,
)
def line_pale(case: Case, check: Check[Case]) -> Findings:
    """Look at the grey of every visible stroke."""
    for page in case.file.pages:
        pale = [p for p in _strokes(page) if p.grey is not None and p.grey > PALEST_LINE]
        if pale:
            x, y = pale[0].points[0].tolist()
            what = f": {len(pale)} stroke{'s are' if len(pale) > 1 else ' is'} too pale to see; "
            what += f"one begins at {x:.1f}, {y:.1f} mm with grey {pale[0].grey:.2f} (1 is white)"
            hint = f"draw it darker than {PALEST_LINE}, or leave it out"
            yield about(check, page_name(page.number), what, hint, pale[0].grey, PALEST_LINE)
    return sum(len(_strokes(page)) for page in case.file.pages)


@judged(
    "proof/picture-too-coarse",
    "Pictures fine enough",
    f"below {LEAST_DOTS:.0f} dots per inch a builder can no longer see in a photograph how parts meet",
    may_be_empty=True,
)
def picture_dots(case: Case, check: Check[Case]) -> Findings:
    """Divide pixels by inches, both ways, for every placed picture."""
    for page in case.file.pages:
        for image in page.images:
            if image.across <= 0 or image.down <= 0:
                continue
            dots = min(image.pixels_across / image.across, image.pixels_down / image.down) * MM_PER_INCH
            if dots < LEAST_DOTS - DOTS_ROUNDING:
                what = f": a picture of {image.pixels_across} × {image.pixels_down} pixels is placed at "
                what += f"{image.across:.1f} × {image.down:.1f} mm: {dots:.0f} dots per inch"
                hint = (
                    f"use a picture with more pixels, or place it smaller; {LEAST_DOTS:.0f} dots per inch are the least"
                )
                yield about(check, page_name(page.number), what, hint, dots, LEAST_DOTS)
    return sum(len(page.images) for page in case.file.pages)


@judged(
    "proof/too-many-lines",
    "Pages a printer digests",
    "old printers with little memory stop in the middle of a page with tens of thousands of lines; "
    f"at most {MOST_PAGE_OPERATORS} path operators on a page of 210 × 297 mm, on a larger one as many more as it is larger",
)
def operators(case: Case, check: Check[Case]) -> Findings:
    """Count path operators, those in forms included."""
    for page in case.file.pages:
        most = MOST_PAGE_OPERATORS * max(1.0, page.width * page.height / A4)
        if page.operators > most:
            what = f"has {page.operators} path operators"
            hint = f"draw less texture, or share it out over more pages; at most {most:.0f}"
            yield about(check, page_name(page.number), what, hint, float(page.operators), most)
    return len(case.file.pages)


def _strokes(page: PageRead) -> list[PaintedPath]:
    """Return the strokes of a page that are meant to be seen."""
    return [p for p in page.pieces if p.grey is not None and p.visible]
