"""Knees, thighs and shanks against what surrounds them, over the pedals' travel."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, nearest_of, unmeasured
from fitcalc.checks.rim import rim_ring
from fitcalc.checks.surroundings import Thing, obstacles, roof
from fitcalc.geometry.degrees import length
from fitcalc.geometry.lines import from_segment, nearest_on_segment
from fitcalc.geometry.outlines import Outline, apart, backed, gap, outlined
from fitcalc.geometry.ring import to_points
from fitcalc.geometry.side import point, row_of
from fitcalc.geometry.sides import least, most
from fitcalc.geometry.surface import room_of_points
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.wheel import wheel_centre
from fitcalc.units import Mm, Points

COLUMN_RADIUS = 13.0
"""Half a steering column's tube, mm: design inference, no source."""
ABOVE = np.array([0.0, 0.0, 5000.0])
"""How far up a scuttle counts as solid, mm."""
SIDES = ("left", "right")


@dataclass(frozen=True, eq=False)
class LegPlaces:
    """One foot's leg on every pedal that it works, released and pressed.

    Attributes:
        hip: `(n, 3)`.
        thighs: corners of all that the thigh's axis sweeps, in side view, by pedal, `(n, p, 3, 3)`: hip, knee
            released and pressed.
        shanks: the same of the shank, `(n, p, 4, 3)`: knee released and pressed, ankle released and pressed.
    """

    hip: Points
    thighs: Points
    shanks: Points

    @cached_property
    def thigh_outlines(self) -> Outline:
        """Of what the thigh's axis sweeps, by pedal, `(n, p)`."""
        return outlined(self.thighs)

    @cached_property
    def shank_outlines(self) -> Outline:
        """Of what the shank's axis sweeps, by pedal, `(n, p)`."""
        return outlined(self.shanks)

    @property
    def every_knee(self) -> Points:
        """Each place of the knee, `(n, 2 p, 3)`."""
        return row_of([self.shanks[:, pedal, end] for pedal in range(self.shanks.shape[1]) for end in (0, 1)])

    @property
    def knee(self) -> Points:
        """Middle of all places of the knee, `(n, 3)`."""
        return self.shanks[:, :, :2].mean(axis=(1, 2))

    @property
    def ankle(self) -> Points:
        """Middle of all places of the ankle, `(n, 3)`."""
        return self.shanks[:, :, 2:].mean(axis=(1, 2))


def leg_places(case: Case, side: str) -> LegPlaces | None:
    """Where one leg is; None where that foot works no pedal."""
    fitted = case.car.fitted_pedals()
    worked = [on for name, on in case.sitting.pedals.items() if fitted[name].foot == side]
    if not worked:
        return None
    hip = worked[0].rest.hip
    thighs = [row_of((hip, on.rest.knee, on.full.knee)) for on in worked]
    shanks = [row_of((on.rest.knee, on.full.knee, on.rest.ankle, on.full.ankle)) for on in worked]
    return LegPlaces(hip, row_of(thighs), row_of(shanks))


def knee_figures(case: Case) -> list[Figure]:
    """Either knee against scuttle, column, wheel and front hoop; either leg against what lies by it."""
    return [figure for side in SIDES for figure in _side(case, side)]


def _side(case: Case, side: str) -> list[Figure]:
    places = leg_places(case, side)
    if places is None:
        return []
    knees = places.every_knee
    return [
        _knee_roof(case, side, knees),
        _knee_column(case, side, knees),
        _knee_wheel(case, side, knees),
        _knee_hoop(case, side, knees),
        _shin_roof(case, side, places),
        *(_beside(case, side, places, thing) for thing in obstacles(case.car)),
    ]


def _knee_roof(case: Case, side: str, knees: Points) -> Figure:
    id, scuttle = f"knee.{side}.roof", roof(case.car)
    if scuttle is None:
        return unmeasured(id, "footwell.roof", "knee.roof", side)
    return _nearest_knee(case, id, "knee.roof", room_of_points(knees, scuttle.line, scuttle.solid), knees)


