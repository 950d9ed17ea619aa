"""Sayings are found in every language as its pages are set, and a page that lacks one, or says other limits, is found."""

from dataclasses import replace
from typing import Any

import pytest

from publisher.basics import Box, FigurePromise, LengthPromise, PagePromise, Promises
from publisher.pages.instructions import pack_acts, steps
from publisher.pages.type import Tongue
from publisher.proof.checks.sayings import Saying, forms_of, lacking_on, sayings
from publisher.proof.reading import normal, reader_of
from tests.proof.refused import refused_by

PAGES = tuple(PagePromise(n, 210.0, 297.0, str(n), "steps", Box(6.0, 12.0, 204.0, 285.0), True) for n in (1, 2))
SQUARE = LengthPromise(1, (0.0, 0.0), (100.0, 0.0), 100.0, "calibration", "100 mm")
SHARES = (
    FigurePromise("least scale of a print", 0.995, "share"),
    FigurePromise("greatest scale of a print", 1.005, "share"),
)
PROMISES = replace(Promises("", "en", PAGES, (SQUARE,), (), (), (), ()), figures=SHARES)
LIMITS = ("99.5 and 100.5 mm (3.918 and 3.956 in)", "99.5 to 100.5 mm")
EXAMPLES = ("2", "5.00 mm (0.197 in)", "66.7 × 30.0 mm (2.63 × 1.18 in)")


def told(words: str) -> str:
    return "".join(normal(words).split())


def said(form: str, figure: str, limits: str) -> str:
    return form.replace("#", figure).replace("{limits}", limits)


@pytest.mark.parametrize("saying", sayings(), ids=lambda one: one.name)
def test_each_form_is_known_in_both_languages(saying: Saying) -> None:
    forms = dict(saying.forms)
    assert len(forms["en"]) == len(forms["de"])
    for place, english in enumerate(forms["en"]):
        own = list(forms_of(saying, PROMISES, None))[place]
        ways = [said(english, figure, limits) for figure in EXAMPLES for limits in LIMITS]
        assert all(own.stands_in(told(way)) for way in ways)
        german = list(forms_of(saying, replace(PROMISES, language="de"), reader_of("de")))[place]
        tongue, take_down = Tongue("de"), reader_of("de")
        set_in = [tongue.say(way) for way in ways]
        assert take_down is not None
        if not tongue.missing:  # the beginning of a sentence has no row of its own
            assert any(german.stands_in(told(take_down(way))) for way in set_in), set_in


def test_limits_of_another_design_are_no_limits() -> None:
    saying = Saying("limits", ("pack",), ("steps",), (), False, (("en", ("Both lie between {limits}.",)),))
    (form,) = forms_of(saying, PROMISES, None)
    assert form.stands_in(told("Both lie between 99.5 and 100.5 mm (3.918 and 3.956 in)."))
    assert form.stands_in(told("Both lie between 3.918 and 3.956 in (99.5 and 100.5 mm)."))
    for words in ("99 and 101 mm", "99.5 and 100.9 mm", "99.3 and 100.5 mm", "3.918 and 3.956 in (98 and 100.5 mm)"):
        assert not form.stands_in(told(f"Both lie between {words}."))


def test_a_saying_stands_on_one_page_or_on_each() -> None:
    saying = Saying("so", ("pack",), ("steps",), (), False, (("en", ("Cut the foam.",)),))
    forms = list(forms_of(saying, PROMISES, None))
    pages = list(PAGES)
    assert lacking_on(pages, False, {1: "Cutthefoam.", 2: ""}, forms) == []
    assert lacking_on(pages, True, {1: "Cutthefoam.", 2: ""}, forms) == [2]
    assert lacking_on(pages, False, {1: "Cutthe", 2: "foam."}, forms) == []  # begun on one page, and ended on the next
    assert lacking_on(pages, False, {1: "Cut", 2: ""}, forms) == [1]
    assert lacking_on([], True, {}, forms) == []
    assert lacking_on([], False, {}, forms) == [0], "no page is of that kind"


@pytest.mark.parametrize(("act", "what"), [("act:mark", "laid"), ("act:card", "cut")])
def test_an_act_of_the_pack_that_lost_a_sentence_is_refused(
    act: str, what: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its maker alone knows of it: what is said is promised by nobody else."""
    whole = pack_acts.pack_acts

    def less(*given: Any) -> tuple[pack_acts.Act, ...]:
        """Keep of an act its first sentence."""
        return tuple(
            replace(one, say=one.say.partition(". ")[0] + ".") if one.key == act else one for one in whole(*given)
        )

    assert "proof/saying" not in refused_by("toll-house")
    monkeypatch.setattr(steps, "pack_acts", less)
    assert "proof/saying" in refused_by("toll-house"), what
