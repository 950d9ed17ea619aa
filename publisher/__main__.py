"""``python -m publisher`` is the same as the console command: from its first moment, Ctrl-C is one line and exit code 130."""

import os


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


def _stopped() -> None:
    try:
        os.write(2, b"stopped\n")
    finally:
        os._exit(130)


if __name__ == "__main__":
    main()
