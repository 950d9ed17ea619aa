"""Tagged structure (ISO 32000-1, 14.7 and 14.8): which marks stand in a page's content, and the tree of elements over them."""

from collections.abc import Iterator
from itertools import count, groupby

import pikepdf
from pikepdf import Array, Dictionary, Name, String

from publisher.basics import Layer, record
from publisher.pages import Drawn, Link, Pack, Page, StructureElement

ARTIFACT = -1  # in place of a leaf: furniture and ornaments


@record
class MarkedRun:
    """Things of one layer and one element that follow each other in a page's content, under one ``number``. ``leaf``: which of the
    elements with things of their own, counted from 0 in the order of reading; ``ARTIFACT`` for none, with the number 0."""

    layer: Layer
    leaf: int
    role: str
    number: int
    things: tuple[Drawn, ...]


def marked(page: Page) -> tuple[MarkedRun, ...]:
    """Return the runs of a page's things as its content marks them, in the order in which they are drawn; links are no content."""
    leaves = tuple(_leaves(page.structure))
    holders = {place: leaf for leaf, element in enumerate(leaves) for place in element.things}
    shown = [(t.layer, holders.get(n, ARTIFACT), t) for n, t in enumerate(page.drawn) if not isinstance(t, Link)]
    runs, numbers = [], count()
    for (layer, leaf), run in groupby(shown, lambda one: one[:2]):
        things = tuple(thing for _, _, thing in run)
        role, number = (leaves[leaf].role, next(numbers)) if leaf != ARTIFACT else ("Artifact", 0)
        runs.append(MarkedRun(layer, leaf, role, number, things))
    return tuple(runs)


def opening(run: MarkedRun) -> str:
    """Return the operator that begins a run's marked content inside its layer."""
    return f"/{run.role} BMC" if run.leaf == ARTIFACT else f"/{run.role} <</MCID {run.number}>> BDC"


def write_tags(pdf: pikepdf.Pdf, pack: Pack) -> None:
    """Write the tree: the document, a section for each page, its elements; and which element holds each mark of a page."""
    root = pdf.make_indirect(Dictionary(Type=Name.StructTreeRoot))
    document = pdf.make_indirect(Dictionary(Type=Name.StructElem, S=Name.Document, P=root))
    sections: list[pikepdf.Object] = []
    parents: list[pikepdf.Object | int] = []
    for index, (page, made) in enumerate(zip(pack.pages, pdf.pages, strict=True)):
        section, holders = _section(pdf, page, made.obj, document)
        sections.append(section)
        parents += [index, pdf.make_indirect(Array(holders))]
        made.obj.StructParents = index
        made.obj.Tabs = Name.S
    document.K = Array(sections)
    root.K = document
    root.ParentTree = pdf.make_indirect(Dictionary(Nums=Array(parents)))
    root.ParentTreeNextKey = len(pack.pages)
    pdf.Root.StructTreeRoot = root
    pdf.Root.MarkInfo = Dictionary(Marked=True)


def _section(
    pdf: pikepdf.Pdf, page: Page, made: pikepdf.Object, document: pikepdf.Object
) -> tuple[pikepdf.Object, list[pikepdf.Object]]:
    """Write the elements of a page; return its section, and the element of each mark by the mark's number."""
    marks: dict[int, list[int]] = {}
    for run in marked(page):
        if run.leaf != ARTIFACT:
            marks.setdefault(run.leaf, []).append(run.number)
    holders: dict[int, pikepdf.Object] = {}
    leaves = count()

    def write(element: StructureElement, parent: pikepdf.Object) -> pikepdf.Object:
        one = pdf.make_indirect(Dictionary(Type=Name.StructElem, S=Name("/" + element.role), P=parent, Pg=made))
        if element.alt:
            one.Alt = String(element.alt)
        if element.role == "TH":
            one.A = Dictionary(O=Name.Table, Scope=Name.Column)
        own = marks[next(leaves)] if element.things else []
        holders.update(dict.fromkeys(own, one))
        one.K = Array([*own, *(write(kid, one) for kid in element.kids)])
        return one

    section = pdf.make_indirect(Dictionary(Type=Name.StructElem, S=Name.Sect, P=document, T=String(page.title)))
    section.K = Array([write(element, section) for element in page.structure])
    return section, [holders[number] for number in sorted(holders)]


def _leaves(elements: tuple[StructureElement, ...]) -> Iterator[StructureElement]:
    """Yield the elements that hold things, each before those under it."""
    for element in elements:
        if element.things:
            yield element
        yield from _leaves(element.kids)
