"""What the files of a design are called, all in one place; paths are below the design's own folder.

Sizes as written have no variant in the name of a pack, and the folder ``standard`` where a variant's name would stand.
"""

import json
import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import replace
from hashlib import sha256
from pathlib import PurePosixPath

from publisher.basics import FileKind, Finding, Place, Refusal, Rule, Severity, record
from publisher.basics.wording import trimmed
from publisher.brief import Brief
from publisher.design import STANDARD, USUAL_PAPERS, Design, SheetSize, tried_sizes, variants
from publisher.geometry import Part
from publisher.material import BoardNeeds
from publisher.pages import Pack, shop_picture_names

NAME_TAKEN = Rule(
    "release/name-taken",
    "Every file has a name of its own, on every system",
    "Many disks take big and Big for one name, and some systems keep names such as con for devices: a file would silently take the "
    "place of another, or could not be unpacked by the buyer.",
    Severity.ERROR,
)
LIST = "packs.json"
"""The list of the packs of a set, and of all files that were made with them."""
EXTRAS: dict[FileKind, str] = {"test_page": "test-page", "phone": "phone"}
"""What the names of files say that are given beside the packs."""

SHOP_FILE = "pictures.pdf"
LONGEST_TRIAL, LONGEST_BOARDS = 60, 40  # letters of a name that tell what is tried, and for which boards
HASH_DIGITS = 6  # of them, of a hash of what has no room
# what file browsers leave in any folder that they show (macOS, Windows, KDE); from memory
_DROPPINGS = {".ds_store", "thumbs.db", "ehthumbs.db", "desktop.ini", ".directory", ".localized"}
# names that Windows keeps for devices, with any ending (its handbook, “Naming files, paths, and namespaces”)
_DEVICES = {"con", "prn", "aux", "nul", *(f"{device}{n}" for device in ("com", "lpt") for n in "0123456789¹²³")}


def pack_stem(design: Design, sets: Iterable[tuple[str, str]] = ()) -> str:
    """Return ``<slug>-<version>[-<variant>][-<trial>]-<board>``, with which the names of a variant's packs begin."""
    named = (design.slug, design.version, design.variant, trial_name([design], sets), board_name(design))
    return "-".join(text for text in named if text)


def board_name(design: Design) -> str:
    """Return the boards that a variant is drawn for: each with the name it is sold by, where that is another than its measure, and its
    thickness: ``foam-5mm``, ``foam-3-16in-4.76mm``; at most 40 letters, of more the last six a hash of all. '' without parts."""
    used = {plan.board for plan in design.parts}
    said = []
    for board in (board for board in design.boards if board.id in used):
        measure = f"{trimmed(board.thickness, 2)}mm"
        shop = (board.shop.name if board.shop is not None else board.sold_as).replace(" ", "")
        said.append("-".join((board.id, *((shop,) if shop not in ("", measure) else ()), measure)))
    whole = _plain("-".join(said))
    return whole if len(whole) <= LONGEST_BOARDS else _short(whole, LONGEST_BOARDS, sha256(whole.encode()).hexdigest())


def _plain(text: str) -> str:
    """Return a text in small letters, digits, points and hyphens."""
    return re.sub(r"[^a-z0-9.]+", "-", text.casefold()).strip("-.")


def _short(text: str, most: int, digest: str) -> str:
    """Return a plain text, cut off so that it has at most so many letters, with the first digits of a digest of all that it stands for."""
    return f"{text[: most - HASH_DIGITS - 1].strip('-.')}-{digest[:HASH_DIGITS]}"


def trial_name(designs: Iterable[Design], sets: Iterable[tuple[str, str]]) -> str:
    """Return the name of a trial of these variants: the sizes that were set, by name, with their values as evaluated, at most 60
    letters, the last six of them a hash of all that; '' when nothing was set.

    A value that each variant works out differently counts for each: the name says those of the first.
    """
    names = [name for name, _ in sets]
    tried = {
        design.variant: [(size.name, size.value) for size in tried_sizes(design.sizes, names)] for design in designs
    }
    first = next(iter(tried.values()), [])
    if not first:
        return ""
    said = _plain("-".join(f"{name}-{value:.6g}" for name, value in first))
    one = all(values == first for values in tried.values())
    return _short(said, LONGEST_TRIAL, sha256(json.dumps(first if one else sorted(tried.items())).encode()).hexdigest())


