"""The numbers at the pictures of a step: they say in which order it is done."""

import re
from collections.abc import Iterator

from publisher.basics import Carried, Check, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import TextLine, normal

PICTURE = re.compile(r"step:(\d+):(?:picture|act:\d+|does:[a-z_]+)")
BEFORE_ALL = re.compile(r"step:\d+:(?:picture|does:(?!wait$|seal$|paint$|apart$)[a-z_]+)")
NUMBER = re.compile(r"\d+")
AT_LEFT, AT_TOP = 80.0, 7.0  # mm from a number to the picture at its right, the nearest one, and under the top of it
WIDER = 3.0  # mm by which a number of two figures reaches over the side of its picture
LARGE = (3.8, 5.5)  # mm: em of such a number; what pictures say is smaller, that of a step is larger


@judged(
    "proof/picture-number",
    "Pictures of a step are numbered in their order",
    "a buyer does what the pictures show one after another: where a step has several each has a number, from 1 on, none of them twice",
    may_be_empty=True,
)
def picture_numbers(case: Case, check: Check[Case]) -> Findings:
    """Look for the number at each picture of each step, in the order in which they stand."""
    steps: dict[str, list[Carried]] = {}
    for one in case.promises.carried if case.promises.purpose == "pack" else ():
        if match := PICTURE.fullmatch(one.key):
            steps.setdefault(match[1], []).append(one)
    for step, shown in steps.items():
        places = list({(one.page, one.box): one for one in shown}.values())
        for fault in _faults([(one, list(_numbers(case, one))) for one in places]) if len(places) > 1 else ():
            yield about(
                check, f"{page_name(places[0].page)}: a picture of step {step}", fault, "number pictures from 1 on"
            )
    return len(steps)


def _numbers(case: Case, where: Carried) -> Iterator[int]:
    """Yield the numbers that stand at the left of a picture, at its top; the nearest first."""
    for line in sorted(case.lines(where.page), key=lambda one: -one.x):
        if LARGE[0] <= line.size <= LARGE[1] and NUMBER.fullmatch(normal(line.text)) and _at(line, where):
            yield int(line.text)


def _at(line: TextLine, where: Carried) -> bool:
    left, top = where.box.left - line.end_x, where.box.top - line.y
    return -WIDER <= left <= AT_LEFT and 0.0 <= top <= AT_TOP


def _faults(shown: list[tuple[Carried, list[int]]]) -> Iterator[str]:
    """Yield in words what is wrong with the numbers of the pictures of a step."""
    if any(not numbers for _, numbers in shown):
        yield "has no number"
        return
    told = [numbers[0] for _, numbers in shown]
    if told != sorted(set(told)):
        yield f"has its number out of order: {', '.join(map(str, told))}"
    elif BEFORE_ALL.fullmatch(shown[0][0].key) and told[0] != 1:
        yield f"has the number {told[0]} where 1 belongs"
