"""What of a part's marks is left on its template."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import shapely

from publisher.geometry.model import Mark
from publisher.geometry.paths import line_string, lines_left


def shortened(marks: Sequence[Mark], template: shapely.Polygon) -> Iterator[Mark]:
    """Yield the marks, open lines shortened to what lies on the template: nothing is drawn beyond a part."""
    shapely.prepare(template)
    lines = [line_string(mark.path) for mark in marks]
    for mark, line, whole in zip(marks, lines, shapely.covers(template, lines), strict=True):
        if whole or mark.path.closed or line.geom_type == "Point":
            yield mark
        else:
            yield from left_of(mark, line, template)


def left_of(mark: Mark, line: shapely.LineString, area: shapely.Polygon) -> Iterator[Mark]:
    """Yield what of a mark and its line lies in an area; the words stay with the first piece."""
    for number, path in enumerate(lines_left(line, area)):
        yield replace(mark, path=path, text="" if number else mark.text)
