"""Letters look like what their text says: who searches or listens to a file must find what others see."""

import unicodedata

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import about, judged
from publisher.proof.measuring import Case
from publisher.proof.reading import GlyphRead, LetterShapes, letter_shapes

ADVANCE_ROUNDING = 0.002  # em: widths are written as whole thousandths
LIKE = {"\u2011": "-", "\u2010": "-", "\u00a0": " ", "\u202f": " ", "\u2009": " "}  # drawn as their plain fellows


@judged(
    "proof/letter-shape",
    "Letters look like what they say",
    "all checks of words read what the file says of its letters: a font that shows a B and says A has any count or size pass; each "
    "letter shown has the shape of the same letter in a font that the pack is set in, and its width",
    may_be_empty=True,
)
def letter_shape(case: Case, check: Check[Case]) -> Findings:
    """Hold the outline of every letter shown, once for each font, against the fonts that were promised."""
    fonts = [letter_shapes(font.program) for font in case.promises.fonts]
    if not fonts:
        return 0
    for glyph in case.file.glyphs:
        fault = _fault(glyph, fonts)
        if fault:
            what = f": the letter “{glyph.text}” {fault}"
            hint = "embed the font that the words are set in, with its own table of letters (ToUnicode)"
            yield about(check, f"font {glyph.font}", what, hint)
    return len(case.file.glyphs)


def _fault(glyph: GlyphRead, fonts: list[LetterShapes]) -> str:
    """Return in words what is wrong with a letter; empty when some font draws it so, or none has it at all."""
    if glyph.shape is None:
        return "is drawn by a program that cannot be read"
    letters = dict.fromkeys((glyph.text, unicodedata.normalize("NFKC", glyph.text), LIKE.get(glyph.text, glyph.text)))
    known = [found for one in letters if len(one) == 1 for font in fonts if (found := font.letter(one)) is not None]
    if not known:
        return ""
    alike = [width for shape, width in known if shape == glyph.shape]
    if not alike:
        return "is drawn as something else"
    if all(abs(width - glyph.width) > ADVANCE_ROUNDING for width in alike):
        return f"takes {glyph.width:.3f} em, where the font gives it {alike[0]:.3f} em"
    return ""
