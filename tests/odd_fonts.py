"""Fonts for tests: one of ten letters that the built-in fonts lack, and what chance makes of it."""

from functools import cache
from io import BytesIO
from pathlib import Path
from random import Random

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

BOLD = Path(__file__).parents[1] / "publisher/pages/type/fonts/NotoSans-Bold.ttf"
LETTERS = "אבגדהוזחטי"  # drawn as these plain ones:
_PLAIN = "ABGDEVZHTé"


@cache
def lettering(fs_type: int = 0, ps_name: str = "Lettering-Bold") -> bytes:
    """Return a TrueType font that draws ``LETTERS``, one of them put together from two outlines."""
    font = TTFont(BOLD, recalcTimestamp=False)
    options = Options()
    options.glyph_names = options.layout_closure = False
    subsetter = Subsetter(options)
    subsetter.populate(text=_PLAIN)
    subsetter.subset(font)
    letters = font.getBestCmap()
    meant = {ord(new): letters[ord(plain)] for new, plain in zip(LETTERS, _PLAIN, strict=True)}
    for table in font["cmap"].tables:
        table.cmap = dict(meant)
    font["OS/2"].fsType = fs_type
    for record in font["name"].names:
        if record.nameID == 6:
            record.string = ps_name
    out = BytesIO()
    font.save(out)
    return out.getvalue()


def mutant(seed: int) -> bytes:
    """Return the font with a few bits turned, bytes overwritten, its end cut off, or entries of its table directory changed."""
    dice, data = Random(seed), bytearray(lettering())
    count = int.from_bytes(data[4:6], "big")
    spans = [
        (int.from_bytes(data[at + 8 : at + 12], "big"), int.from_bytes(data[at + 12 : at + 16], "big"))
        for at in range(12, 12 + 16 * count, 16)
    ]
    match dice.choice(("bits", "bytes", "table", "cut", "directory")):
        case "bits":
            for _ in range(dice.randint(1, 8)):
                data[dice.randrange(len(data))] ^= 1 << dice.randrange(8)
        case "bytes":
            at = dice.randrange(len(data))
            data[at : at + 8] = dice.randbytes(min(8, len(data) - at))
        case "table":  # small tables matter as much as large ones
            start, length = dice.choice(spans)
            for _ in range(dice.randint(1, 4)):
                data[start + dice.randrange(max(1, min(length, 400)))] = dice.randrange(256)
        case "cut":
            del data[dice.randrange(len(data)) :]
        case "directory":
            at = 12 + 16 * dice.randrange(count)
            data[at + dice.randrange(16)] = dice.randrange(256)
    return bytes(data)
