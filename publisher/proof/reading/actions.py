"""What a file would do besides being printed: scripts, programs to start, links out, forms and notes drawn on a page."""

from typing import Any

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
    annotations = plain(page.get("/Annots"))
    for reference in annotations[:2000] if isinstance(annotations, list) else ():
        note = plain(reference)
        if not isinstance(note, dict):
            continue
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


def _border(note: Any) -> float:
    """Return the width of a link's frame: /BS wins over /Border, and the default is 1 (12.5.4)."""
    style = plain(note.get("/BS"))
    if isinstance(style, dict):
        return number(style.get("/W"), 1.0)
    border = numbers(note.get("/Border"))
    return border[2] if len(border) >= 3 else 1.0
