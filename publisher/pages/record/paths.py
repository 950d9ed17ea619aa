"""Outlines in the record: each path as a start and the lines and arcs that follow it, named by their edge."""

from publisher.basics import Arc, Path
from publisher.geometry import Region
from publisher.pages.record.plain import Json, numbers, plain_number


def region_paths(region: Region) -> list[Json]:
    """Return the paths of a region, the outside first."""
    return [_path(path) for path in region.paths]


def _path(path: Path) -> Json:
    edges: list[Json] = []
    for edge in path.edges:
        said: dict[str, Json] = {"name": edge.name, "to": numbers(edge.end)}
        if isinstance(edge, Arc):
            said["centre"] = numbers(edge.centre)
            said["radius"] = plain_number(edge.radius)
            said["sweep"] = plain_number(edge.sweep)
        edges.append(said)
    return {"start": numbers(path.edges[0].start), "edges": edges}
