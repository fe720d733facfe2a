"""The cockpit opening and the footwell's clear section."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.cleats import inside_half_width
from fitcalc.checks.measured import measured, nearest_of, unmeasured
from fitcalc.checks.template import fully_apart
from fitcalc.documents.car_cockpit import Cockpit
from fitcalc.geometry.lines import height_at, profile_points
from fitcalc.geometry.side import point
from fitcalc.posture.cases import column
from fitcalc.posture.foot import floor_line
from fitcalc.posture.pads import pad_at
from fitcalc.units import Mm, Points

BEHIND_PEDALS = 100.0
"""How far behind the rearmost pedal face the section ends, mm (FSAE Rules 2026 T.1.2, FS Rules 2025 T4.2)."""
HAIR = 1e-6
"""The section is taken so near to both sides of every corner, mm, for a profile may step."""


def opening_figures(case: Case) -> list[Figure]:
    """Size of the opening, and of the way from it to the pedals."""
    cockpit = case.car.cockpit
    if cockpit is None:
        names = ("opening_length", "opening_width", "section_width", "section_height")
        return [unmeasured(f"cockpit.{name}", "cockpit") for name in names]
    along = column(cockpit.opening_rear) - column(cockpit.opening_front)
    way = _way(case, column(cockpit.opening_front))
    return [
        measured(case, "cockpit.opening_length", along, _length_ends(cockpit)),
        measured(case, "cockpit.opening_width", column(cockpit.opening_width), _width_ends(cockpit)),
        _width(case, way),
        _height(case, way),
    ]


def _length_ends(cockpit: Cockpit) -> tuple[Points, Points]:
    """Front and rear edge of the opening, drawn at the top of the body side."""
    top = column(cockpit.side_top)
    return point(column(cockpit.opening_front), 0.0, top), point(column(cockpit.opening_rear), 0.0, top)


def _width_ends(cockpit: Cockpit) -> tuple[Points, Points]:
    """Left and right edge of the opening, drawn half way along it."""
    x, half = (
        (column(cockpit.opening_front) + column(cockpit.opening_rear)) / 2,
        column(cockpit.opening_width) / 2,
    )
    return point(x, -half, column(cockpit.side_top)), point(x, half, column(cockpit.side_top))


def _way(case: Case, front: Mm) -> tuple[Mm, Mm]:
    """From where to where the section counts, x: from the opening to behind the pedals."""
    setup = fully_apart(case.car, case.setup)
    pads = [
        pad_at(pedal, getattr(setup, name), column(setup.box_travel), 0.0).centre[:, 0]
        for name, pedal in case.car.fitted_pedals().items()
    ]
    last = np.max(np.broadcast_arrays(*pads), axis=0) + BEHIND_PEDALS
    return np.minimum(front, last), np.maximum(front, last)


def _corners(way: tuple[Mm, Mm], *profiles: Points) -> Mm:
    """Where a section between straight lines may be least, x `(n, k)`: the ends of the way and each corner on it."""
    low, high = (end[:, None] for end in way)
    knots = np.concatenate([profile[:, 0] for profile in profiles])
    between = np.clip(np.concatenate([knots - HAIR, knots + HAIR])[None], low, high)
    return np.concatenate([*np.broadcast_arrays(low, high), between], axis=1)


def _width(case: Case, way: tuple[Mm, Mm]) -> Figure:
    widths = case.car.footwell.half_widths
    if widths is None:
        return unmeasured("cockpit.section_width", "footwell.half_widths")
    x = _corners(way, profile_points(widths))
    half = inside_half_width(x, widths)
    sides = (point(x, side * half, height_at(x, floor_line(case.car))) for side in (-1.0, 1.0))
    ends = tuple(nearest_of(each, half) for each in sides)
    return measured(case, "cockpit.section_width", 2.0 * half.min(axis=1), ends)


def _height(case: Case, way: tuple[Mm, Mm]) -> Figure:
    if case.car.footwell.roof is None:
        return unmeasured("cockpit.section_height", "footwell.roof")
    floor, scuttle = floor_line(case.car), profile_points(case.car.footwell.roof)
    x = _corners(way, floor, scuttle)
    low, high = height_at(x, floor), height_at(x, scuttle)
    ends = (nearest_of(point(x, 0.0, low), high - low), nearest_of(point(x, 0.0, high), high - low))
    return measured(case, "cockpit.section_height", (high - low).min(axis=1), ends)
