"""What the room hands on, by subject. Millimetres and degrees; frozen values, no work is done here."""

from publisher.design.records.adds import BRACES, AddPlan, Buildable, layer_name
from publisher.design.records.combinations import CombineStep, Family, Parameter
from publisher.design.records.edges import EdgeTreatment, EndSwap, JointLine, LapSlot, Rabbet, SlotRow, TabRow
from publisher.design.records.faces import FaceSeat, WhichFace
from publisher.design.records.folds import FoldedPanel, FoldPlan
from publisher.design.records.limits import LEAST_PAPER_MM, LEAST_ROOM_MM, LONGEST_MM, USUAL_PAPERS
from publisher.design.records.meetings import BracePlan, FitPlan, MeetPlan
from publisher.design.records.plans import (
    Board,
    Design,
    DrawingPlan,
    EdgeRef,
    Fact,
    Figure,
    Join,
    Joint,
    Kind,
    Lining,
    NeedPlan,
    OpeningPlan,
    PanelPlace,
    PanelPlan,
    PartPlan,
    Printed,
    Quantity,
    Rest,
    SheetSize,
    ShopBoard,
    Size,
    StackPlan,
    StackRow,
    SurfacePlan,
)
from publisher.design.records.seams import SplitPlan
from publisher.design.records.texts import Blank, MaterialPlan, PaperWish, PicturePlan, StepPlan, TextPlan
from publisher.design.records.wholes import ThingPlan, WholePlan
