"""What a spec may say: shapes, openings, surfaces, joints, words, and its schema."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from publisher.design import JointInfo
    from publisher.geometry import ShapeInfo
    from publisher.pipeline import WordList


def shapes() -> tuple[ShapeInfo, ...]:
    """Return the shapes that a part may have, with their parameters and named edges."""
    from publisher.geometry import shape_infos

    return shape_infos()


def openings() -> tuple[ShapeInfo, ...]:
    """Return the openings that a part may have."""
    from publisher.geometry import opening_infos

    return opening_infos()


def surfaces() -> tuple[ShapeInfo, ...]:
    """Return the patterns that may be drawn on a part."""
    from publisher.geometry import surface_infos

    return surface_infos()


def joints() -> tuple[JointInfo, ...]:
    """Return the ways in which edges of panels meet."""
    from publisher.design import joint_infos

    return joint_infos()


def words() -> tuple[WordList, ...]:
    """Return every word that has a meaning in a spec, by kind: functions, tools, stages, papers and so on."""
    from publisher.pipeline import word_lists

    return word_lists()


def schema() -> str:
    """Return the JSON Schema (2020-12) of spec.yaml."""
    from publisher.brief import schema_text

    return schema_text()


def fresh_schema() -> str:
    """Return the schema made anew from all that is registered, for those who change the package."""
    from publisher import pipeline

    return pipeline.fresh_schema()
