"""Load levels for a seat and its mounts, each with the rule it comes from."""

from functools import cache
from typing import Literal

import numpy as np

from fitcalc.making.tables import Row, read_rows
from fitcalc.units import GRAVITY, Kg, Points


class SeatLevel(Row):
    """One load level: multiples of weight, or a force at each seat-to-car point.

    Attributes:
        kind: "g" or "point".
        forward: multiple of weight; 0 where the rule is silent, as are the other directions.
        force: N at each point, in any direction.
        carries: whose mass the multiples apply to.
    """

    kind: Literal["g", "point"]
    forward: float = 0.0
    rearward: float = 0.0
    sideways: float = 0.0
    upward: float = 0.0
    downward: float = 0.0
    force: float = 0.0
    carries: Literal["seat", "seat and driver"] = "seat and driver"


class FixingRule(Row):
    """Least count, bolt or plate of a seat fixing."""

    quantity: str
    low: float
    unit: str


@cache
def seat_levels() -> tuple[SeatLevel, ...]:
    """Every load level that the program knows."""
    return read_rows("seat_loads.toml", SeatLevel)


def road_seat_level() -> SeatLevel:
    """The published level for a seat and its anchorage that is always checked."""
    return next(level for level in seat_levels() if level.id == "road seat anchorage")


@cache
def fixing_rules() -> tuple[FixingRule, ...]:
    """What the rules ask of a seat fixing, whatever the load."""
    return read_rows("seat_fixing.toml", FixingRule)


def directions(level: SeatLevel) -> tuple[tuple[str, tuple[float, float, float]], ...]:
    """Names and multiples of weight `(x, y, z)` of a level's directions, silent ones left out."""
    every = (
        ("forward", (-level.forward, 0.0, 0.0)),
        ("rearward", (level.rearward, 0.0, 0.0)),
        ("to the right", (0.0, level.sideways, 0.0)),
        ("to the left", (0.0, -level.sideways, 0.0)),
        ("upward", (0.0, 0.0, level.upward)),
        ("downward", (0.0, 0.0, -level.downward)),
    )
    return tuple((name, factor) for name, factor in every if any(factor))


def inertia_force(mass: Kg, factor: tuple[float, float, float]) -> Points:
    """Force of a mass at a multiple of weight, `(n, 3)`, in the car's frame; its own weight not included."""
    return mass[:, None] * GRAVITY * np.asarray(factor)
