"""Shoe and pad: play between the cleats, neighbours, and what the moving shoe passes."""

from itertools import pairwise

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, nearest_of, unmeasured
from fitcalc.checks.shoe_sweep import (
    STATIONS,
    Least,
    ShoeSweep,
    least_to_bulkhead,
    least_to_surface,
    least_to_thing,
    shoe_sweep,
)
from fitcalc.checks.surroundings import floor, obstacles, roof
from fitcalc.documents.car_cockpit import HalfWidth
from fitcalc.geometry.outlines import Outline, apart, gap
from fitcalc.geometry.side import at_y
from fitcalc.posture.cases import column
from fitcalc.units import Mm

ENDS = slice(None, None, len(STATIONS) - 1)
"""Stations of a released and of a pressed pedal."""


def cleat_figures(case: Case) -> list[Figure]:
    """Every clearance of the shoes on their pads."""
    sweeps = {name: shoe_sweep(case, name) for name in case.sitting.pedals}
    return [
        *(_play(case, name) for name in sweeps),
        *(figure for left, right in pairwise(sweeps) for figure in _pair(case, left, right, sweeps)),
        *(figure for name, sweep in sweeps.items() for figure in _around(case, name, sweep)),
    ]


def closest_shoe(case: Case, pedal: str) -> dict[str, Least]:
    """By id of the figure: least room about the shoe on one pedal, at which part of the travel, and where."""
    found = _nearest(case, shoe_sweep(case, pedal))
    return {f"cleat.{pedal}.{key}": least for key, least in found.items()}


def _nearest(case: Case, sweep: ShoeSweep) -> dict[str, Least]:
    surfaces, face = (roof(case.car), floor(case.car)), case.car.footwell.bulkhead
    found = {each.key: least_to_surface(sweep, each) for each in surfaces if each is not None}
    if face is not None:
        found["bulkhead"] = least_to_bulkhead(sweep, column(face))
    return found | {thing.key: least_to_thing(sweep, thing) for thing in obstacles(case.car)}


def _play(case: Case, name: str) -> Figure:
    pedal, shoe = case.car.fitted_pedals()[name], case.links.shoe_width
    if pedal.cleat_spacing is None:
        wider = column(pedal.pad_width) - shoe
        return measured(case, f"cleat.{name}.play", wider, quantity="cleat.width_on_pad", of=name)
    play = column(pedal.cleat_spacing) - shoe
    return measured(case, f"cleat.{name}.play", play, quantity="cleat.play", of=name)


def _pair(case: Case, left: str, right: str, sweeps: dict[str, ShoeSweep]) -> list[Figure]:
    a, b = sweeps[left], sweeps[right]
    id, of = f"cleat.{left}_{right}", f"{left} and {right}"
    gap = np.maximum(b.pad_low - a.pad_high, a.pad_low - b.pad_high)
    ends = (a.pads[:, 0].mean(axis=1), b.pads[:, 0].mean(axis=1))
    fitted = case.car.fitted_pedals()
    rooms = [pair_room(a, b), pair_room(b, a)]
    if fitted[left].foot != fitted[right].foot:
        rooms.append(_room_between((a.outline, a.low, a.high), (b.outline, b.low, b.high)))
    return [
        measured(case, f"{id}.pads", gap, ends, "cleat.pads", of),
        measured(case, f"{id}.shoes", np.min(np.broadcast_arrays(*rooms), axis=0), ends, "cleat.shoes", of),
    ]


def pair_room(shod: ShoeSweep, other: ShoeSweep) -> Mm:
    """Least room between the shoe on one pedal and the pad of another, either released or pressed."""
    pad = (other.pad_outline, other.pad_low, other.pad_high)
    return _room_between((shod.outline, shod.low, shod.high), pad)


def _room_between(a: tuple[Outline, Mm, Mm], b: tuple[Outline, Mm, Mm]) -> Mm:
    side = gap(a[0][:, ENDS, None], b[0][:, None, ENDS]).min(axis=(1, 2))
    return apart(side, (a[1], b[1]), (a[2], b[2]))


def _around(case: Case, name: str, sweep: ShoeSweep) -> list[Figure]:
    found, figures = _nearest(case, sweep), []
    for key in ("roof", "bulkhead", "floor"):
        id, quantity = f"cleat.{name}.{key}", f"cleat.{key}"
        if key in found:
            figures.append(measured(case, id, found[key].room, found[key].points, quantity, name))
        else:
            figures.append(unmeasured(id, f"footwell.{key}", quantity, name))
    return [*figures, _wall(case, name, sweep), *_things(case, name, found)]


def _things(case: Case, name: str, found: dict[str, Least]) -> list[Figure]:
    figures = []
    for thing in obstacles(case.car):
        least = found[thing.key]
        id, of = f"cleat.{name}.{thing.key}", f"{name}, {thing.name}"
        figures.append(measured(case, id, least.room, least.points, "cleat.obstacle", of))
    return figures


def _wall(case: Case, name: str, sweep: ShoeSweep) -> Figure:
    id, widths = f"cleat.{name}.wall", case.car.footwell.half_widths
    if widths is None:
        return unmeasured(id, "footwell.half_widths", "cleat.wall", name)
    outer = np.maximum(np.abs(sweep.low), np.abs(sweep.high))
    corners = sweep.shoes.reshape(len(sweep.shoes), -1, 3)
    room = inside_half_width(corners[..., 0], widths) - outer[:, None]
    edge = np.where(outer > sweep.high, sweep.low, sweep.high)
    at = at_y(nearest_of(corners, room), edge)
    return measured(case, id, room.min(axis=1), (at,), "cleat.wall", name)


def inside_half_width(x: Mm, widths: tuple[HalfWidth, ...]) -> Mm:
    """Inside half width of the footwell at `x`, unchanged beyond what was measured."""
    known = np.array(widths, dtype=float)
    return np.interp(x, known[:, 0], known[:, 1])
