"""What stands beside the pages, whatever way a file numbers its objects."""

from io import BytesIO
from typing import Any

import pikepdf
import pytest

from publisher.proof.reading.beside import beside_pages


def test_numbers_of_objects_make_no_difference_and_each_entry_does(kit: Any) -> None:
    pack = kit.good()
    data = pack.write()
    out, other = BytesIO(), BytesIO()
    with pikepdf.open(BytesIO(data)) as pdf:
        pdf.save(out, object_stream_mode=pikepdf.ObjectStreamMode.generate)
        pdf.Root.Outlines.First.Title = pikepdf.String("Other")
        pdf.save(other)
    found = beside_pages(data)
    assert {"/Outlines", "/Names", "/PageLabels", "/ViewerPreferences"} <= found.keys() and "/Pages" not in found
    assert beside_pages(out.getvalue()) == found
    changed = beside_pages(other.getvalue())
    assert [key for key in found if changed[key] != found[key]] == ["/Outlines"]


@pytest.mark.parametrize("page", [0, 1])
def test_a_link_leads_to_a_page_by_its_number(kit: Any, page: int) -> None:
    def add(pdf: pikepdf.Pdf) -> None:
        note = pikepdf.Dictionary(
            Subtype=pikepdf.Name.Link, Dest=pikepdf.Array([pdf.pages[page].obj, pikepdf.Name.Fit])
        )
        pdf.pages[2].Annots = pikepdf.Array([note])

    pack = kit.good()
    pack.edits.append(add)
    first = beside_pages(pack.write())
    pack.edits.append(lambda pdf: pdf.pages[2].Annots[0].__setitem__("/Dest", [pdf.pages[3].obj, pikepdf.Name.Fit]))
    second = beside_pages(pack.write())
    assert first["/Annots 3"] != second["/Annots 3"]
