"""Room about a shoe at each part of its pedal's travel, for a plot: the same outlines as the checks of the least room."""

from collections.abc import Mapping

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.cleats import inside_half_width
from fitcalc.checks.shoe_sweep import (
    STATIONS,
    ShoeSweep,
    least_to_bulkhead,
    least_to_surface,
    least_to_thing,
    shoe_sweep,
)
from fitcalc.checks.surroundings import obstacles, roof
from fitcalc.posture.cases import column
from fitcalc.units import Floats, Mm, Points

PARTS = np.linspace(0.0, 1.0, 41)
"""Parts of the travel."""


def rooms_by_travel(case: Case, pedal: str) -> Mapping[str, Mm]:
    """By id of the check: the room at each of `PARTS`, for the first case; the floor is left out, for the shoe is on it.

    Between the stations of the check the corners move straight, as they do there; so the least of a line is the
    check's own figure, but for what lies between two of the parts.
    """
    still = _still(shoe_sweep(case, pedal))
    ceiling, face = roof(case.car), case.car.footwell.bulkhead
    found = {} if ceiling is None else {ceiling.key: least_to_surface(still, ceiling).room}
    if face is not None:
        found["bulkhead"] = least_to_bulkhead(still, column(face)).room
    found |= {thing.key: least_to_thing(still, thing).room for thing in obstacles(case.car)}
    widths = case.car.footwell.half_widths
    if widths is not None:
        outer = np.maximum(np.abs(still.low), np.abs(still.high))
        found["wall"] = (inside_half_width(still.shoes[:, 0, :, 0], widths) - outer[:, None]).min(axis=1)
    return {f"cleat.{pedal}.{key}": np.broadcast_to(room, PARTS.shape) for key, room in found.items()}


def _still(sweep: ShoeSweep) -> ShoeSweep:
    """The first case's shoe standing still at each part of the travel, the parts as cases."""
    return ShoeSweep(
        shoes=_at_parts(sweep.shoes),
        pads=_at_parts(sweep.pads),
        low=np.repeat(sweep.low[:1], len(PARTS)),
        high=np.repeat(sweep.high[:1], len(PARTS)),
        pad_low=np.repeat(sweep.pad_low[:1], len(PARTS)),
        pad_high=np.repeat(sweep.pad_high[:1], len(PARTS)),
    )


def _at_parts(corners: Points) -> Floats:
    """Corners `(n, s, k, 3)` of the first case at each part, twice: `(parts, 2, k, 3)`."""
    flat = corners[0].reshape(len(STATIONS), -1)
    moved = np.stack([np.interp(PARTS, STATIONS, values) for values in flat.T], axis=1)
    placed = moved.reshape(len(PARTS), *corners.shape[2:])
    return np.stack([placed, placed], axis=1)