def _knee_column(case: Case, side: str, knees: Points) -> Figure:
    id, wheel = f"knee.{side}.column", case.car.steering_wheel
    if wheel is None or wheel.column_foot is None:
        missing = "steering_wheel" if wheel is None else "steering_wheel.column_foot"
        return unmeasured(id, missing, "knee.column", side)
    foot, top = xyz(wheel.column_foot)[:, None], wheel_centre(wheel, case.setup)[:, None]
    room = from_segment(knees, foot, top) - COLUMN_RADIUS
    return _nearest_knee(case, id, "knee.column", room, knees)


def _knee_wheel(case: Case, side: str, knees: Points) -> Figure:
    id, wheel = f"knee.{side}.wheel", case.car.steering_wheel
    if wheel is None:
        return unmeasured(id, "steering_wheel", "knee.wheel", side)
    room = to_points(rim_ring(wheel, case.setup), knees) - column(wheel.rim_thickness)[:, None] / 2
    return _nearest_knee(case, id, "knee.wheel", room, knees)


def _knee_hoop(case: Case, side: str, knees: Points) -> Figure:
    id, hoops = f"knee.{side}.hoop", case.car.hoops
    if hoops is None:
        return unmeasured(id, "hoops", "knee.hoop", side)
    radius = column(hoops.tube) / 2
    drop = point(0.0, 0.0, radius)
    tube = xyz(hoops.front_top) - drop
    x, z = knees[..., 0] - tube[:, None, 0], knees[..., 2] - tube[:, None, 2]
    away = np.sqrt(x * x + z * z)
    return _nearest_knee(case, id, "knee.hoop", away - radius[:, None], knees)


def _nearest_knee(case: Case, id: str, quantity: str, gaps: Mm, knees: Points) -> Figure:
    """The least of the knee joint's gaps `(n, places)`, less the knee's flesh."""
    room, side = gaps.min(axis=1) - case.links.knee_top, id.split(".")[1]
    return measured(case, id, room, (nearest_of(knees, gaps),), quantity, side)


def _shin_roof(case: Case, side: str, places: LegPlaces) -> Figure:
    id, scuttle = f"leg.{side}.roof", roof(case.car)
    if scuttle is None:
        return unmeasured(id, "footwell.roof", "leg.roof", side)
    pieces = outlined(backed(scuttle.line, ABOVE)[None, None])
    room = gap(places.shank_outlines[:, :, None], pieces).min(axis=(1, 2))
    return measured(case, id, room - case.links.shank_radius, (places.knee,), "leg.roof", side)


def _beside(case: Case, side: str, places: LegPlaces, thing: Thing) -> Figure:
    hulls = (
        (places.thigh_outlines, case.links.thigh_radius),
        (places.shank_outlines, case.links.shank_radius),
    )
    room = np.min(np.broadcast_arrays(*(_room(hull, radius, thing) for hull, radius in hulls)), axis=0)
    ends = _leg_beside(places, thing)
    return measured(case, f"leg.{side}.{thing.key}", room, ends, "leg.obstacle", f"{side}, {thing.name}")


def _leg_beside(places: LegPlaces, thing: Thing) -> tuple[Points, Points]:
    """The point of a leg's axis that is nearest to the middle of a thing, and that middle: where to look."""
    middle = thing.outline.mean(axis=1)
    thigh = nearest_on_segment(middle, places.hip, places.knee)
    shank = nearest_on_segment(middle, places.knee, places.ankle)
    nearer = length(thigh - middle) < length(shank - middle)
    return np.where(nearer[:, None], thigh, shank), middle


def _room(hull: Outline, radius: Mm, thing: Thing) -> Mm:
    """Room between a limb's swept axis, with its flesh, and a thing, `(n,)`."""
    side = gap(hull, outlined(thing.outline[:, None])) - (radius + thing.radius)[:, None]
    y = hull.corners[..., 1]
    low, high = least(y) - radius[:, None], most(y) + radius[:, None]
    return apart(side, (low, thing.low[:, None]), (high, thing.high[:, None])).min(axis=1)
