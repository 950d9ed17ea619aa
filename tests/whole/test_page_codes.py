"""Page codes on finished pages: a reader of another house finds each of them in pixels as coarse as those of a poor scan."""

from pathlib import Path

import pypdfium2
import pytest
import zxingcpp

from publisher.brief import read_brief
from publisher.pages import Pack
from publisher.pipeline import compose_packs, work
from publisher.press import write_pdf
from tests.whole.conftest import demo_pack

DESIGNS = Path(__file__).parents[2] / "designs"


@pytest.fixture(scope="module", params=[("lock-stair", "a4"), ("quay", "letter")], ids="-".join)
def pack(request: pytest.FixtureRequest) -> Pack:
    return demo_pack(*request.param)


@pytest.fixture(scope="module")
def pdf(pack: Pack) -> bytes:
    return write_pdf(pack)


@pytest.mark.parametrize("dpi", [100, 150])
def test_every_code_is_read_on_its_page(pack: Pack, pdf: bytes, dpi: int) -> None:
    document = pypdfium2.PdfDocument(pdf)
    promised = {promise.page: promise.text for promise in pack.promises.codes}
    found = {}
    for number in promised:
        picture = document[number - 1].render(scale=dpi / 72, grayscale=True).to_numpy()
        codes = [code for code in zxingcpp.read_barcodes(picture) if code.format == zxingcpp.BarcodeFormat.QRCode]
        found[number] = [code.text for code in codes]
    document.close()
    assert promised
    assert found == {number: [text] for number, text in promised.items()}


def test_the_footer_shows_the_first_four_digits_of_the_id(pack: Pack, pdf: bytes) -> None:
    document = pypdfium2.PdfDocument(pdf)
    said = [page.get_textpage().get_text_bounded() for page in document]
    document.close()
    assert all(f"version 1.0.0 · {pack.id[:4]} · " in text for text in said)


def test_two_drafts_of_one_version_differ_in_their_id_and_a_trial_says_so(pack: Pack) -> None:
    trial = compose_packs(work(read_brief(DESIGNS / pack.slug, (("board", "4.8 mm"),))), (pack.paper.name,))[0][0]
    assert trial.version == pack.version
    assert trial.id != pack.id
    assert all(code.text.endswith("/T") for code in trial.promises.codes)
    assert all(code.text.endswith("/S") for code in pack.promises.codes)
