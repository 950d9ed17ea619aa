"""What the file asks of print programs: no scaling, one side, its own paper, and nothing else (ISO 32000-2, 12.2)."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import about, judged
from publisher.proof.measuring import Case


@judged(
    "proof/print-scaling",
    "Print scaling off",
    "the default of most print dialogues is to fit the page, which makes every part too small",
)
def print_scaling(case: Case, check: Check[Case]) -> Findings:
    """Look at PrintScaling and Enforce of the viewer preferences."""
    file, hint = case.file, "set PrintScaling to None, and Enforce to [PrintScaling]"
    if file.print_scaling != "None":
        said = f"says {file.print_scaling or 'nothing'} about print scaling"
        yield about(check, file.name, f"{said}; the print dialogue may start with “fit”", hint)
    if "PrintScaling" not in file.enforced:
        yield about(check, file.name, "does not ask print programs to hold on to its print scaling", hint)
    return 1


@judged(
    "proof/print-wish",
    "No other wishes about printing",
    "a print area cuts or enlarges pages behind the buyer's back, and five copies of a pack are four too many",
)
def other_wishes(case: Case, check: Check[Case]) -> Findings:
    """Report viewer preferences about print area, copies and page ranges."""
    for wish in case.file.wishes:
        yield about(check, case.file.name, wish, "take it out of the viewer preferences")
    return 1


@judged("proof/duplex", "Single-sided", "templates on the back of templates cannot both be cut out")
def duplex(case: Case, check: Check[Case]) -> Findings:
    """Look at Duplex of the viewer preferences."""
    asked = case.file.duplex
    if asked != "Simplex":
        said = f"asks for {asked}" if asked else "does not ask for single-sided print"
        yield about(check, case.file.name, said, "set Duplex to Simplex")
    return 1


@judged(
    "proof/paper-tray",
    "Paper tray by page size",
    "a printer with two papers otherwise takes the one that was used last",
)
def paper_tray(case: Case, check: Check[Case]) -> Findings:
    """Look at PickTrayByPDFSize of the viewer preferences."""
    if not case.file.pick_tray:
        what = "does not ask for the paper tray that fits its page size"
        yield about(check, case.file.name, what, "set PickTrayByPDFSize to true")
    return 1
