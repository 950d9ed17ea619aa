"""What reportlab cannot say: print settings, layers, labels, tags, metadata, attachments. Written with pikepdf."""

from html import escape
from io import BytesIO

import pikepdf
from pikepdf import Array, Dictionary, Name, String

from publisher.basics import Layer
from publisher.pages import Pack
from publisher.press.tags import write_tags

LAYER_TITLES = {
    Layer.OUTLINES: "Outlines",
    Layer.SURFACE: "Surface",
    Layer.NOTES: "Notes",
    Layer.DIMENSIONS: "Dimensions",
    Layer.PAGE: "Page furniture",
}


def finish(raw: bytes, pack: Pack) -> bytes:
    """Return the PDF with print scaling off, single-sided, layers named, labels, metadata and attachments. Same in, same out."""
    with pikepdf.open(BytesIO(raw)) as pdf:
        root = pdf.Root
        root.Lang = String(pack.language)
        root.ViewerPreferences = Dictionary(
            PrintScaling=Name("/None"),
            Enforce=Array([Name("/PrintScaling")]),
            Duplex=Name.Simplex,
            PickTrayByPDFSize=True,
            DisplayDocTitle=True,
        )
        root.PageLabels = Dictionary(Nums=Array(_labels(pack)))
        _layers(pdf)
        _metadata(pdf, pack)
        _attachments(pdf, pack)
        write_tags(pdf, pack)
        for key in ("/CreationDate", "/ModDate", "/Trapped"):
            if key in pdf.docinfo:
                del pdf.docinfo[key]
        out = BytesIO()
        pdf.save(
            out,
            deterministic_id=True,
            min_version=("1.7", 3),  # Enforce is Adobe extension level 3 of 1.7, and part of 2.0
            object_stream_mode=pikepdf.ObjectStreamMode.generate,
            compress_streams=True,
            linearize=False,
        )
    return out.getvalue()


def _labels(pack: Pack) -> list[pikepdf.Object | int]:
    if all(page.label == str(page.number) for page in pack.pages):
        return [0, Dictionary(S=Name.D)]
    labels: list[pikepdf.Object | int] = []
    for page in pack.pages:
        labels += [page.number - 1, Dictionary(P=String(page.label))]
    return labels


def _layers(pdf: pikepdf.Pdf) -> None:
    groups = {layer: pdf.make_indirect(Dictionary(Type=Name.OCG, Name=String(LAYER_TITLES[layer]))) for layer in Layer}
    properties = pdf.make_indirect(Dictionary({f"/L{layer.value}": group for layer, group in groups.items()}))
    order = Array(list(groups.values()))
    pdf.Root.OCProperties = Dictionary(
        OCGs=order, D=Dictionary(Name=String("Default"), BaseState=Name.ON, Order=Array(list(groups.values())))
    )
    for page in pdf.pages:
        if "/Resources" not in page.obj:
            page.obj.Resources = Dictionary()
        page.obj.Resources.Properties = properties
        for key in ("/CropBox", "/BleedBox", "/TrimBox", "/ArtBox", "/Rotate", "/UserUnit", "/Trans"):
            if key in page.obj:
                del page.obj[key]  # a missing box equals the MediaBox: one size, one truth


def _metadata(pdf: pikepdf.Pdf, pack: Pack) -> None:
    def block(tag: str, text: str, kind: str) -> str:
        lang = ' xml:lang="x-default"' if kind == "Alt" else ""
        inner = f"<rdf:li{lang}>{escape(text, quote=False)}</rdf:li>"
        return f"<{tag}><rdf:{kind}>{inner}</rdf:{kind}></{tag}>"

    packet = (
        '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>\n'
        '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">'
        '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" '
        'xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:xmpRights="http://ns.adobe.com/xap/1.0/rights/">'
        + block("dc:title", pack.title, "Alt")
        + block("dc:creator", pack.designer, "Seq")
        + block("dc:description", pack.summary, "Alt")
        + block("dc:rights", pack.licence, "Alt")
        + block("dc:language", pack.language, "Bag")
        + "<pdf:Producer>publisher</pdf:Producer>"
        + block("xmpRights:UsageTerms", pack.licence, "Alt")
        + '</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end="w"?>'
    )
    stream = pdf.make_stream(packet.encode("utf-8"))
    stream.Type = Name.Metadata
    stream.Subtype = Name.XML
    pdf.Root.Metadata = stream


def _attachments(pdf: pikepdf.Pdf, pack: Pack) -> None:
    if not pack.attachments:
        return
    names: list[pikepdf.Object] = []
    files: list[pikepdf.Object] = []
    for attachment in sorted(pack.attachments, key=lambda a: a.name):
        stream = pdf.make_stream(attachment.data)
        stream.Type = Name.EmbeddedFile
        stream.Subtype = Name("/" + attachment.mime)
        stream.Params = Dictionary(Size=len(attachment.data))
        spec = pdf.make_indirect(
            Dictionary(
                Type=Name.Filespec,
                F=String(attachment.name),
                UF=String(attachment.name),
                Desc=String(attachment.description),
                AFRelationship=Name.Data,
                EF=Dictionary(F=stream),
            )
        )
        names += [String(attachment.name), spec]
        files.append(spec)
    if "/Names" not in pdf.Root:
        pdf.Root.Names = Dictionary()
    pdf.Root.Names.EmbeddedFiles = Dictionary(Names=Array(names))
    pdf.Root.AF = Array(files)
