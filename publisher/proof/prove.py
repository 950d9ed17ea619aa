"""The proof of one file: read it once, run the checks that apply, say what was judged and what not."""

from contextlib import suppress
from dataclasses import replace

from publisher.basics import Check, Finding, Promises, Severity, errors, run_checks
from publisher.proof.checks import ALONE, NUMBERED, OPENING, PROMISED, RULES, TO_PRINT
from publisher.proof.measuring import Case, looked_at
from publisher.proof.reading import GIVES_UP, Measured, PageLooked, Proof, read_file, why_given_up

MOST_OF_A_CHECK = 100  # findings of one check about one file


def prove(pdf: bytes, promises: Promises | None, name: str) -> Proof:
    """Judge a finished PDF against its promises; without promises (a file that we did not make) only what needs none.

    Any bytes may come in; nothing is raised. ``name`` is how messages call the file.
    """
    file = read_file(pdf, name)
    case = Case(pdf, file, promises)
    run = OPENING if file.trouble else OPENING + ALONE + _of_promises(promises)
    findings = _run(case, run)
    passed = () if file.trouble else run  # of a file that does not open nothing was found to hold
    judged = tuple(check.title for check in passed)
    unjudged = tuple(check.title for check in RULES if check not in passed)
    measured: tuple[Measured, ...] = ()
    pages: tuple[PageLooked, ...] = ()
    if not file.trouble:
        with suppress(*GIVES_UP):  # the findings say why
            measured, pages = _measured(case), looked_at(case)
    attached = tuple(digest for _, digest in file.attachments)
    return Proof(name, findings, measured, judged, unjudged, not file.trouble, attached, pages)


def _of_promises(promises: Promises | None) -> tuple[Check[Case], ...]:
    if promises is None:
        return ()
    left_out = {"phone": TO_PRINT, "shop": (*TO_PRINT, *NUMBERED)}.get(promises.purpose, ())
    return tuple(check for check in PROMISED if check not in left_out)


def _run(case: Case, checks: tuple[Check[Case], ...]) -> tuple[Finding, ...]:
    found: list[Finding] = []
    for check in checks:
        try:
            found.extend(_few(check, run_checks((check,), case)))
        except GIVES_UP as trouble:
            found.append(
                check.found(
                    f"“{check.title}” could not be judged: {why_given_up(trouble)}",
                    subject=case.file.name,
                    hint="make the file again with plain lines and finite numbers",
                )
            )
    return tuple(found)


def _few(check: Check[Case], found: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Return the findings of one check, of very many the first and how many more there are: a spoiled file says one thing a thousand
    times."""
    if len(found) <= MOST_OF_A_CHECK:
        return found
    more = len(found) - MOST_OF_A_CHECK
    worst = Severity.ERROR if errors(found[MOST_OF_A_CHECK:]) else Severity.WARNING
    rest = check.found(
        f"“{check.title}”: {more:,} more of this kind in the file",
        subject=found[0].subject,
        hint="mend the first ones, and prove the file again",
        value=more,
    )
    return (*found[:MOST_OF_A_CHECK], replace(rest, severity=worst))


def _measured(case: Case) -> tuple[Measured, ...]:
    """Return the readings worth showing: squares both ways by both roads, rulers, card and dimensions, worst of each outline."""
    if not case.promised:
        return ()
    readings: list[Measured] = []
    for reading in case.lengths():
        promise = reading.promise
        if promise.purpose != "tick" and reading.found is not None:
            way = (
                "across" if abs(promise.start[1] - promise.end[1]) < abs(promise.start[0] - promise.end[0]) else "down"
            )
            named = f" “{promise.label}”" if promise.label else ""
            readings.append(Measured(f"{promise.purpose}{named} {way}", promise.page, promise.length, reading.found))
    for square in case.pixels().squares:
        for value, wanted, way in (
            (square.across, square.box.width, "across"),
            (square.down, square.box.height, "down"),
        ):
            if value is not None:
                readings.append(Measured(f"calibration by pixels {way}", square.page, wanted, value))
    for outline in case.outlines():
        what = f"outline of part {outline.promise.letter}, copy {outline.promise.copy}: farthest"
        readings.append(Measured(what, outline.promise.page, 0.0, outline.farthest))
    for tiled in case.tiles():
        readings.append(Measured(f"part {tiled.part} put together: farthest", tiled.pages[0], 0.0, tiled.farthest))
    return tuple(readings)
