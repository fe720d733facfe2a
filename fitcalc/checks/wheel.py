"""The steering wheel against thighs, chest, dash, sides and hoops."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.knees import SIDES, leg_places
from fitcalc.checks.measured import measured, nearest_of, unmeasured
from fitcalc.checks.rim import fists, rim_ring
from fitcalc.checks.surroundings import roof
from fitcalc.documents.car_cockpit import Hoops, SteeringWheel
from fitcalc.geometry.degrees import length
from fitcalc.geometry.ellipse import below_line
from fitcalc.geometry.lines import nearest_on_segment
from fitcalc.geometry.outlines import surface_room
from fitcalc.geometry.side import at_y
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.wheel import highest_rim, lowest_rim
from fitcalc.units import Mm, Points

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
    hands = fists(case, wheel)
    return [
        *(_thigh(case, wheel, side) for side in SIDES),
        _knuckles(case, hands),
        _dash(case, hands),
        _side(case, hands),
        _chest(case, wheel),
        _opening(case, wheel),
        *_under_hoops(case, wheel),
    ]


def _thigh(case: Case, wheel: SteeringWheel, side: str) -> Figure:
    id = f"wheel.thigh_{side}"
    gap = _to_thigh(case, side, rim_ring(wheel, case.setup))
    if gap is None:
        return unmeasured(id, f"pedals: one worked by the {side} foot", "wheel.thigh", side)
    room, lowest = gap - column(wheel.rim_thickness) / 2, lowest_rim(wheel, case.setup)
    return measured(case, id, room, (lowest,), "wheel.thigh", side)


def _to_thigh(case: Case, side: str, places: Points) -> Mm | None:
    """Least gap from points `(n, q, 3)` to the flesh of a thigh wherever a pedal puts it, `(n,)`."""
    leg = leg_places(case, side)
    if leg is None:
        return None
    knees = leg.knees.reshape(len(leg.knees), -1, 1, 3)
    near = nearest_on_segment(places[:, None], leg.hip[:, None], knees)
    return length(near - places[:, None]).min(axis=(1, 2)) - case.links.thigh_radius


def _knuckles(case: Case, hands: Points) -> Figure:
    gaps = [gap for side in SIDES if (gap := _to_thigh(case, side, hands)) is not None]
    lowest = nearest_of(hands, hands[..., 2])
    return measured(case, "wheel.knuckles_thigh", np.min(gaps, axis=0) - FIST_RADIUS, (lowest,))


def _dash(case: Case, hands: Points) -> Figure:
    dash = roof(case.car)
    if dash is None:
        return unmeasured("wheel.dash", "footwell.roof")
    gap = surface_room(hands[:, :, None], dash.line, dash.solid)
    return measured(case, "wheel.dash", gap.min(axis=1) - FIST_RADIUS, (nearest_of(hands, gap),))


def _side(case: Case, hands: Points) -> Figure:
    cockpit = case.car.cockpit
    if cockpit is None:
        return unmeasured("wheel.side", "cockpit")
    room = column(cockpit.side_half_width)[:, None] - np.abs(hands[..., 1]) - FIST_RADIUS
    return measured(case, "wheel.side", room.min(axis=1), (nearest_of(hands, room),))


def _chest(case: Case, wheel: SteeringWheel) -> Figure:
    """The trunk is as deep as the deeper of chest and belly; its back lies behind it as at the hips."""
    trunk, links = case.sitting.trunk, case.links
    front = np.maximum(links.chest_depth, links.abdomen_depth) - links.hip_ahead_of_back
    ring = rim_ring(wheel, case.setup)
    flat = at_y(ring, np.zeros(ring.shape[:-1]))
    near = nearest_on_segment(flat, trunk.hip[:, None], trunk.shoulder[:, None])
    gap = length(at_y(near, flat[..., 1]) - flat)
    room = gap.min(axis=1) - front - column(wheel.rim_thickness) / 2
    return measured(case, "wheel.chest", room, (nearest_of(ring, gap),))


def _opening(case: Case, wheel: SteeringWheel) -> Figure:
    if case.car.cockpit is None:
        return unmeasured("wheel.behind_opening", "cockpit")
    front, at = _foremost(case, wheel)
    return measured(case, "wheel.behind_opening", front - column(case.car.cockpit.opening_front), (at,))


def _foremost(case: Case, wheel: SteeringWheel) -> tuple[Mm, Points]:
    """Front of the rim on the centre plane: its x, and the end of the rim it is at."""
    top, bottom = highest_rim(wheel, case.setup), lowest_rim(wheel, case.setup)
    at = np.where((top[:, 0] <= bottom[:, 0])[:, None], top, bottom)
    return at[:, 0] - column(wheel.rim_thickness) / 2, at


def _under_hoops(case: Case, wheel: SteeringWheel) -> list[Figure]:
    hoops = case.car.hoops
    if hoops is None:
        return [unmeasured(f"wheel.{name}", "hoops") for name in HOOP_FIGURES]
    top, hoop = highest_rim(wheel, case.setup), xyz(hoops.front_top)
    front, at = _foremost(case, wheel)
    behind = front - (hoop[:, 0] + column(hoops.tube) / 2)
    return [
        measured(case, "wheel.top_below_hoop", hoop[:, 2] - top[:, 2], (top, hoop)),
        measured(case, "wheel.hoop_distance", behind, (hoop, at)),
        _line(case, wheel, hoops),
    ]


def _line(case: Case, wheel: SteeringWheel, hoops: Hoops) -> Figure:
    main, front = xyz(hoops.main_top), xyz(hoops.front_top)
    half = column(wheel.rim_thickness) / 2
    ring = rim_ring(wheel, case.setup, np.array([[0.0, 180.0]]))
    room = np.min([below_line(ring[:, at], half, half, front, main) for at in (0, 1)], axis=0)
    return measured(case, "wheel.line", room, (highest_rim(wheel, case.setup), front, main))