def pack_name(stem: str, paper: str) -> str:
    """Return the name of the pack for one paper."""
    return f"{stem}-{paper}.pdf"


def paper_of(name: str, stem: str, own: Iterable[str] = ()) -> str | None:
    """Return the paper of a file called ``name``; None when it is no pack of this stem (a variant's stem is longer).

    ``own``: names of the design's own papers, which alone may have hyphens in them.
    """
    paper = name.removeprefix(f"{stem}-").removesuffix(".pdf")
    known = paper and ("-" not in paper or paper in own)
    return paper if known and name == pack_name(stem, paper) else None


def extra_name(stem: str, purpose: FileKind, paper: str) -> str:
    """Return the name of a file that is given beside the pack for one paper. Raises KeyError for a pack."""
    return pack_name(f"{stem}-{EXTRAS[purpose]}", paper)


def extra_paper_of(name: str, stem: str, purpose: FileKind, own: Iterable[str] = ()) -> str | None:
    """Return the paper of such a file called ``name``, as ``paper_of`` does of a pack."""
    return paper_of(name, f"{stem}-{EXTRAS[purpose]}", own)


def given_name(pack: Pack, stem: str) -> str:
    """Return the path of a file that is given beside the packs."""
    if pack.purpose == "shop":
        return f"{shop_folder(pack.variant, pack.paper.name)}/{SHOP_FILE}"
    return extra_name(stem, pack.purpose, pack.paper.name)


def shop_folder(variant: str, paper: str) -> str:
    """Return the folder that holds the pictures for a shop of one pack and nothing else."""
    return f"shop/{variant or STANDARD}-{paper}"


def shop_pictures(pack: Pack) -> tuple[str, ...]:
    """Return the names of the pictures for a shop, in the order of their pages; () where there are none."""
    if pack.purpose != "shop":
        return ()
    return tuple(
        f"{shop_folder(pack.variant, pack.paper.name)}/{name}.png" for name in shop_picture_names(len(pack.pages))
    )


def shop_paper_of(name: str, variant: str, own: Iterable[str] = ()) -> str | None:
    """Return the paper of a file of pages for a shop called ``name``; None when it is none of this variant's."""
    start = f"shop/{variant or STANDARD}-"
    paper = name.removeprefix(start).removesuffix(f"/{SHOP_FILE}")
    known = paper and ("-" not in paper or paper in own)
    return paper if known and name == f"{start}{paper}/{SHOP_FILE}" else None


def record_name(stem: str, paper: str) -> str:
    """Return the name of the record of the pack for one paper."""
    return f"{stem}-{paper}.json"


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


@record
class Claim:
    """A name that a file would have (path with forward slashes; a folder's ends with one), whose it is, and where that is written."""

    name: str
    who: str
    place: Place | None = None


def name_findings(brief: Brief, design: Design, pieces: tuple[Part, ...], needs: BoardNeeds) -> tuple[Finding, ...]:
    """Return what is wrong with the names of all files that a design gives: every variant on every paper, this variant's cut files."""
    places = {entry.key: entry.place for entry in brief.fields.table("variants").entries}
    papers: list[tuple[str, Place | None]] = [(wish.name.casefold(), wish.place) for wish in design.papers]
    papers = papers or [(name, None) for name in USUAL_PAPERS]
    papers += [(name, None) for name in brief.inputs.papers if name not in dict(papers)]
    claims = [Claim(brief.slug, f"the design “{brief.slug}”", brief.fields.place)]
    for variant in ("", *variants(brief)):
        who, place = _who(variant), places.get(variant)
        claims.append(Claim(f"{cut_folder(variant)}/", f"the cut files of {who}", place))
        stem = pack_stem(replace(design, variant=variant))
        for number, (paper, written) in enumerate(papers):
            once = f" ({number + 1})" if paper in [name for name, _ in papers[:number]] else ""
            owner = f"the pack of {who} for the paper “{paper}”{once}"
            names = [pack_name(stem, paper), record_name(stem, paper)]
            names += (extra_name(stem, purpose, paper) for purpose in EXTRAS)
            for name in (*names, f"{preview_folder(variant, paper)}/", f"{shop_folder(variant, paper)}/"):
                claims.append(Claim(name, owner, place or written))
    claims += _cut_claims(brief, design, pieces, needs)
    return clashes(claims)


