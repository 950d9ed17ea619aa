"""Room 3: checked values in, what they mean out.

Comes in: a ``Brief``, the name of a variant, sizes set on the command line. Goes out: a ``Design``: sizes in mm and
degrees, plans of parts, assemblies and steps; joins turned into edge treatments. Never: opens a file, knows paper.
"""

from publisher.design.given import variants
from publisher.design.letters import letter
from publisher.design.model import (
    Board,
    Design,
    DrawingPlan,
    EdgeRef,
    Fact,
    Join,
    Kind,
    NeedPlan,
    OpeningPlan,
    PanelPlace,
    PanelPlan,
    PartPlan,
    Quantity,
    Rest,
    SheetSize,
    Size,
    StackPlan,
    StackRow,
    SurfacePlan,
)
from publisher.design.model_combine import CombineStep, Family, Parameter
from publisher.design.model_edges import EdgeTreatment, LapSlot, Rabbet, SlotRow, TabRow
from publisher.design.model_fits import BracePlan, MeetPlan
from publisher.design.model_folds import FoldedPanel, FoldPlan
from publisher.design.model_splits import SplitPlan
from publisher.design.model_texts import Blank, MaterialPlan, PaperWish, PicturePlan, StepPlan, TextPlan
from publisher.design.rules import RULES
from publisher.design.sheets import sheet_size
from publisher.design.texts import amount, fill, text_findings
from publisher.design.units import INCH_MM
from publisher.design.wording import fixed, inches, say, say_length, trimmed
from publisher.design.work import work_out

__all__ = [
    "INCH_MM",
    "RULES",
    "Blank",
    "Board",
    "BracePlan",
    "CombineStep",
    "Design",
    "DrawingPlan",
    "EdgeRef",
    "EdgeTreatment",
    "Fact",
    "Family",
    "FoldPlan",
    "FoldedPanel",
    "Join",
    "Kind",
    "LapSlot",
    "MaterialPlan",
    "MeetPlan",
    "NeedPlan",
    "OpeningPlan",
    "PanelPlace",
    "PanelPlan",
    "PaperWish",
    "Parameter",
    "PartPlan",
    "PicturePlan",
    "Quantity",
    "Rabbet",
    "Rest",
    "SheetSize",
    "Size",
    "SlotRow",
    "SplitPlan",
    "StackPlan",
    "StackRow",
    "StepPlan",
    "SurfacePlan",
    "TabRow",
    "TextPlan",
    "amount",
    "fill",
    "fixed",
    "inches",
    "letter",
    "say",
    "say_length",
    "sheet_size",
    "text_findings",
    "trimmed",
    "variants",
    "work_out",
]
