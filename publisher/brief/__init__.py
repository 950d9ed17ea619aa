"""Room 2: a designer's folder in, checked values out.

Comes in: a folder with ``spec.yaml``. Goes out: a ``Brief``: values with file, line and column, the bytes of every file
that the spec names, and findings. Never: imports geometry or paper, lets a later room open a designer's file, invents a
default that changes a size.
"""

from publisher.brief.model import Brief, Entry, FieldKind, Node, Row, SpecFile, Table, Value

__all__ = ["Brief", "Entry", "FieldKind", "Node", "Row", "SpecFile", "Table", "Value"]