def _who(variant: str) -> str:
    return f"the variant “{variant}”" if variant else "the sizes as written"


def _cut_claims(brief: Brief, design: Design, pieces: tuple[Part, ...], needs: BoardNeeds) -> Iterator[Claim]:
    variant, places = design.variant, {plan.id: plan.place for plan in design.parts}
    boards = {entry.key: entry.place for entry in brief.fields.table("boards").entries}
    for piece in pieces:
        yield Claim(part_name(variant, piece.letter, piece.id), f"the part “{piece.id}”", places.get(piece.id))
    for number, need in enumerate(needs.yields, 1):
        owner = f"sheet size {number} ({need.sheet.label}) of the board “{need.board}”"
        yield Claim(sheet_name(variant, need.board, need.sheet, 1), owner, boards.get(need.board))


def clashes(claims: Iterable[Claim]) -> tuple[Finding, ...]:
    """Return a finding for each two owners whose files have names that some disk takes for one, and for names of devices."""
    taken: dict[str, list[Claim]] = defaultdict(list)
    found: dict[object, Finding] = {}
    for claim in claims:
        for part in claim.name.split("/"):
            if part.split(".")[0].rstrip().casefold() in _DEVICES:
                found.setdefault((claim.who, part), _impossible(claim, part, "keeps for a device"))
            elif part != part.rstrip(". "):
                found.setdefault((claim.who, part), _impossible(claim, part, "cuts short"))
        name = claim.name.casefold()
        for other in taken[name]:
            if other.who != claim.who:
                found.setdefault((other.who, claim.who), _clash(other, claim))
        taken[name].append(claim)
    for claim in (claim for owners in taken.values() for claim in owners):
        for above in PurePosixPath(claim.name.casefold()).parents:
            for other in taken.get(above.as_posix(), ()):
                found.setdefault((other.who, claim.who), _clash(other, claim))
    return tuple(found.values())


def inside(name: str) -> bool:
    """Say whether a path with forward slashes stays in the folder that it is below."""
    path = PurePosixPath(name)
    return bool(path.parts) and not path.is_absolute() and ".." not in path.parts and not set("\\:\0") & set(name)


def is_dropping(name: str) -> bool:
    """Say whether file browsers left this file, which nobody meant to be there."""
    return name.casefold() in _DROPPINGS or name.startswith("._")


def check_names(names: Iterable[str]) -> None:
    """Raise Refusal when files cannot have these names together; ValueError when one leads out of its folder."""
    listed = tuple(names)
    for name in listed:
        if not inside(name):
            raise ValueError(f"{name} leads out of its folder")
    found = clashes(Claim(name, f"“{name}”") for name in listed)
    if found:
        raise Refusal(*found)


def _clash(one: Claim, other: Claim) -> Finding:
    if one.name == other.name:
        called = f"would both be called “{one.name}”"
    else:
        called = f"would be called “{one.name}” and “{other.name}”, which is one name on many disks"
    return NAME_TAKEN.found(
        f"{one.who} and {other.who} {called}",
        subject=other.name,
        hint="give one of them another name; small and capital letters count as the same",
        place=other.place or one.place,
    )


def _impossible(claim: Claim, part: str, what: str) -> Finding:
    return NAME_TAKEN.found(
        f"{claim.who} would have the name “{part}”, which Windows {what}",
        subject=part,
        hint="give it another name",
        place=claim.place,
    )
