"""What the files of a design are called, all in one place; paths are below the design's own folder.

Sizes as written have no variant in the name of a pack, and the folder ``standard`` where a variant's name would stand.
"""

from publisher.design import STANDARD, SheetSize


def pack_stem(slug: str, version: str, variant: str) -> str:
    """Return ``<slug>-<version>[-<variant>]``, with which the names of a variant's packs begin."""
    return "-".join(text for text in (slug, version, variant) if text)


def pack_name(stem: str, paper: str) -> str:
    """Return the name of the pack for one paper."""
    return f"{stem}-{paper}.pdf"


def paper_of(name: str, stem: str) -> str | None:
    """Return the paper of a file called ``name``; None when it is no pack of this stem (a variant's stem is longer)."""
    paper = name.removeprefix(f"{stem}-").removesuffix(".pdf")
    return paper if paper and "-" not in paper and name == pack_name(stem, paper) else None


def record_name(stem: str, paper: str) -> str:
    """Return the name of the record of the pack for one paper."""
    return f"{stem}-{paper}.json"


def list_name(variant: str) -> str:
    """Return the name of the list of a variant's packs."""
    return f"packs-{variant}.json" if variant else "packs.json"


def cut_folder(variant: str) -> str:
    """Return the folder that holds a variant's cut files and nothing else."""
    return f"cut-files/{variant or STANDARD}"


def part_name(variant: str, letter: str, part: str) -> str:
    """Return the name of a part's cut file."""
    return f"{cut_folder(variant)}/part-{letter.lower()}-{part}.svg"


def sheet_name(variant: str, board: str, sheet: SheetSize, number: int) -> str:
    """Return the name of the cut file of a whole board sheet, numbered from 1."""
    size = f"{round(sheet.width, 1):g}x{round(sheet.height, 1):g}mm"
    return f"{cut_folder(variant)}/sheet-{board}-{size}-{number}.svg"


def yield_name(variant: str) -> str:
    """Return the name of the table of what the sheets give."""
    return f"{cut_folder(variant)}/cut-yield.csv"


def preview_folder(variant: str, paper: str) -> str:
    """Return the folder that holds the pictures of one pack's pages and nothing else."""
    return f"previews/{variant or STANDARD}-{paper}"


def preview_name(variant: str, paper: str, page: int) -> str:
    """Return the name of the picture of one page."""
    return f"{preview_folder(variant, paper)}/page-{page:02}.png"
