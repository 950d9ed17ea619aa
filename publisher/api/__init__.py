"""The public door for programs: one function for what each command does. All else in the package may change without notice.

Comes in: folders, bytes, and values that this door gave. Goes out: frozen records, in mm and degrees. What is wrong with the work
stands in the records as findings; a ``Refusal`` is raised when something cannot be used at all. Never: prints, ends the process,
writes a file but by ``new``, ``place``, ``release``, ``keep_spec`` and the two functions that keep layouts.

Importing it loads no room: each function loads those that it calls. The functions stand by subject in the modules beside this one;
whoever uses the door imports from here alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from types import ModuleType
from typing import TYPE_CHECKING, Any

from publisher.api.briefs import brief_of, designs, keep_spec, new, read, steps, upgrade, variants
from publisher.api.drawings import outline, picture
from publisher.api.packs import (
    build,
    build_many,
    contents,
    covers,
    discard_trials,
    fault_of,
    identify,
    is_placed,
    is_released,
    place,
    promised,
    prove,
    prove_files,
    rebuilt,
    release,
    settle,
)
from publisher.api.prints import measure, measure_board, pack_facts
from publisher.api.registry import fresh_schema, joints, openings, schema, shapes, surfaces, words
from publisher.api.sweeps import plot_sweep, vary
from publisher.api.works import (
    LAYOUTS,
    STAGES,
    compare,
    compose,
    keep_layouts,
    keep_verified,
    shop,
    show,
    show_json,
    with_pages,
    work,
    yield_table,
)

if TYPE_CHECKING:
    from publisher.batch import BuildOutcome, OwnFault
    from publisher.brief import STARTS, Brief, InputFile, Inputs
    from publisher.design import STANDARD, Design, Fact, JointInfo, Kind, NeedPlan, Size, say
    from publisher.geometry import DRAWING_BYTES, Look, ParameterInfo, Part, ShapeInfo
    from publisher.joints import Joined, limit_of, margin_of, said_limit, spare_words, spread_ends, takes_words
    from publisher.material import BoardNeeds, Shared, Stored, Yield, gain
    from publisher.pages import Pack, Page, PageCount
    from publisher.pipeline import Built, BuiltExtra, BuiltPack, ProvedFolder, ProvedPdf, Released, WordList, Worked
    from publisher.proof import Identity, Measured, Proof
    from publisher.release import Bundle, Left, Output, PlacedSet
    from publisher.ruler import (
        LONG_RULERS,
        TOOLS,
        UNITS,
        AllowedScale,
        BoardVerdict,
        PackFacts,
        Reading,
        Scale,
        Verdict,
        read_length,
        read_thickness,
        say_range,
    )  # fmt: skip
    from publisher.sweep import Jump, Missed, Saving, Sweep, SweepRow, Told, VariedNeed, VariedSheet
    from publisher.upgrade import Upgraded

__all__ = [
    "DRAWING_BYTES",
    "LAYOUTS",
    "LONG_RULERS",
    "STAGES",
    "STANDARD",
    "STARTS",
    "TOOLS",
    "UNITS",
    "AllowedScale",
    "BoardNeeds",
    "BoardVerdict",
    "Brief",
    "BuildOutcome",
    "Built",
    "BuiltExtra",
    "BuiltPack",
    "Bundle",
    "Design",
    "Fact",
    "Identity",
    "InputFile",
    "Inputs",
    "Joined",
    "JointInfo",
    "Jump",
    "Kind",
    "Left",
    "Look",
    "Measured",
    "Missed",
    "NeedPlan",
    "Output",
    "OwnFault",
    "Pack",
    "PackFacts",
    "Page",
    "PageCount",
    "ParameterInfo",
    "Part",
    "PlacedSet",
    "Proof",
    "ProvedFolder",
    "ProvedPdf",
    "Reading",
    "Released",
    "Saving",
    "Scale",
    "ShapeInfo",
    "Shared",
    "Size",
    "Stored",
    "Sweep",
    "SweepRow",
    "Told",
    "Upgraded",
    "VariedNeed",
    "VariedSheet",
    "Verdict",
    "WordList",
    "Worked",
    "Yield",
    "brief_of",
    "build",
    "build_many",
    "compare",
    "compose",
    "contents",
    "covers",
    "designs",
    "discard_trials",
    "fault_of",
    "fresh_schema",
    "gain",
    "identify",
    "is_placed",
    "is_released",
    "joints",
    "keep_layouts",
    "keep_spec",
    "keep_verified",
    "limit_of",
    "margin_of",
    "measure",
    "measure_board",
    "new",
    "openings",
    "outline",
    "pack_facts",
    "picture",
    "place",
    "plot_sweep",
    "promised",
    "prove",
    "prove_files",
    "read",
    "read_length",
    "read_thickness",
    "rebuilt",
    "release",
    "said_limit",
    "say",
    "say_range",
    "schema",
    "settle",
    "shapes",
    "shop",
    "show",
    "show_json",
    "spare_words",
    "spread_ends",
    "steps",
    "surfaces",
    "takes_words",
    "upgrade",
    "variants",
    "vary",
    "with_pages",
    "words",
    "work",
    "yield_table",
]


def _rooms() -> Iterator[ModuleType]:
    """Load the rooms one by one, those that need least first: ``measure`` needs no geometry, ``build`` neither sweeps nor upgrades."""
    from publisher import ruler

    yield ruler
    from publisher import brief

    yield brief
    from publisher import design

    yield design
    from publisher import geometry

    yield geometry
    from publisher import batch, joints, material, pages, pipeline, proof, release

    yield from (joints, material, pages, pipeline, batch, proof, release)
    from publisher import sweep, upgrade

    yield from (sweep, upgrade)


if not TYPE_CHECKING:

    def __getattr__(name: str) -> Any:
        """Give a type or a helper of a room when it is asked for; only then are the rooms loaded, up to the one that has it."""
        if name in __all__:
            for room in _rooms():
                if name in vars(room):
                    return vars(room)[name]
        raise AttributeError(f"the door has nothing called {name}")
