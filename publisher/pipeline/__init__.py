"""What knows all rooms: it calls them in order.

Comes in: a brief. Goes out: what each room made of it, with all findings. Never: computes a size or draws a line of its own.
"""

from publisher.pipeline.building import build, compose_packs, release, with_pages
from publisher.pipeline.expecting import promised_by, rebuilt_by
from publisher.pipeline.family import compare_family, shop
from publisher.pipeline.judging import prove_files
from publisher.pipeline.model import Built, BuiltExtra, BuiltPack, Made, ProvedFolder, ProvedPdf, Released, Worked
from publisher.pipeline.proposing import proposed_steps_of
from publisher.pipeline.trying import count_papers, join_made, make_at, try_out, try_whole
from publisher.pipeline.vocabulary import WordList, fresh_schema, word_lists
from publisher.pipeline.working import work

ROOMS = (
    "basics", "brief", "design", "geometry", "joints", "material", "pages", "press", "proof", "release", "ruler",
)  # fmt: skip

__all__ = [
    "ROOMS",
    "Built",
    "BuiltExtra",
    "BuiltPack",
    "Made",
    "ProvedFolder",
    "ProvedPdf",
    "Released",
    "WordList",
    "Worked",
    "build",
    "compare_family",
    "compose_packs",
    "count_papers",
    "fresh_schema",
    "join_made",
    "make_at",
    "promised_by",
    "proposed_steps_of",
    "prove_files",
    "rebuilt_by",
    "release",
    "shop",
    "try_out",
    "try_whole",
    "with_pages",
    "word_lists",
    "work",
]
