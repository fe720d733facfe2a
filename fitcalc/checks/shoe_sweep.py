"""The shoe through a pedal's travel, and the least room that anything near it leaves."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from fitcalc.body.links import Links
from fitcalc.checks.case import Case
from fitcalc.checks.measured import nearest_of
from fitcalc.checks.surroundings import Surface, Thing
from fitcalc.geometry.degrees import cosd, sind, unit
from fitcalc.geometry.nearest import nearest_points, nearest_to_line
from fitcalc.geometry.outlines import Outline, apart, gap, outlined, path_distance
from fitcalc.geometry.side import across, at_y, point, row_of, scaled
from fitcalc.geometry.surface import surface_room
from fitcalc.posture.cases import column
from fitcalc.posture.foot import Foot, collar_height
from fitcalc.posture.pads import Pad, pad_at, pad_edges
from fitcalc.posture.sit import foot_pressed
from fitcalc.units import Deg, Floats, Mm, Points

STATIONS = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Parts of the travel. In between the corners count as moving straight: 300 mm from the pivot, over 20 deg
of travel, the arc stands 0.3 mm off its chord."""
TOE_BOX = 50.0
"""Height of the shoe over the toes, sole included, mm: design inference, no source."""
COLLAR_AHEAD_OF_ANKLE = 50.0
"""Front of the shin at the shoe's top, ahead of the ankle joint, mm: design inference, no source."""
TOE_OUT = np.array([5.0])
"""How far a foot may be turned out or in on its pad, deg: design inference, no source."""
HEEL_SHARE, TOE_SHARE = 0.35, 0.30
"""Half widths at heel and toe, as shares of the width across the ball: design inference, no source."""


@dataclass(frozen=True, eq=False)
class ShoeSweep:
    """One shoe and its pad at every station of the travel.

    Attributes:
        shoes: corners of the shoe in side view, `(n, s, 5, 3)`: heel, toe, top over the toes, front and back
            of the top at the ankle.
        pads: bottom and top edge of the pad, `(n, s, 2, 3)`.
        low, high: leftmost and rightmost y of the shoe, turned out or in by up to `TOE_OUT`.
        pad_low, pad_high: the same of the pad.
    """

    shoes: Points
    pads: Points
    low: Mm
    high: Mm
    pad_low: Mm
    pad_high: Mm

    @cached_property
    def outline(self) -> Outline:
        """Of the shoe, `(n, s)`."""
        return outlined(self.shoes)

    @cached_property
    def pad_outline(self) -> Outline:
        """Of the pad, `(n, s)`."""
        return outlined(self.pads)


@dataclass(frozen=True, eq=False)
class Least:
    """The least room, `(n,)`, at which part of the travel, and the two points it lies between, `(n, 3)`."""

    room: Mm
    travel: Floats
    points: tuple[Points, Points]


def shoe_outline(foot: Foot, links: Links) -> Points:
    """The shoe in side view, convex, `(n, 5, 3)`."""
    up = across(foot.sole)
    ankle = links.heel_to_ankle + links.shoe_heel_margin
    top = collar_height(links)
    shin = foot.heel + scaled(foot.sole, ankle + COLLAR_AHEAD_OF_ANKLE) + scaled(up, top)
    corners = (foot.heel, foot.toe, foot.toe + TOE_BOX * up, shin, foot.heel + scaled(up, top))
    return row_of(corners)


def half_width_turned(links: Links, toe_out: Deg) -> Mm:
    """How far to either side of the ball's middle a shoe reaches when it is turned about the ball on its pad.

    Source: plane geometry, of the shoe's width across the ball, its heel and its toe.
    """
    behind = links.heel_to_ball + links.shoe_heel_margin
    ahead = links.shoe_length - behind
    heel = behind * sind(toe_out) + HEEL_SHARE * links.shoe_width * cosd(toe_out)
    toe = ahead * sind(toe_out) + TOE_SHARE * links.shoe_width * cosd(toe_out)
    return np.max(np.broadcast_arrays(links.shoe_width / 2, heel, toe), axis=0)


def shoe_sweep(case: Case, name: str) -> ShoeSweep:
    """The shoe on one pedal through its travel, with the rework in place."""
    pedal, links = case.car.fitted_pedals()[name], case.links
    pads = _pads(case, name)
    feet = _feet(case, name, pads)
    half, pad_half = half_width_turned(links, TOE_OUT), column(pedal.pad_width) / 2
    y, pad_y = feet[0].heel[:, 1], pads[0].centre[:, 1]
    edges = [row_of(pad_edges(pad, pedal)) for pad in pads]
    return ShoeSweep(
        shoes=row_of([shoe_outline(foot, links) for foot in feet]),
        pads=row_of(edges),
        low=y - half,
        high=y + half,
        pad_low=pad_y - pad_half,
        pad_high=pad_y + pad_half,
    )


def least_to_thing(sweep: ShoeSweep, thing: Thing) -> Least:
    """Least room between the moving shoe and a thing, signed."""
    still = gap(sweep.outline, outlined(thing.outline[:, None]))
    side = np.minimum(still.min(axis=1), path_distance(sweep.shoes, thing.outline)) - thing.radius
    shoe, travel = _closest(sweep.shoes, still)
    on_shoe, middle = nearest_points(shoe, thing.outline)
    beside = at_y(middle, on_shoe[:, 1])
    on_thing = beside + scaled(unit(on_shoe - beside), thing.radius)
    edge = at_y(on_thing, np.clip(on_shoe[:, 1], thing.low, thing.high))
    return Least(apart(side, (sweep.low, thing.low), (sweep.high, thing.high)), travel, (on_shoe, edge))


def least_to_surface(sweep: ShoeSweep, surface: Surface) -> Least:
    """Least room between the moving shoe and floor or roof, signed."""
    rooms = surface_room(sweep.outline, surface.line, surface.solid)
    shoe, travel = _closest(sweep.shoes, rooms)
    return Least(rooms.min(axis=1), travel, nearest_to_line(shoe, surface.line))


def least_to_bulkhead(sweep: ShoeSweep, face: Mm) -> Least:
    """Least room between the moving shoe and the front bulkhead, whose rear face is at x = `face`."""
    rooms = sweep.shoes[..., 0].min(axis=2) - face[:, None]
    shoe, travel = _closest(sweep.shoes, rooms)
    corner = nearest_of(shoe, shoe[..., 0])
    return Least(rooms.min(axis=1), travel, (corner, point(face, corner[:, 1], corner[:, 2])))


def _pads(case: Case, name: str) -> list[Pad]:
    pedal, rework = case.car.fitted_pedals()[name], getattr(case.setup, name)
    between = [pad_at(pedal, rework, column(case.setup.box_travel), travel) for travel in STATIONS[1:-1]]
    worked = case.sitting.pedals[name]
    return [worked.rest_pad, *between, worked.full_pad]


def _feet(case: Case, name: str, pads: list[Pad]) -> list[Foot]:
    pedal, worked = case.car.fitted_pedals()[name], case.sitting.pedals[name]
    rest = worked.rest.foot
    between = [foot_pressed(name, rest, pad, pedal, case.links, case.car) for pad in pads[1:-1]]
    return [rest, *between, worked.full.foot]


def _closest(shoes: Points, rooms: Floats) -> tuple[Points, Floats]:
    """The shoe `(n, 5, 3)` and the part of the travel with least room; rooms `(n, s)`."""
    station = rooms.argmin(axis=1)
    every = np.broadcast_to(shoes, (len(rooms), *shoes.shape[1:])).T
    return every[:, :, station, np.arange(len(rooms))].T, np.array(STATIONS)[station]
