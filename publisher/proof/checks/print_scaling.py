"""The file asks print programs not to scale, and to keep to that."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at PrintScaling and Enforce of the viewer preferences (ISO 32000-2, 12.2)."""
    file, found = case.file, []
    if file.print_scaling != "None":
        said = f"says {file.print_scaling}" if file.print_scaling else "says nothing"
        found.append(
            _finding(
                check, file.name, f"{file.name} {said} about print scaling; the print dialogue may start with “fit”"
            )
        )
    if "PrintScaling" not in file.enforced:
        found.append(
            _finding(check, file.name, f"{file.name} does not ask print programs to hold on to its print scaling")
        )
    return Outcome(1, tuple(found))


def _finding(check: Check[Case], name: str, message: str) -> Finding:
    return check.found(message, subject=name, hint="set PrintScaling to None, and Enforce to [PrintScaling]")


CHECK = Check(
    "proof/print-scaling",
    "Print scaling off",
    "the default of most print dialogues is to fit the page, which makes every part too small",
    Severity.ERROR,
    run=run,
)
