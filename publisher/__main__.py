"""``python -m publisher`` is the same as the console command: from its first moment, Ctrl-C is one line and exit code 130."""

import atexit
import os
import sys


def command() -> None:
    """Run the command line as a process of its own, which ends with it."""
    ended: list[int] = []
    atexit.register(_leave, ended)  # asked for first, it comes last
    try:
        main()
    except SystemExit as leave:
        if isinstance(leave.code, int):
            ended.append(leave.code)
        raise


def main() -> None:
    """Run the command line. What is imported takes longer than most people wait before they stop a mistaken command."""
    try:
        import signal

        for number in (signal.SIGINT, signal.SIGTERM):
            if signal.getsignal(number) != signal.SIG_IGN:
                signal.signal(number, lambda *_: _stopped())  # until the command line hears it
        from publisher.cli import main as run

        try:
            run()
        finally:  # all is said and done: Python ends by itself
            signal.signal(signal.SIGINT, signal.SIG_IGN)
            signal.signal(signal.SIGTERM, signal.SIG_IGN)
    except KeyboardInterrupt:
        _stopped()
    except SystemExit as leave:
        if (
            leave.code == 130
        ):  # Python itself would end by the signal where it met the interrupt in text that it evaluates
            os._exit(130)
        raise


def _leave(ended: list[int]) -> None:
    """End at once when all is done that Python and libraries do at the end: to free all records one by one, which the system takes
    back whole, would be a twentieth of a build. Where the last words cannot be written Python ends as it does."""
    try:
        for stream in (sys.stdout, sys.stderr):
            if stream is not None:
                stream.flush()
    except (OSError, ValueError):
        return
    if ended:
        os._exit(ended[0])


def _stopped() -> None:
    try:
        os.write(2, b"stopped\n")
    finally:
        os._exit(130)


if __name__ == "__main__":
    command()
