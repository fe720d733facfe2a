"""How a measured field is declared: bounds, unit, label and how to measure it, once, for every reader."""

from collections.abc import Callable
from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field
from pydantic_core import PydanticCustomError

FILE_NAME = r"^[^/\\:\x00-\x1f]*[^/\\:.\s\x00-\x1f]$"
"""A bare name: no folder, no drive, no dot at its end, so that a document can name no file elsewhere."""


class Document(BaseModel):
    """Base of everything the user can write down: immutable, no unknown keys, no NaN, no infinity."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", allow_inf_nan=False, str_strip_whitespace=True, defer_build=True
    )


def quantity(title: str, how: str, unit: str, span: tuple[float, float], default: Any = ...) -> Any:
    """A number with its unit, its allowed span and a plain description of how to measure it."""
    low, high = span
    return Field(
        default, ge=low, le=high, title=title, description=how, strict=True, json_schema_extra={"unit": unit}
    )


def mm(title: str, how: str, span: tuple[float, float], default: Any = ...) -> Any:
    """A length or coordinate in mm."""
    return quantity(title, how, "mm", span, default)


def deg(title: str, how: str, span: tuple[float, float], default: Any = ...) -> Any:
    """An angle in degrees; `how` states its sign."""
    return quantity(title, how, "deg", span, default)


def kg(title: str, how: str, span: tuple[float, float], default: Any = ...) -> Any:
    """A mass or axle load in kg."""
    return quantity(title, how, "kg", span, default)


def part(title: str, how: str, default: Any = ...) -> Any:
    """A field that is no single number: a choice, a text, a point, a line or a section."""
    return Field(default, title=title, description=how)


def clash(field: str, value: float | str, allowed: str, hint: str = "") -> PydanticCustomError:
    """The refusal of a value that contradicts another one; raised by a model's validator.

    Args:
        field: path of the field from the model that raises.
        value: what was given.
        allowed: what would agree with the rest of the file.
        hint: how to mend it.
    """
    told: dict[str, Any] = {"field": field, "value": value, "allowed": allowed, "hint": hint}
    return PydanticCustomError("clash", "{field} is {value}: {allowed}", told)


LONGITUDINAL = (-1500, 4500)
LATERAL = (-900, 900)
VERTICAL = (-500, 1800)
"""The space that a single-seater fills, mm (design inference)."""


def whole(title: str, how: str, kind: Callable[[], Any]) -> Any:
    """A section that may be left out and then has its own defaults."""
    return Field(default_factory=kind, title=title, description=how)


LongitudinalMm = Annotated[float, mm("x", "Rearward.", LONGITUDINAL)]
VerticalMm = Annotated[float, mm("z", "Upward.", VERTICAL)]
SidePoint = tuple[LongitudinalMm, VerticalMm]
Profile = Annotated[tuple[SidePoint, ...], Field(min_length=2, max_length=10_000)]
"""A line in side view: at least two `[x, z]` pairs in mm, in order along the line."""


class Point(Document):
    """A point in the car's frame."""

    x: float = mm("x", "Rearward of the front-axle line; ahead of it is negative.", LONGITUDINAL)
    y: float = mm("y", "To the driver's right of the car's centre plane; left is negative.", LATERAL)
    z: float = mm("z", "Above the plane that the car was levelled to.", VERTICAL)
    tolerance: float = mm("tolerance", "What the tape can promise here, plus or minus.", (0, 100), 3.0)
    note: str = part("note", "Anything worth remembering about this point.", "")


class SideMark(Document):
    """A point in side view, on or mirrored about the centre plane."""

    x: float = mm("x", "Rearward of the front-axle line; ahead of it is negative.", LONGITUDINAL)
    z: float = mm("z", "Above the plane that the car was levelled to.", VERTICAL)
    tolerance: float = mm("tolerance", "What the tape can promise here, plus or minus.", (0, 100), 3.0)
    note: str = part("note", "Anything worth remembering about this point.", "")
