"""Pictures of a finished PDF's pages, rendered from the file itself by PDFium."""

from io import BytesIO

PT_PER_INCH = 72.0


def render_previews(pdf: bytes, dpi: int = 72) -> tuple[bytes, ...]:
    """Return one PNG per page, in greys where the page has no colour, at ``dpi`` dots per inch."""
    import pypdfium2

    document = pypdfium2.PdfDocument(pdf)
    try:
        pictures = []
        for index in range(len(document)):
            page = document[index]
            bitmap = page.render(scale=dpi / PT_PER_INCH, grayscale=True)
            image = bitmap.to_pil().convert("L")
            out = BytesIO()
            image.save(out, "PNG", compress_level=2, dpi=(dpi, dpi))
            pictures.append(out.getvalue())
            bitmap.close()
            page.close()
        return tuple(pictures)
    finally:
        document.close()
