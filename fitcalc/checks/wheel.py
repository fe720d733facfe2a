"""The steering wheel against thighs, chest, dash, sides and hoops."""

from collections.abc import Iterable, Mapping

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.knees import SIDES, LegPlaces, leg_places
from fitcalc.checks.measured import measured, nearest_of, unmeasured
from fitcalc.checks.rim import fists, rim_ring
from fitcalc.checks.surroundings import roof
from fitcalc.documents.car_cockpit import Hoops, SteeringWheel
from fitcalc.geometry.ellipse import below_line
from fitcalc.geometry.lines import from_segment
from fitcalc.geometry.nearest import nearest_points
from fitcalc.geometry.outlines import clearance
from fitcalc.geometry.ring import Ring, to_segments
from fitcalc.geometry.side import at_y, dot, row_of
from fitcalc.geometry.surface import room_of_points
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.wheel import foremost_rim, highest_rim, lowest_rim, rim_ends
from fitcalc.units import Points

FIST_RADIUS = 45.0
"""Gloved knuckles from the middle of the rim, mm: design inference, no source."""
HOOP_FIGURES = ("top_below_hoop", "hoop_distance", "line")
OTHER_FIGURES = ("knuckles_thigh", "dash", "side", "chest", "behind_opening")


def wheel_figures(case: Case) -> list[Figure]:
    """Room about the wheel and about the hands on it."""
    wheel = case.car.steering_wheel
    if wheel is None:
        names = (*HOOP_FIGURES, *OTHER_FIGURES)
        thighs = [unmeasured(f"wheel.thigh_{side}", "steering_wheel", "wheel.thigh", side) for side in SIDES]
        return [*thighs, *(unmeasured(f"wheel.{name}", "steering_wheel") for name in names)]
    hands, legs = fists(wheel, case.setup), legs_of(case)
    return [
        *(_thigh(case, wheel, side, legs.get(side)) for side in SIDES),
        *fist_figures(case, hands, legs),
        _chest(case, wheel),
        _opening(case, wheel),
        *_under_hoops(case, wheel),
    ]


def legs_of(case: Case) -> dict[str, LegPlaces]:
    """Where each leg that works a pedal can be, by side."""
    return {side: leg for side in SIDES if (leg := leg_places(case, side)) is not None}


def fist_figures(case: Case, hands: Points, legs: Mapping[str, LegPlaces]) -> list[Figure]:
    """Room that gloved fists at these places, `(n, q, 3)`, have to thighs, dash and sides."""
    return [_knuckles(case, hands, legs.values()), _dash(case, hands), _side(case, hands)]


def _thigh(case: Case, wheel: SteeringWheel, side: str, leg: LegPlaces | None) -> Figure:
    id = f"wheel.thigh_{side}"
    if leg is None:
        return unmeasured(id, f"pedals: one worked by the {side} foot", "wheel.thigh", side)
    axis = to_segments(rim_ring(wheel, case.setup), leg.hip[:, None], leg.every_knee)
    room = axis.min(axis=1) - case.links.thigh_radius - column(wheel.rim_thickness) / 2
    return measured(case, id, room, (lowest_rim(wheel, case.setup),), "wheel.thigh", side)


def _knuckles(case: Case, hands: Points, legs: Iterable[LegPlaces]) -> Figure:
    """Least gap from the fists to the flesh of either thigh wherever a pedal puts it."""
    ends = [(leg.hip[:, None], knee[:, None]) for leg in legs for knee in leg.every_knee.swapaxes(0, 1)]
    axis = np.min(np.broadcast_arrays(*(from_segment(hands, *thigh).min(axis=1) for thigh in ends)), axis=0)
    room, lowest = axis - case.links.thigh_radius - FIST_RADIUS, nearest_of(hands, hands[..., 2])
    return measured(case, "wheel.knuckles_thigh", room, (lowest,))


def _dash(case: Case, hands: Points) -> Figure:
    dash = roof(case.car)
    if dash is None:
        return unmeasured("wheel.dash", "footwell.roof")
    gap = room_of_points(hands, dash.line, dash.solid)
    return measured(case, "wheel.dash", gap.min(axis=1) - FIST_RADIUS, (nearest_of(hands, gap),))


def _side(case: Case, hands: Points) -> Figure:
    cockpit = case.car.cockpit
    if cockpit is None:
        return unmeasured("wheel.side", "cockpit")
    room = column(cockpit.side_half_width)[:, None] - np.abs(hands[..., 1]) - FIST_RADIUS
    return measured(case, "wheel.side", room.min(axis=1), (nearest_of(hands, room),))


def _chest(case: Case, wheel: SteeringWheel) -> Figure:
    """The trunk is as deep as the deeper of chest and belly; its back lies behind it as at the hips."""
    trunk, links, ring = case.sitting.trunk, case.links, rim_ring(wheel, case.setup)
    front = np.maximum(links.chest_depth, links.abdomen_depth) - links.hip_ahead_of_back
    rim, torso = row_of(rim_ends(wheel, case.setup)), row_of((trunk.hip, trunk.shoulder))
    room = np.maximum(clearance(rim, torso), 0.0) - front - column(wheel.rim_thickness) / 2
    return measured(case, "wheel.chest", room, (_on_rim(ring, nearest_points(rim, torso)[0]),))


def _on_rim(ring: Ring, place: Points) -> Points:
    """The point of the rim that in side view looks to be there, on the right."""
    high = dot(place - ring.centre, ring.up)
    sideways = np.sqrt(np.maximum(ring.radius * ring.radius - high * high, 0.0))
    return at_y(place, ring.centre[:, 1] + sideways)


def _opening(case: Case, wheel: SteeringWheel) -> Figure:
    if case.car.cockpit is None:
        return unmeasured("wheel.behind_opening", "cockpit")
    front = foremost_rim(wheel, case.setup)
    behind = front[:, 0] - column(case.car.cockpit.opening_front)
    return measured(case, "wheel.behind_opening", behind, (front,))


def _under_hoops(case: Case, wheel: SteeringWheel) -> list[Figure]:
    hoops = case.car.hoops
    if hoops is None:
        return [unmeasured(f"wheel.{name}", "hoops") for name in HOOP_FIGURES]
    top, hoop = highest_rim(wheel, case.setup), xyz(hoops.front_top)
    front = foremost_rim(wheel, case.setup)
    behind = front[:, 0] - (hoop[:, 0] + column(hoops.tube) / 2)
    return [
        measured(case, "wheel.top_below_hoop", hoop[:, 2] - top[:, 2], (top, hoop)),
        measured(case, "wheel.hoop_distance", behind, (hoop, front)),
        _line(case, wheel, hoops),
    ]


def _line(case: Case, wheel: SteeringWheel, hoops: Hoops) -> Figure:
    main, front = xyz(hoops.main_top), xyz(hoops.front_top)
    half = column(wheel.rim_thickness) / 2
    room = np.min([below_line(end, half, half, front, main) for end in rim_ends(wheel, case.setup)], axis=0)
    return measured(case, "wheel.line", room, (highest_rim(wheel, case.setup), front, main))
