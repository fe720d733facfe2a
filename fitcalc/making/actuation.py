"""What a pedal works, from rest to its stop: cylinder, balance bar and clutch release, or cable and throttle stop."""

from dataclasses import dataclass

import numpy as np

from fitcalc.documents.car_pedals import BalanceBar, Cable, Cylinder
from fitcalc.making import hydraulics
from fitcalc.making.cable import sector_full_angle, sector_pull, stop_error
from fitcalc.making.pedal_motion import Pedal, contact_radius
from fitcalc.making.ratio import mean_ratio, rod_force, travel
from fitcalc.making.rod import Rod
from fitcalc.posture.cases import column, xyz
from fitcalc.units import Deg, Floats, Mm, MPa, Newton

SAMPLES = 9
"""Positions looked at over the travel, rest and stop included."""

EFFORT = 500.0
"""Foot force at which line pressures are told, N: the most that a road car's service brake may ask (FMVSS 135
S7.5; UN R13-H, from memory)."""

EFFICIENCY = 0.8
"""Share of the foot's work that pedal and linkage pass on, with Limpert's line-pressure equation: from memory."""


@dataclass(frozen=True, eq=False)
class CylinderWork:
    """A push-rod pedal's figures, `(n,)`.

    Attributes:
        ratio_rest, ratio_full, ratio_mean: pad force over rod force.
        off_square: most that the rod stands off square to the line from pivot to its joint, 90 at a toggle.
        stroke: of the master cylinder at the pedal's stop.
        stroke_left: still free there; negative when the cylinder bottoms first.
        pressure: in the line at `EFFORT`, of the front circuit where there are two.
        rear_pressure: of the rear circuit; None without a balance bar.
        release: travel of the clutch's release bearing, less what the lost stroke takes; None without a release.
        release_left: that travel beyond what frees the clutch.
    """

    ratio_rest: Floats
    ratio_full: Floats
    ratio_mean: Floats
    off_square: Deg
    stroke: Mm
    stroke_left: Mm
    pressure: MPa
    rear_pressure: MPa | None
    release: Mm | None
    release_left: Mm | None


@dataclass(frozen=True, eq=False)
class CableWork:
    """A cable pedal's figures, `(n,)`.

    Attributes:
        pull: cable pulled at the pedal's stop.
        pull_left: pull beyond what is needed and slack; negative = never wide open (or never free).
        full_angle: pedal angle from rest at which the cable has done its work: where the stop belongs.
        stop_error: the pedal's stop beyond that; positive strains the cable.
    """

    pull: Mm
    pull_left: Mm
    full_angle: Deg
    stop_error: Deg


def cylinder_work(found: Pedal, after: Pedal, cylinder: Cylinder) -> CylinderWork:
    """Ratio, stroke and pressure of a push-rod pedal; an extension changes neither stroke nor rod."""
    end = xyz(cylinder.rod_end)[:, [0, 2]]
    over = travel(found, Rod(column(cylinder.joint_radius), column(cylinder.joint_phase), end), SAMPLES)
    longer = contact_radius(after) / contact_radius(found)
    stroke = np.abs(over.stroke[:, -1])
    mean = mean_ratio(found, stroke) * longer
    front, rear = line_pressures(rod_force(np.array(EFFORT), mean, np.array(EFFICIENCY)), cylinder)
    release = _release(cylinder, stroke)
    return CylinderWork(
        ratio_rest=over.ratio[:, 0] * longer,
        ratio_full=over.ratio[:, -1] * longer,
        ratio_mean=mean,
        off_square=np.max(np.abs(over.rod_to_arm - 90.0), axis=-1),
        stroke=stroke,
        stroke_left=hydraulics.stroke_left(column(cylinder.stroke), stroke),
        pressure=front,
        rear_pressure=rear,
        release=release,
        release_left=_release_left(cylinder, release),
    )


def line_pressures(push: Newton, cylinder: Cylinder) -> tuple[MPa, MPa | None]:
    """Line pressure of the only or front circuit, and of the rear one, for a force in the push-rod."""
    bar, bore = cylinder.balance_bar, column(cylinder.bore)
    if bar is None:
        return hydraulics.line_pressure(push, bore), None
    front, rear = hydraulics.bar_shares(push, _clevises(bar))
    return hydraulics.line_pressure(front, bore), hydraulics.line_pressure(rear, column(bar.rear_bore))


def cable_work(pedal: Pedal, cable: Cable) -> CableWork:
    """Pull of a sector over the pedal's travel, and where the stop belongs."""
    radius, needed, slack = column(cable.joint_radius), column(cable.needed), column(cable.slack)
    pull = sector_pull(radius, pedal.travel)
    full = sector_full_angle(radius, needed, slack)
    return CableWork(pull, pull - needed - slack, full, stop_error(pedal, full))


def _clevises(bar: BalanceBar) -> hydraulics.BalanceBar:
    return hydraulics.BalanceBar(column(bar.spacing), column(bar.pivot_to_front))


def _release(cylinder: Cylinder, stroke: Mm) -> Mm | None:
    release = cylinder.release
    if release is None:
        return None
    useful = np.maximum(stroke - column(cylinder.lost_travel), 0.0)
    slave = hydraulics.driven_stroke(useful, column(cylinder.bore), column(release.slave_bore))
    return slave / column(release.fork_ratio)


def _release_left(cylinder: Cylinder, release: Mm | None) -> Mm | None:
    if cylinder.release is None or release is None:
        return None
    return release - column(cylinder.release.needed)
