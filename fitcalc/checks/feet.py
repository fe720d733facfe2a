"""Feet and pads against the axle line and the front bulkhead, and room for a foot at rest."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.cleats import inside_half_width
from fitcalc.checks.measured import measured, nearest_of, unmeasured
from fitcalc.checks.shoe_sweep import shoe_outline
from fitcalc.posture.cases import column
from fitcalc.posture.limbs import Leg
from fitcalc.posture.pads import pad_edges
from fitcalc.units import Mm, Points


def feet_figures(case: Case) -> list[Figure]:
    """Soles, shoes and pads toward the front of the car; each is foremost at an end of the travel."""
    return [_axle_line(case), *_bulkhead(case), _rest_room(case)]


def _axle_line(case: Case) -> Figure:
    foremost = _foremost([end for leg in _legs(case) for end in (leg.foot.toe, leg.foot.ball)])
    return measured(case, "feet.axle_line", foremost[:, 0], (foremost,))


def _bulkhead(case: Case) -> list[Figure]:
    names = list(case.sitting.pedals)
    if case.car.footwell.bulkhead is None:
        pads = [
            unmeasured(f"pedal.{name}.bulkhead", "footwell.bulkhead", "pedal.bulkhead", name)
            for name in names
        ]
        return [unmeasured("feet.bulkhead", "footwell.bulkhead"), *pads]
    face = column(case.car.footwell.bulkhead)
    shoe = _foremost_shoe(case)
    figures = [measured(case, "feet.bulkhead", shoe[:, 0] - face, (shoe,))]
    for name in names:
        edge = _foremost_pad(case, name)
        room = edge[:, 0] - face
        figures.append(measured(case, f"pedal.{name}.bulkhead", room, (edge,), "pedal.bulkhead", name))
    return figures


def _legs(case: Case) -> list[Leg]:
    return [leg for worked in case.sitting.pedals.values() for leg in (worked.rest, worked.full)]


def _foremost_shoe(case: Case) -> Points:
    outlines = [shoe_outline(leg.foot, case.links) for leg in _legs(case)]
    return _foremost([outline[:, at] for outline in outlines for at in range(outline.shape[1])])


def _foremost_pad(case: Case, name: str) -> Points:
    pedal, worked = case.car.fitted_pedals()[name], case.sitting.pedals[name]
    return _foremost([edge for pad in (worked.rest_pad, worked.full_pad) for edge in pad_edges(pad, pedal)])


def _foremost(places: list[Points]) -> Points:
    every = np.stack(np.broadcast_arrays(*places), axis=1)
    return nearest_of(every, every[..., 0])


def _rest_room(case: Case) -> Figure:
    """Left of the clutch, or of the leftmost pedal there is."""
    name, pedal = next(iter(case.car.fitted_pedals().items()))
    if case.car.footwell.half_widths is None:
        return unmeasured("pedal.rest_room", "footwell.half_widths")
    centre = case.sitting.pedals[name].rest_pad.centre
    wall: Mm = -inside_half_width(centre[:, 0], case.car.footwell.half_widths)
    edge = column(pedal.pad_y) - column(pedal.pad_width) / 2
    return measured(case, "pedal.rest_room", edge - wall - case.links.shoe_width, (centre,))
