"""What the room hands on, by subject. Millimetres and degrees; frozen values, no work is done here."""

from publisher.design.records.combinations import CombineStep, Family, Parameter
from publisher.design.records.edges import EdgeTreatment, JointLine, LapSlot, Rabbet, SlotRow, TabRow
from publisher.design.records.faces import Face, FaceSeat
from publisher.design.records.folds import FoldedPanel, FoldPlan
from publisher.design.records.limits import LEAST_PAPER_MM, LEAST_ROOM_MM, LONGEST_MM
from publisher.design.records.meetings import BracePlan, FitPlan, MeetPlan
from publisher.design.records.plans import (
    Board,
    Design,
    DrawingPlan,
    EdgeRef,
    Fact,
    Join,
    Joint,
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
from publisher.design.records.seams import SplitPlan
from publisher.design.records.texts import Blank, MaterialPlan, PaperWish, PicturePlan, StepPlan, TextPlan
from publisher.design.records.wholes import Thing, WholePlan

__all__ = [
    "LEAST_PAPER_MM",
    "LEAST_ROOM_MM",
    "LONGEST_MM",
    "Blank",
    "Board",
    "BracePlan",
    "CombineStep",
    "Design",
    "DrawingPlan",
    "EdgeRef",
    "EdgeTreatment",
    "Face",
    "FaceSeat",
    "Fact",
    "Family",
    "FitPlan",
    "FoldPlan",
    "FoldedPanel",
    "Join",
    "Joint",
    "JointLine",
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
    "Thing",
    "WholePlan",
]
