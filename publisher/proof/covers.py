"""What “proved” covers, in one place: commands, records and pages of the manual say the same."""

COVERS = (
    "“Proved” covers print scale, outlines, marks and tiles, letters, counts, widths, sides, limits, layouts, page references, links and "
    "tagged structure, and that every thing on a page is drawn as it was placed. It does not cover whether the design is what its designer "
    "meant, nor what a printer does: measure the printed square."
)
ALONE_COVERS = (
    "Without the design nobody knows how long the lines should be: judged was only what holds for any PDF to print, "
    "and not whether they are."
)
BESIDE_COVERS = (
    "Of a folder it covers too that each cut file shows its pieces in mm, the table of yields the numbers of the layouts, each picture its "
    "page, and that all files are those of its list."
)
BY_RECORD_COVERS = (
    "Without the design the cut files were held against the records of the packs: outlines, openings, letters and places, but not marks, "
    "words and gaps, and not the table of yields."
)
