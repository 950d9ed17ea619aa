"""The vocabulary of the house.

Comes in: nothing. Goes out: places, findings, rules and checks, poses, paths, the names of marks, and the promises that a
finished file must keep. Never: imports a room or a third-party library, opens a file, reads the clock, holds a unit.
"""

from publisher.basics.findings import (
    Check,
    Finding,
    Findings,
    Outcome,
    Place,
    Refusal,
    Rule,
    Severity,
    checked,
    errors,
    run_checks,
)
from publisher.basics.marks import Layer, LineKind, Purpose
from publisher.basics.path import (
    SAGITTA,
    SAME,
    Arc,
    Carry,
    Line,
    Path,
    PathEdge,
    angle,
    circle,
    closed_path,
    polar,
    polyline,
)
from publisher.basics.pose import Box, Point, Pose
from publisher.basics.promise import (
    AttachmentPromise,
    CodePromise,
    LengthPromise,
    MarkPromise,
    OutlinePromise,
    PagePromise,
    Promises,
    SeamPromise,
    TextPromise,
)

__all__ = [
    "SAGITTA",
    "SAME",
    "Arc",
    "AttachmentPromise",
    "Box",
    "Carry",
    "Check",
    "CodePromise",
    "Finding",
    "Findings",
    "Layer",
    "LengthPromise",
    "Line",
    "LineKind",
    "MarkPromise",
    "Outcome",
    "OutlinePromise",
    "PagePromise",
    "Path",
    "PathEdge",
    "Place",
    "Point",
    "Pose",
    "Promises",
    "Purpose",
    "Refusal",
    "Rule",
    "SeamPromise",
    "Severity",
    "TextPromise",
    "angle",
    "checked",
    "circle",
    "closed_path",
    "errors",
    "polar",
    "polyline",
    "run_checks",
]
