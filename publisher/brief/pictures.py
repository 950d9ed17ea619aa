"""Pictures: identified by Pillow from an explicit list of formats, sound to the last pixel, never larger than memory allows."""

import warnings
from io import BytesIO
from typing import TYPE_CHECKING

from publisher.basics import Finding, Place
from publisher.brief import limits, rules
from publisher.brief.photographs import FORMATS, NotShown, in_rgb, is_turned

if TYPE_CHECKING:
    from PIL.Image import Image

_SAMPLE = 64  # pixels each way that are turned into RGB to see whether it can be done


def picture_size(data: bytes, name: str, place: Place) -> tuple[int, int] | Finding:
    """Return a picture's width and height in pixels as it is to be shown (EXIF orientation applied), or what is wrong."""
    from PIL import Image

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # a warning about size is a finding here; others do not matter to the designer
        try:
            with Image.open(BytesIO(data), formats=FORMATS) as image:
                width, height = image.size
                if width * height > limits.PICTURE_PIXELS:
                    return _too_many(name, place, width * height)
                turned = is_turned(image, data)
                _decode(image, data)
                in_rgb(image, data, image.crop((0, 0, min(_SAMPLE, image.width), min(_SAMPLE, image.height))))
        except Image.DecompressionBombError:
            return _too_many(name, place, None)
        except NotShown as fault:
            return _not_shown(name, place, fault)
        except Exception:  # Pillow raises a dozen kinds on damaged files, and all mean the same to the designer
            return _damaged(name, place)
    return (height, width) if turned else (width, height)


def _decode(image: "Image", data: bytes) -> None:
    """Fail now, not on a page, when the picture's data is damaged; as cheaply as the format allows."""
    if image.format == "PNG":
        _verify(data)
    if image.format in ("JPEG", "MPO"):
        _read_strictly(data)
        image.draft("L" if image.mode == "L" else image.mode, (max(1, image.width // 8), max(1, image.height // 8)))
    image.load()


def _verify(data: bytes) -> None:
    """Hold a PNG's chunks against their checksums, which Pillow does not when it shows them."""
    from PIL import Image

    with Image.open(BytesIO(data), formats=("PNG",)) as again:
        again.verify()


def _read_strictly(data: bytes) -> None:
    """Raise when a JPEG's data breaks off, or goes on after its last block: Pillow shows such a picture shifted, or half grey.

    The reader is that of qpdf, which takes for an error what others only warn of. It reads up to the end mark: what cameras put
    behind that (a film, a second picture) is no matter.
    """
    import pikepdf

    with pikepdf.new() as pdf:
        stream = pdf.make_stream(data, Filter=pikepdf.Name.DCTDecode)
        stream.get_stream_buffer(pikepdf.StreamDecodeLevel.all)


def _not_shown(name: str, place: Place, fault: NotShown) -> Finding:
    return rules.PICTURE_COLOURS.found(
        f"the picture “{name}” {fault}",
        subject=name,
        hint="save it as RGB or grey with 8 or 16 bits, in a picture editor",
        place=place,
    )


def _damaged(name: str, place: Place) -> Finding:
    return rules.NOT_PICTURE.found(
        f"the file “{name}” is not a picture that can be read to its end",
        subject=name,
        hint="look at it in a picture editor: if it is whole there, save it again as JPEG, PNG, WebP or TIFF; else take it anew",
        place=place,
    )


def _too_many(name: str, place: Place, pixels: int | None) -> Finding:
    return rules.PIXELS.found(
        f"the picture “{name}” has more than {limits.PICTURE_PIXELS // 1_000_000} million pixels",
        subject=name,
        hint="save it smaller: 3000 pixels across fill a page at print quality",
        place=place,
        value=None if pixels is None else float(pixels),
        limit=float(limits.PICTURE_PIXELS),
    )
