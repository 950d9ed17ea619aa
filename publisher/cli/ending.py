"""How a command ends before its time: stopped, or with nobody who takes its output. What stands in place is said after looking."""

import errno
import os
import signal
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from types import FrameType

import click

from publisher.basics import Refusal

STOPPED = 130  # as a shell says of a program that Ctrl-C ended: 128 and the number of the signal
NOBODY_READS = 141  # as a shell says of a program whose output nobody takes any more: 128 and SIGPIPE


class Stopped(Exception):
    """Ctrl-C, or the signal by which a system ends programs."""


class OutputLost(Exception):
    """Standard output or standard error cannot be written."""

    def __init__(self, error: OSError) -> None:
        """Keep what the system said."""
        super().__init__((error.strerror or "it cannot be written").lower())
        self.unread = error.errno == errno.EPIPE


@contextmanager
def watched() -> Iterator[None]:
    """Give click no interrupt and no lost output to answer in its own way: it prints an empty line and ends with 1.

    Rooms turn each OSError of a file into a finding, and one about a file names it; what is left is about the streams.
    """
    try:
        yield
    except KeyboardInterrupt as stop:
        raise Stopped from stop
    except OSError as error:
        if error.filename is None and error.errno is not None:
            raise OutputLost(error) from error
        raise


class Attempts:
    """What a command puts in place, one thing after the other."""

    def __init__(self) -> None:
        """Start with nothing; a command that places nothing stays so."""
        self.places = False
        self.stopped = False  # a signal was heard: what fails afterwards may have failed by it
        self._done: list[str] = []
        self._trying: tuple[str, Callable[[], bool]] | None = None

    @contextmanager
    def at(self, what: str, stands: Callable[[], bool]) -> Iterator[None]:
        """Put ``what`` in place in the body; ``stands`` looks whether it is there, should the body be left before its end.

        One that is refused has changed nothing.
        """
        self._trying = what, stands
        try:
            yield
        except Refusal:
            self._trying = None
            raise
        self._done.append(what)
        self._trying = None

    @property
    def trying(self) -> bool:
        """Whether something is being put in place."""
        return self._trying is not None

    def words(self) -> str:
        """Look, and say what stands in place of what was to be put there; '' for a command that places nothing."""
        if not self.places:
            return ""
        done = list(self._done)
        if self._trying is not None:
            what, stands = self._trying
            try:
                if stands():
                    done.append(what)
            except Refusal:
                return f"; {what} is not finished: the next run puts that right" + (
                    f"; put in place: {', '.join(done)}" if done else ""
                )
        return f"; put in place before that: {', '.join(done)}" if done else "; nothing was put in place"


@contextmanager
def hearing(attempts: Attempts) -> Iterator[None]:
    """Let Ctrl-C, and the signal by which systems end programs, raise KeyboardInterrupt, so that the run tidies up.

    While a library is being imported they end it at once instead: some catch the exception, print it and go on.
    """

    def stop(_number: int, frame: FrameType | None) -> None:
        attempts.stopped = True
        while frame is not None:
            if frame.f_code.co_filename.startswith("<frozen importlib") and not attempts.trying:
                say_last(f"stopped{attempts.words()}")
                os._exit(STOPPED)
            frame = frame.f_back
        raise KeyboardInterrupt

    heard = [number for number in (signal.SIGINT, signal.SIGTERM) if signal.getsignal(number) != signal.SIG_IGN]
    if threading.current_thread() is not threading.main_thread():
        heard = []
    former = [(number, signal.signal(number, stop)) for number in heard]
    try:
        yield
    finally:
        for number, handler in former:
            signal.signal(number, handler)


def attempts() -> Attempts:
    """Return what the command that runs has put in place."""
    found = click.get_current_context().find_object(Attempts)
    return found if found is not None else Attempts()


def say_last(words: str) -> None:
    """Print the last line on standard error, if somebody takes it, and let the end of the program write no more."""
    if words:
        with suppress(OSError):
            click.echo(words, err=True)
    for stream in (sys.stdout, sys.stderr):
        try:
            stream.flush()
        except (OSError, ValueError):
            with suppress(
                OSError, ValueError
            ):  # what is left in the buffer would be written, and fail, when Python ends
                os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
