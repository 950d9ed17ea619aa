"""On top of the rooms: words and exit codes only, one module per command.

Comes in: what was typed. Goes out: text or JSON, and an exit code: 0 clean or warnings only, 1 errors found in the work, 2 the command
or its input could not be used or its output not be written, 3 our own fault, 130 stopped, 141 nobody reads the output any more. Never:
computes anything.
"""

import gc
import os
import sys
from io import TextIOWrapper
from typing import Any

import click

from publisher import __version__
from publisher.cli.ending import NOBODY_READS, STOPPED, Attempts, OutputLost, Stopped, hearing, say_last, watched

COMMANDS = {
    "build": "Make the packs of one or more designs, and prove them.",
    "check": "Check designs without making packs: facts, needs, findings.",
    "measure": "Judge a printed sheet from two ruler readings.",
    "new": "Begin a design: a commented spec that builds as it is.",
    "outline": "Show what the tool sees in a drawing.",
    "proof": "Read finished PDFs and judge their print scale.",
    "release": "Prove a design's packs and put them in a new versioned folder.",
    "schema": "Print the schema of spec.yaml, for editors.",
    "shapes": "List the shapes and their parameters.",
    "show": "Print what a stage of the work gave, as text in mm.",
    "sizes": "Print every size and fact of a design.",
    "steps": "Propose the steps of a design, in an order that can be built.",
    "upgrade": "Rewrite a spec of a former format, and show what changes.",
    "words": "List the words of a spec: functions, tools, stages, papers …",
    "yield": "Lay the parts out on board sheets and keep the best layouts.",
}


class Commands(click.Group):
    """Commands whose rooms are imported when they run, so that help is fast."""

    def list_commands(self, _ctx: click.Context) -> list[str]:
        """Return the names in the order of the alphabet."""
        return list(COMMANDS)

    def get_command(self, _ctx: click.Context, name: str) -> click.Command | None:  # noqa: PLR0912 - one branch a command
        """Import and return one command."""
        match name:
            case "build":
                from publisher.cli.build import build as command
            case "check":
                from publisher.cli.check import check as command
            case "measure":
                from publisher.cli.measure import measure as command
            case "new":
                from publisher.cli.new import new as command
            case "outline":
                from publisher.cli.outline import outline as command
            case "proof":
                from publisher.cli.proof import proof as command
            case "release":
                from publisher.cli.release import release as command
            case "schema":
                from publisher.cli.schema import schema as command
            case "shapes":
                from publisher.cli.shapes import shapes as command
            case "show":
                from publisher.cli.show import show as command
            case "sizes":
                from publisher.cli.sizes import sizes as command
            case "steps":
                from publisher.cli.steps import steps as command
            case "upgrade":
                from publisher.cli.upgrade import upgrade as command
            case "words":
                from publisher.cli.words import words as command
            case "yield":
                from publisher.cli.yields import yields as command
            case _:
                return None
        return command

    def make_context(self, *given: Any, **more: Any) -> click.Context:
        """Read the words of the command line; help and version are printed here."""
        with watched():
            return super().make_context(*given, **more)

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command."""
        with watched():
            return super().invoke(ctx)

    def format_commands(self, _ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands from the table: no command is imported to print its line."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="publisher")
def group() -> None:
    """Make printable packs from a design folder, at true size, proved before they leave.

    \b
    Example:  publisher build designs/lock-stair

    \b
    Exit codes:  0 clean, or warnings only
                 1 errors found in the work
                 2 the command or its input could not be used, or its output not be written
                 3 a fault of this program
                 130 stopped by Ctrl-C or by the system
                 141 nobody reads the output any more, as behind “| head”
    """


def look_for_rings_seldom() -> None:
    """Let Python look less often for records that hold each other. Ours do not, and a build of several papers holds fewer than this
    number at once: as Python is set, it spends a tenth of its time on looking through what it still needs. Processes that share the
    work follow."""
    gc.set_threshold(2_000_000, 20, 50)


def say_any_name() -> None:
    """Let output show a name that is no letters, as disks allow and damaged lists hold, by its codes."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper) and stream.errors == "strict":
            stream.reconfigure(errors="backslashreplace")


def main() -> None:
    """Run a command; turn refusals, an interrupt and our own faults into a message and an exit code."""
    say_any_name()
    attempts = Attempts()
    with hearing(attempts):
        try:
            code = _run(attempts)
        except (KeyboardInterrupt, Stopped, click.Abort):
            say_last(f"stopped{attempts.words()}")
            code = STOPPED
        except OutputLost as lost:
            code = _lost(lost, attempts)
        except Exception as error:
            if os.environ.get("PUBLISHER_TRACE"):
                raise
            code = _failed(error, attempts)
    sys.exit(code)


def _failed(error: Exception, attempts: Attempts) -> int:
    """Say that it is our fault; not so after a signal, which some library may have made an error of its own of."""
    if attempts.stopped:
        say_last(f"stopped{attempts.words()}")
        return STOPPED
    say_last(
        f"publisher failed: a fault of ours, not of your design ({type(error).__name__}: {error}){attempts.words()}.\n"
        "Run it again with PUBLISHER_TRACE=1 in the environment to see where, and report it."
    )
    return 3


def _run(attempts: Attempts) -> int:
    """Run a command and return its exit code, 2 for what cannot be used."""
    from publisher.basics import Refusal

    look_for_rings_seldom()
    with watched():
        try:
            group.main(prog_name="publisher", standalone_mode=False, obj=attempts)
        except click.exceptions.Exit as leave:
            return leave.exit_code
        except click.ClickException as error:
            error.show()
            return 2
        except Refusal as refusal:
            from publisher.cli.report import show_findings

            show_findings(refusal.findings)
            return 2
    return 0


def _lost(lost: OutputLost, attempts: Attempts) -> int:
    """Say that output cannot be written, and what was done; nothing where nobody wanted more of it and nothing was to be put in place."""
    if lost.unread and not attempts.places:
        say_last("")
        return NOBODY_READS
    why = "nobody reads the output any more" if lost.unread else f"cannot write the output: {lost}"
    say_last(f"{why}{attempts.words()}")
    return NOBODY_READS if lost.unread else 2
