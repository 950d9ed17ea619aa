"""The scale that a reading shows, and the one rule by which it is good, bad or in doubt."""

from publisher.basics import record
from publisher.ruler.pack_facts import AllowedScale
from publisher.ruler.readings import Reading, Tool

COVERAGE = 2.0  # k = 2, about 95 % (JCGM 100, 6.3)

# The limits have a guard of 0.3 % about them, less than any board forgives (common practice, no source): a print that is farther
# outside is called good one time in twenty at most, and one inside is called bad hardly ever.
GUARD = 0.003
SCALE_DUST = 1e-9


@record
class Scale:
    """Print scale on one axis: 1 is true size. ``u`` is the expanded uncertainty (k = 2). ``good``: between which scales a reading
    of this line with this ruler is good; None where none is."""

    axis: str
    value: float
    u: float
    verdict: str  # good, doubtful, bad
    good: tuple[float, float] | None = None

    @property
    def true(self) -> tuple[float, float]:
        """Between which scales the true one lies, as far as the reading shows."""
        return self.value - self.u, self.value + self.u


def scale_of(reading: Reading, budget: AllowedScale) -> Scale:
    """Judge one reading: good where a sheet 0.3 % outside would hardly give it, bad where one inside would hardly."""
    tool, line = reading.tool, reading.true_mm
    value, u = reading.read_mm / line, tool.u_mm / line
    good = good_between(budget, tool, line)
    strays = max(GUARD + COVERAGE * u, tool.never_mm / line)
    if good is not None and good[0] - SCALE_DUST <= value <= good[1] + SCALE_DUST:
        verdict = "good"
    elif budget.least - strays <= value <= budget.most + strays:
        verdict = "doubtful"
    else:
        verdict = "bad"
    return Scale(reading.axis, value, COVERAGE * u, verdict, good)


def good_between(budget: AllowedScale, tool: Tool, line: float) -> tuple[float, float] | None:
    """Return between which scales a reading of a line (mm) shows that a sheet is good; None where no reading does."""
    inside = max(0.0, tool.sure_mm / line - GUARD)
    least, most = budget.least + inside, budget.most - inside
    return (least, most) if least <= most else None
