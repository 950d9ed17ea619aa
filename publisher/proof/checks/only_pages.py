"""The file is its pages and nothing else: no layers to turn on, no programs, no links out, nothing laid over a page."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case


@judged(
    "proof/layer-off",
    "All layers on",
    "a buyer prints what the file shows when it is opened and never looks for the list of layers",
)
def layers_off(case: Case, check: Check[Case]) -> Findings:
    """Name the layers with content that are off when the file is opened or printed."""
    for page in case.file.pages:
        for name in page.hidden_layers:
            what = f": the layer “{name}” is off, and what lies on it does not print"
            yield about(check, page_name(page.number), what, "let every layer be on by default, on screen and in print")
    return len(case.file.pages)


@judged("proof/action", "No scripts, no programs", "mail filters stop files with scripts, and buyers rightly fear them")
def actions(case: Case, check: Check[Case]) -> Findings:
    """Report scripts, programs, forms and everything else that a file can do."""
    for what in case.file.actions:
        yield about(check, case.file.name, what, "take it out")
    for page in case.file.pages:
        for what in page.actions:
            yield about(check, page_name(page.number), what, "take it out")
    return 1 + len(case.file.pages)


@judged(
    "proof/link-out",
    "No links out",
    "an address that dies, or that the designer did not write, must not stand in a published pack",
)
def links(case: Case, check: Check[Case]) -> Findings:
    """Report links to addresses."""
    for page in case.file.pages:
        for target in page.links:
            hint = "take the link out, or print the address as words"
            yield about(check, page_name(page.number), f": a link {target}", hint)
    return len(case.file.pages)


@judged(
    "proof/note-over-page",
    "Nothing laid over the page",
    "notes and frames print in some programs and not in others, and can cover an outline",
)
def notes(case: Case, check: Check[Case]) -> Findings:
    """Report annotations that print: notes, stamps, form fields, frames round links."""
    for page in case.file.pages:
        for what in page.annotations:
            yield about(check, page_name(page.number), f"carries {what}", "take it out, or set the link's border to 0")
    return len(case.file.pages)
