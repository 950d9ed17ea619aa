"""A licence is an expression of SPDX identifiers, or one of the designer's own under LicenseRef."""

from collections.abc import Callable

import pytest

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


@pytest.mark.breaks("design/licence")
@pytest.mark.parametrize(
    ("licence", "hint"),
    [
        ("no", "LicenseRef-NAME"),
        ("CC-BY-NC-40", "did you mean “CC-BY-NC-4.0”?"),
        ("CC-BY-NC", "did you mean “CC-BY-NC"),
        ("MIT AND", "LicenseRef-NAME"),
        ("MIT OR nothing", "LicenseRef-NAME"),
    ],
)
def test_any_other_word_is_refused_at_its_place(tried: Callable[..., Tried], licence: str, hint: str) -> None:
    (found,) = tried(f"licence: {licence}").design.findings
    assert found.check == "design/licence" and hint in found.hint
    assert found.message == f"“{licence}” is no licence that SPDX lists"
    assert found.place is not None and found.place.line
