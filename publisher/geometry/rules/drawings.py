"""What must hold of a designer's drawing, each rule stated once."""

from publisher.basics import Rule, Severity, record

UNREADABLE_DRAWING = Rule(
    "geometry/unreadable-drawing",
    "A drawing can be read safely and in full",
    "A drawing is a stranger's file: nothing outside it is fetched, and what is not understood is not guessed.",
    Severity.ERROR,
)
NOT_IN_DRAWING = Rule(
    "geometry/not-in-drawing",
    "What the spec names stands in the drawing",
    "An outline or line that is missing or hidden would be missing from the template.",
    Severity.ERROR,
)
OPEN_OUTLINE = Rule(
    "geometry/outline-open",
    "An outline is closed",
    "A gap of 0.1 mm or more is no rounding: only the designer knows what belongs there.",
    Severity.ERROR,
)
GAP_MENDED = Rule(
    "geometry/gap-mended",
    "Gaps under 0.1 mm are closed, and said",
    "Lines that a drawing program put side by side often miss each other by less than a pencil's width.",
    Severity.WARNING,
)
DRAWN_TWICE = Rule(
    "geometry/drawn-twice",
    "A line is drawn once",
    "A line that lies twice on the same place is cut twice; the second is left out.",
    Severity.WARNING,
)
CROSSED_OUTLINE = Rule(
    "geometry/drawing-crosses",
    "Outlines of a drawing do not cross themselves or each other",
    "Nobody can say which side of a crossed line is board.",
    Severity.ERROR,
)
ANOTHER_SIZE = Rule(
    "geometry/drawing-size",
    "A drawing has the size that the spec states",
    "Nothing is scaled unless the spec says by how much: a drawing saved at another scale would pass unseen.",
    Severity.ERROR,
)
SIZE_NOT_SAID = Rule(
    "geometry/drawing-size-unsaid",
    "A drawing says how large it is, or the spec does",
    "Without a size in mm or inches, units are px of 1/96 in by the rules of CSS; some programs mean another unit.",
    Severity.WARNING,
)
LINE_OUTSIDE = Rule(
    "geometry/line-outside",
    "Lines to draw, score, fold or glue lie on the part",
    "What lies outside the outline cannot be drawn on the board.",
    Severity.WARNING,
)
CLONE_LEFT_OUT = Rule(
    "geometry/clone-left-out",
    "An outline is drawn once, without clones",
    "Programs lay out sheets with clones of a part; a part is one piece, and its copies are counted in the spec.",
    Severity.WARNING,
)
TOO_FINE = Rule(
    "geometry/drawing-too-fine",
    "A part has no more lines than a printed page can hold",
    "Old printers stop in the middle of a page of many thousand lines; it is said before any work is done for it.",
    Severity.ERROR,
)
DRAWING_RULES: tuple[Rule, ...] = (
    UNREADABLE_DRAWING,
    NOT_IN_DRAWING,
    OPEN_OUTLINE,
    GAP_MENDED,
    DRAWN_TWICE,
    CROSSED_OUTLINE,
    ANOTHER_SIZE,
    SIZE_NOT_SAID,
    LINE_OUTSIDE,
    CLONE_LEFT_OUT,
    TOO_FINE,
)


@record
class Trouble:
    """A rule that a drawing breaks, before it is known where the spec names the drawing. ``line`` is the SVG's own."""

    rule: Rule
    message: str
    hint: str
    line: int = 0
    value: float | None = None
    limit: float | None = None
