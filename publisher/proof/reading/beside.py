"""All that a file holds beside its pages, each entry of the catalogue and the notes of each page as one digest: to compare two files."""

from hashlib import sha256
from io import BytesIO
from typing import Any

from publisher.proof.reading.objects import Spent, TooMuch, plain, raw, stream_bytes
from publisher.proof.reading.reader import quiet

PAGES, NOTES = "/Pages", "/Annots"
MADE_UP = ("/Metadata",)  # names the program that wrote the file
MOST_OBJECTS = 400_000
MOST_DEEP = 400


def beside_pages(data: bytes) -> dict[str, str]:
    """Return the digest of each entry of the catalogue but the pages, and, as ``/Annots 3``, of what lies over page 3.

    Object numbers and the order of keys make no difference; a page is known by its number. Raises TooMuch, or what pypdf raises.
    """
    from pypdf import PdfReader

    with quiet():
        reader = PdfReader(BytesIO(data), strict=False)
        pages = {number: _id(page.indirect_reference) for number, page in enumerate(reader.pages, 1)}
        said = _Said({key: number for number, key in pages.items()})
        root = plain(reader.trailer.get("/Root"))
        found = {key: said.digest(raw(root, key)) for key in sorted(map(str, root)) if key not in (PAGES, *MADE_UP)}
        return found | {
            f"{NOTES} {number}": said.digest(raw(page, NOTES))
            for number, page in enumerate(reader.pages, 1)
            if NOTES in page
        }


def _id(reference: Any) -> int:
    return int(getattr(reference, "idnum", 0) or 0)


class _Said:
    """Objects as text that does not depend on how a file numbers them."""

    def __init__(self, pages: dict[int, int]) -> None:
        self.pages = pages
        self.spent = Spent()
        self.count = 0

    def digest(self, thing: Any) -> str:
        said = sha256()
        self._say(thing, said, {}, 0)
        return said.hexdigest()

    def _say(self, thing: Any, said: Any, met: dict[int, int], deep: int) -> None:
        self.count += 1
        if self.count > MOST_OBJECTS or deep > MOST_DEEP:
            raise TooMuch("hundreds of thousands of objects stand beside its pages")
        key = _id(thing)
        if key in self.pages or key in met:
            said.update(f"page {self.pages[key]};".encode() if key in self.pages else f"met {met[key]};".encode())
            return
        if key:
            met[key] = len(met)
        value = plain(thing)
        if isinstance(value, dict):
            stream = hasattr(value, "get_data")
            kept = [k for k in sorted(map(str, value)) if not (stream and k in ("/Length", "/Filter", "/DecodeParms"))]
            for name in kept:
                said.update(f"{name}:".encode())
                self._say(raw(value, name), said, met, deep + 1)
            if stream:
                said.update(stream_bytes(value, self.spent))
        elif isinstance(value, list):
            for index in range(len(value)):
                self._say(list.__getitem__(value, index), said, met, deep + 1)
        else:
            said.update(repr(value).encode("utf-8", "replace"))
        said.update(b";")
