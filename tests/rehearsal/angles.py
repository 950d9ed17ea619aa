"""Degrees in the pictures of the steps, held against what the templates and the acts say: an angle is cut, folded, opened or turned by."""

import re
from collections.abc import Iterator, Sequence

from tests.rehearsal.acts import TURN, Act
from tests.rehearsal.pages import ReadPage
from tests.rehearsal.parts import ReadPart

FOLD = re.compile(r"Fold (\d+(?:\.\d+)?)°")
SAME = 0.5  # degrees: pictures name whole ones, guides a tenth


def unlike_angles(pages: Sequence[ReadPage], parts: Sequence[ReadPart], acts: Sequence[Act]) -> Iterator[str]:
    """Yield, in words, the degrees on pages of steps that are no bevel or fold of a template, no angle at which two edges so bevelled
    meet, and no turn of a layer."""
    known = {0.0, *(act.turn for act in acts if act.turn is not None)}
    for part in parts:
        told = (note.text.removesuffix(" out") for note in part.notes if note.kind == "bevel")
        known |= {angle for bevel in map(float, told) for angle in (bevel, 180.0 - 2.0 * bevel)}
        known |= {float(found) for words in part.words for found in FOLD.findall(words)}
    for page in pages:
        for line in page.lines if page.shows_steps else ():
            found = TURN.match(line.text)
            if found and all(abs(float(found[1]) - one) > SAME for one in known):
                yield f"page {page.number}: {line.text} is the angle of nothing"
