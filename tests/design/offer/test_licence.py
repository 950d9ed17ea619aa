"""A licence is an expression of SPDX identifiers, or one of the designer's own under LicenseRef."""

from collections.abc import Callable

import pytest

from publisher.design.offer.licence import NOBODY_NAMED, own_licence
from tests.design.conftest import Tried


@pytest.mark.keeps("design/licence")
@pytest.mark.parametrize(
    "licence",
    [
        "CC-BY-NC-4.0",
        "cc-by-4.0",
        "CC-BY-NC-4.0 OR CC-BY-4.0",
        "LicenseRef-Ebbwater-shop",
        "GPL-2.0-only WITH Classpath-exception-2.0",
    ],
)
def test_known_licences_are_taken_as_written(tried: Callable[..., Tried], licence: str) -> None:
    design = tried(f"licence: {licence}").design
    assert (design.licence, design.findings) == (licence, ())


@pytest.mark.keeps("design/licence")
@pytest.mark.parametrize("words", ["personal use", "Sell what you build"])
def test_words_choose_a_text_of_ours(tried: Callable[..., Tried], words: str) -> None:
    design = tried(f"designer: Ebbwater Patterns\nlicence: {words}").design
    own = own_licence(design.licence, design.designer)
    assert (design.licence, design.findings) == (words.lower(), ())
    assert own is not None and own.words == words.lower()
    assert "Ebbwater Patterns" in " ".join(own.text) and "{" not in " ".join(own.text)
    assert ("may not sell what you build" in " ".join(own.text)) == (words == "personal use")
    nobody = own_licence(design.licence, " ")
    assert nobody is not None and NOBODY_NAMED in " ".join(nobody.text)


def test_licences_of_others_have_no_text_of_ours() -> None:
    assert own_licence("CC-BY-NC-4.0", "Ebbwater Patterns") is None


@pytest.mark.breaks("design/licence")
@pytest.mark.parametrize(
    ("licence", "hint"),
    [
        ("no", "personal use or sell what you build"),
        ("CC-BY-NC-40", "did you mean “CC-BY-NC-4.0”?"),
        ("CC-BY-NC", "did you mean “CC-BY-NC"),
        ("personal-use", "did you mean “personal use”?"),
        ("MIT AND", "LicenseRef-NAME"),
        ("MIT OR nothing", "LicenseRef-NAME"),
    ],
)
def test_any_other_word_is_refused_at_its_place(tried: Callable[..., Tried], licence: str, hint: str) -> None:
    (found,) = tried(f"licence: {licence}").design.findings
    assert found.check == "design/licence" and hint in found.hint
    assert found.message == f"“{licence}” is no licence that SPDX lists"
    assert found.place is not None and found.place.line
