"""A sweep shared by processes is the sweep of one."""

from pathlib import Path

from publisher import api
from publisher.sweep.sharing import SweepDesk
from tests.sweep.test_counting import trial_of


def test_two_processes_find_what_one_does(squares: Path) -> None:
    ranges = ("radius = 73 mm to 76 mm",)
    one, two = (api.vary(api.read(squares), "", ranges, values=3, workers=workers) for workers in (1, 2))
    assert one == two


def test_an_interrupt_keeps_what_is_done_and_progress_is_told(squares: Path) -> None:
    heard: list[tuple[int, int]] = []

    def told(done: int, of: int) -> None:
        heard.append((done, of))
        if done > 2:
            raise KeyboardInterrupt

    desk = SweepDesk(trial_of(squares, "radius = 73 mm to 76 mm"), ((73.0, 74.5, 76.0),), told)
    assert not desk.run(1)
    assert sorted(desk.done) == [(0,), (1,), (2,)] and desk.refined == {}
    assert heard == [(1, 5), (2, 5), (4, 5)]  # between the last two nothing jumps
