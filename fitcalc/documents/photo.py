"""A photo of the car that lies under the side view: which file, and how it is squared."""

from typing import Annotated, Self

from pydantic import Field, model_validator

from fitcalc.documents.fields import FILE_NAME, LONGITUDINAL, VERTICAL, Document, clash, mm, part, quantity

LARGEST_PX = 30_000
"""Most pixels along one side of a photo."""


class Spot(Document):
    """A spot on a photo, from its upper left corner."""

    right: float = quantity("right", "Pixels from the left edge.", "px", (-LARGEST_PX, LARGEST_PX))
    down: float = quantity("down", "Pixels from the upper edge.", "px", (-LARGEST_PX, LARGEST_PX))


class Place(Document):
    """A place in side view that a photo is laid on; nothing is calculated from it."""

    x: float = mm("x", "Rearward of the front-axle line.", LONGITUDINAL)
    z: float = mm("z", "Above the plane that the car was levelled to.", VERTICAL)


class Photo(Document):
    """One photo, taken square to the car from its left, with two known points and a level line on it."""

    path: Annotated[str, Field(max_length=200, pattern=FILE_NAME)] = part(
        "file", "Name of a picture that lies beside the car's file."
    )
    first: Spot = part("first known point", "Where it is on the photo.")
    second: Spot = part("second known point", "Where it is on the photo.")
    distance: float = mm("distance", "Between the two known points, taped on the car.", (50, 6000))
    level_start: Spot = part("level line, start", "On something that is level in the car.")
    level_end: Spot = part("level line, end", "On the same level line.")
    at: Place = part("place", "Where the first known point is in the car.")
    opacity: float = quantity("opacity", "How much of the photo is seen.", "%", (0, 100), 60.0)

    @model_validator(mode="after")
    def _spans_something(self) -> Self:
        for start, end in (("first", "second"), ("level_start", "level_end")):
            a, b = getattr(self, start), getattr(self, end)
            if abs(a.right - b.right) + abs(a.down - b.down) < 1.0:
                raise clash(f"{end}.right", b.right, f"must be a pixel or more away from {start}")
        return self
