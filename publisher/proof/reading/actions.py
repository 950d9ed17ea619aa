"""What a file would do besides being printed: scripts, programs to start, links, forms and notes drawn on a page."""

from typing import Any

from publisher.basics import Box
from publisher.proof.reading.catalogue import leads_to
from publisher.proof.reading.model import LinkRead, Matrix
from publisher.proof.reading.objects import number, numbers, plain

INSIDE = ("/GoTo", "/Named", "/SetOCGState")
WORDS = {
    "/JavaScript": "runs a script",
    "/Launch": "starts a program",
    "/URI": "opens an address",
    "/GoToR": "opens another file",
    "/GoToE": "opens an attached file",
    "/SubmitForm": "sends a form",
    "/ImportData": "reads a file",
    "/Rendition": "plays a film or sound",
    "/Movie": "plays a film",
    "/Sound": "plays a sound",
}
MOST_ACTIONS = 64
MOST_NOTES = 2000  # of one page


def action_words(action: Any) -> list[str]:
    """Return in words what an action and those that follow it do, except moves inside the file. URIs begin with ``opens``."""
    found: list[str] = []
    waiting = [plain(action)]
    for _ in range(MOST_ACTIONS):
        if not waiting:
            break
        step = waiting.pop(0)
        if not isinstance(step, dict):
            continue
        kind = str(plain(step.get("/S")))
        if kind not in INSIDE:
            target = plain(step.get("/URI")) or plain(step.get("/F")) or ""
            found.append(f"{WORDS.get(kind, 'does ' + kind.lstrip('/'))} {str(target)[:120] if target else ''}".strip())
        after = plain(step.get("/Next"))
        waiting += [plain(a) for a in after] if isinstance(after, list) else [after]
    return found


def catalogue_actions(catalogue: Any) -> list[str]:
    """Return what the whole file does when it is opened, printed or closed; scripts by name; forms."""
    found: list[str] = []
    opening = plain(catalogue.get("/OpenAction"))
    if isinstance(opening, dict):
        found += action_words(opening)
    found += _triggers(catalogue)
    names = plain(catalogue.get("/Names"))
    if isinstance(names, dict) and plain(names.get("/JavaScript")) is not None:
        found.append("runs a script")
    form = plain(catalogue.get("/AcroForm"))
    if isinstance(form, dict):
        found.append("holds a form to fill in")
    return found


def _triggers(holder: Any) -> list[str]:
    triggers = plain(holder.get("/AA"))
    return [w for a in triggers.values() for w in action_words(a)] if isinstance(triggers, dict) else []


def page_extras(page: Any) -> tuple[list[str], list[str], list[str]]:
    """Return (links out, notes that print or frames of links, actions) of a page's annotations (ISO 32000-1, 12.5)."""
    links: list[str] = []
    notes: list[str] = []
    actions = _triggers(page)
    for note in _notes(page):
        kind = str(plain(note.get("/Subtype"))).lstrip("/")
        if kind != "Link":
            notes.append(f"a note of kind {kind}")
        elif _border(note) > 0 and numbers(note.get("/C")) is not None:
            notes.append("a link with a visible frame")
        elif plain(note.get("/AP")) is not None:
            notes.append("a link with a picture of its own laid over the page")
        for word in action_words(note.get("/A")):
            (links if word.startswith("opens an address") else actions).append(word)
        actions += _triggers(note)
    return links, notes, actions


def inner_links(page: Any, pages: dict[int, int], base: Matrix) -> tuple[LinkRead, ...]:
    """Return the links of a page that lead inside the file; ``base`` carries user space to mm, ``pages`` is as in ``leads_to``."""
    found = []
    for note in _notes(page):
        if str(plain(note.get("/Subtype"))) != "/Link" or action_words(note.get("/A")):
            continue  # no link, or one that leads out of the file
        rectangle = numbers(note.get("/Rect"))
        corners = (rectangle[:2], rectangle[2:]) if len(rectangle) == 4 else ((0.0, 0.0), (0.0, 0.0))
        a, b, c, d, e, f = base
        box = Box.round((a * x + c * y + e, b * x + d * y + f) for x, y in corners)
        found.append(LinkRead(box, leads_to(note, pages)))
    return tuple(found)


def _notes(page: Any) -> list[Any]:
    """Return the annotations of a page (ISO 32000-1, 12.5), links among them."""
    notes = plain(page.get("/Annots"))
    found = [plain(reference) for reference in notes[:MOST_NOTES]] if isinstance(notes, list) else []
    return [note for note in found if isinstance(note, dict)]


def _border(note: Any) -> float:
    """Return the width of a link's frame: /BS wins over /Border, and the default is 1 (12.5.4)."""
    style = plain(note.get("/BS"))
    if isinstance(style, dict):
        return number(style.get("/W"), 1.0)
    border = numbers(note.get("/Border"))
    return border[2] if len(border) >= 3 else 1.0
