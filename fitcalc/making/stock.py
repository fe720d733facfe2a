"""Sizes that a metal dealer keeps, as sections."""

from dataclasses import dataclass
from functools import cache
from typing import Literal, TypeAlias

import numpy as np

from fitcalc.making.sections import Section
from fitcalc.making.shapes import equal_angle, flat_bar, rectangular_tube, round_bar, round_tube
from fitcalc.making.tables import Row, read_rows
from fitcalc.units import Mm

StockShape: TypeAlias = Literal["flat", "round bar", "round tube", "square tube", "angle"]

CORNER = 2.0
"""Outside corner radius over wall of cold-formed square tube up to 6 mm wall: EN 10219-2, from memory."""


class StockRow(Row):
    """Sizes of one shape: depth along the foot force, and wall or thickness, mm."""

    sizes: tuple[tuple[float, float], ...]


@dataclass(frozen=True, eq=False)
class Stock:
    """One size of one shape; its section has one case.

    Attributes:
        name: as one asks for it.
        section: a flat on edge, an angle with a leg along the foot force.
    """

    name: str
    section: Section


@cache
def stock_sizes(shape: StockShape) -> tuple[Stock, ...]:
    """The common sizes of one shape, in file order."""
    row = next(row for row in read_rows("stock_sizes.toml", StockRow) if row.id == shape)
    return tuple(
        Stock(stock_name(shape, *size), bar_section(shape, np.array(size[:1]), np.array(size[1:])))
        for size in row.sizes
    )


def bar_section(shape: StockShape, depth: Mm, wall: Mm) -> Section:
    """Section of a bar by its size along the foot force and its wall; a round bar needs no wall.

    A wall thicker than half the depth is taken as half: the tube is solid.
    """
    thin = np.minimum(wall, depth / 2.0)
    match shape:
        case "flat":
            return flat_bar(depth, wall)
        case "round bar":
            return round_bar(depth)
        case "round tube":
            return round_tube(depth, thin)
        case "square tube":
            return rectangular_tube(depth, depth, thin, CORNER * thin)
    return equal_angle(depth, thin)


def stock_name(shape: StockShape, depth: float, wall: float) -> str:
    """How the size is asked for, in mm."""
    sides = {"round bar": (depth,), "square tube": (depth, depth, wall), "angle": (depth, depth, wall)}
    return f"{shape} " + " x ".join(f"{side:g}" for side in sides.get(shape, (depth, wall)))
