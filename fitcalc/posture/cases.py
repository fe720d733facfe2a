"""Documents as cases: any number in a car or a setup may be an array over cases.

`spread` puts arrays in place of numbers without validation, so that one call of the same code evaluates one car or a
million. The points of a profile (shell, floor, roof, walls) are shared by all cases. `xyz` turns a document's point
into points `(n, 3)`.
"""

from collections.abc import Mapping
from types import NoneType
from typing import Any, TypeVar

import numpy as np
from pydantic import BaseModel

from fitcalc.documents.fields import Point, SideMark
from fitcalc.geometry.side import point
from fitcalc.units import Floats, Points

Model = TypeVar("Model", bound=BaseModel)
SINGLE = (float, str, int, NoneType)
"""What in a document holds nothing else."""


def spread(document: Model, values: Mapping[str, Floats]) -> Model:
    """The document with arrays over cases at the given paths, as `{"seat.junction.x": array}`."""
    for path, value in values.items():
        document = _placed(document, path.split("."), value)
    return document


def xyz(mark: Point | SideMark) -> Points:
    """A document's point, `(n, 3)`; a side-view mark lies on the centre plane."""
    y = mark.y if isinstance(mark, Point) else 0.0
    return point(column(mark.x), column(y), column(mark.z))


def column(value: Any) -> Floats:
    """A document's number as an array over cases, `(n,)`."""
    number = np.asarray(value, dtype=float)
    return number if number.ndim else number[None]


def cases_in(thing: Any) -> int:
    """How many cases a document, or a body's links, are of: the length of any array among their numbers, or 1."""
    if isinstance(thing, np.ndarray):
        return len(thing) if thing.ndim else 1
    most = 1
    for part in thing if isinstance(thing, tuple) else vars(thing).values():
        if not isinstance(part, SINGLE):
            most = max(most, cases_in(part))
    return most


def _placed(node: Any, path: list[str], value: Floats) -> Any:
    if not path:
        return value
    step, rest = path[0], path[1:]
    if isinstance(node, tuple):
        index = int(step)
        return (*node[:index], _placed(node[index], rest, value), *node[index + 1 :])
    return node.model_copy(update={step: _placed(getattr(node, step), rest, value)})
