"""The student rules' 95th percentile template, placed in the seat as its clause says.

Source: Formula SAE Rules 2026 F.5.6.5-F.5.6.6, FS Rules 2025 T4.3: hip and shoulder circles 200 mm, helmet
circle 300 mm, 490 mm hip to shoulder, 280 mm shoulder to head, helmet circle 25 mm from the head restraint.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, nearest_of, unmeasured
from fitcalc.documents.car import Car
from fitcalc.documents.setup import Setup
from fitcalc.geometry.cradle import leaning_on, resting_in
from fitcalc.geometry.ellipse import below_line, touching_point
from fitcalc.geometry.side import across, leaning, point, scaled
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.pads import pad_at
from fitcalc.posture.seat import back_padding, cushion_padding, shell
from fitcalc.units import Deg, Mm, Points

TORSO_CIRCLE, HEAD_CIRCLE = 100.0, 150.0
"""Radius of the hip and shoulder circles, and of the helmet circle, mm."""
TORSO, NECK = 490.0, 280.0
RESTRAINT_GAP = 25.0
LINES = {"helmet_line": ("front_top", "main_top"), "brace_line": ("main_top", "brace_foot")}
"""Each line's front and rear end."""


@dataclass(frozen=True, eq=False)
class Template:
    """The template in the seat: centres of its circles, `(n, 3)`, and its torso line from the vertical."""

    hip: Points
    shoulder: Points
    head: Points
    torso_angle: Deg


def template_figures(case: Case) -> list[Figure]:
    """The template's torso line, its helmet circle and its distance to the pedals."""
    placed = placed_template(case.car, fully_apart(case.car, case.setup))
    return [
        measured(case, "template.torso_angle", placed.torso_angle, (placed.hip, placed.shoulder)),
        *(_line(case, placed, name) for name in LINES),
        _pedals(case, placed),
    ]


def fully_apart(car: Car, setup: Setup) -> Setup:
    """The rework with the seat fully back and the pedal box fully forward, as the clause has it."""
    back, forward = -column(car.rails.rearward_travel), -column(car.pedals.box_forward)
    return setup.model_copy(update={"seat_travel": back, "box_travel": forward})


def placed_template(car: Car, setup: Setup) -> Template:
    """The template in the seat where the rework puts it; padding, a driver's insert too, counts as uncompressed."""
    profile = shell(car, setup)
    junction = car.seat.profile.index((0.0, 0.0))
    cushion, back = profile[:, : junction + 1], profile[:, junction:]
    off_back = TORSO_CIRCLE + back_padding(car, setup)
    hip = resting_in(cushion, back, TORSO_CIRCLE + cushion_padding(car, setup), off_back)
    angle = leaning_on(hip, TORSO, back, off_back)
    shoulder = hip + scaled(leaning(angle), TORSO)
    return Template(hip, shoulder, shoulder + _neck(shoulder, car), angle)


def _neck(shoulder: Points, car: Car) -> Points:
    """Shoulder to head: upright, or leaning so far as the gap to the head restraint asks."""
    ahead: Mm = np.zeros(len(shoulder))
    if car.head_restraint is not None:
        wanted = column(car.head_restraint.x) - RESTRAINT_GAP - HEAD_CIRCLE - shoulder[:, 0]
        ahead = np.clip(wanted, -NECK, NECK)
    return point(ahead, 0.0, np.sqrt(NECK * NECK - ahead * ahead))


def _line(case: Case, placed: Template, name: str) -> Figure:
    id, hoops = f"template.{name}", case.car.hoops
    ends = [None if hoops is None else getattr(hoops, end) for end in LINES[name]]
    if ends[0] is None or ends[1] is None:
        return unmeasured(id, "hoops" if hoops is None else "hoops.brace_foot")
    front, rear = xyz(ends[0]), xyz(ends[1])
    radius = column(HEAD_CIRCLE)
    top = touching_point(placed.head, radius, radius, across(front - rear))
    return measured(case, id, below_line(placed.head, radius, radius, front, rear), (top, front, rear))


def _pedals(case: Case, placed: Template) -> Figure:
    setup = fully_apart(case.car, case.setup)
    pads = [
        pad_at(pedal, getattr(setup, name), column(setup.box_travel), 0.0).centre
        for name, pedal in case.car.fitted_pedals().items()
    ]
    faces = np.stack(np.broadcast_arrays(*pads, placed.hip)[:-1], axis=1)
    rearmost = nearest_of(faces, -faces[..., 0])
    away = rearmost - placed.hip
    return measured(case, "template.pedal_distance", np.hypot(away[:, 0], away[:, 2]), (placed.hip, rearmost))
