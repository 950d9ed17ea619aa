"""``python -m publisher`` is the same as the console command."""

from publisher.cli import main

if __name__ == "__main__":
    main()
