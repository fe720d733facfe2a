"""What a rework does to one pedal: ratio, travel, stroke, pull and pressure, before and after."""

from dataclasses import dataclass

import numpy as np

from fitcalc.documents.car_pedals import Cable, Cylinder, Pedal
from fitcalc.documents.setup import PedalRework
from fitcalc.geometry.degrees import cosd, sind
from fitcalc.making import pedal_motion
from fitcalc.making.cable import sector_full_angle, sector_pull, stop_error
from fitcalc.making.hydraulics import driven_stroke, stroke_left
from fitcalc.making.ratio import mean_ratio, travel
from fitcalc.making.rod import Rod
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.pads import pad_at, travel_angle
from fitcalc.units import Deg, Floats, Mm, Points

SAMPLES = 9
"""Positions looked at over the travel, rest and stop included."""


@dataclass(frozen=True, eq=False)
class CylinderWork:
    """A push-rod pedal's figures, `(n,)`.

    Attributes:
        ratio_rest, ratio_full, ratio_mean: pad force over rod force.
        stroke: of the master cylinder at the pedal's stop.
        stroke_left: still free there; negative when the cylinder bottoms first.
        release: travel of the clutch's release bearing, less what the lost stroke takes; None without a release.
    """

    ratio_rest: Floats
    ratio_full: Floats
    ratio_mean: Floats
    stroke: Mm
    stroke_left: Mm
    release: Mm | None


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


@dataclass(frozen=True, eq=False)
class PedalWork:
    """One pedal after the rework, `(n,)`.

    Attributes:
        shift: movement of the pad's centre by the rework, at rest, `(n, 3)`.
        pad_travel, pad_travel_found: straight, rest to stop, after and as found.
        force_factor: foot force after over foot force as found for the same work at the other end.
        cylinder, cable: what the pedal works; None where it was not measured.
    """

    shift: Points
    pad_travel: Mm
    pad_travel_found: Mm
    force_factor: Floats
    cylinder: CylinderWork | None
    cable: CableWork | None


def pedal_work(pedal: Pedal, rework: PedalRework, box_travel: Mm) -> PedalWork:
    """The figures of one pedal after a rework, beside the pedal as found."""
    found, after = motion(pedal, PedalRework()), motion(pedal, rework)
    before = pad_at(pedal, PedalRework(), np.zeros(1), 0.0)
    now = pad_at(pedal, rework, box_travel, 0.0)
    return PedalWork(
        shift=now.centre - before.centre,
        pad_travel=pedal_motion.pad_chord(after),
        pad_travel_found=pedal_motion.pad_chord(found),
        force_factor=pedal_motion.contact_radius(found) / pedal_motion.contact_radius(after),
        cylinder=None if pedal.cylinder is None else cylinder_work(after, pedal.cylinder),
        cable=None if pedal.cable is None else cable_work(after, pedal.cable),
    )


def motion(pedal: Pedal, rework: PedalRework) -> pedal_motion.Pedal:
    """The pedal as a mechanism, the pad's stand-off resolved along and square to the arm."""
    stands = 1.0 if pedal.hinge == "floor" else -1.0
    stand_off, tilt = column(rework.stand_off), column(pedal.pad_tilt)
    arm = column(pedal.arm) + column(rework.longer_arm) - stands * stand_off * sind(tilt)
    off = column(pedal.stand_off) + stand_off * cosd(tilt)
    pivot = xyz(pedal.pivot)[:, [0, 2]]
    arm, off, rest, turn = np.broadcast_arrays(arm, off, column(pedal.rest_angle), travel_angle(pedal))
    hanging = np.full(len(arm), pedal.hinge == "hanging")
    return pedal_motion.Pedal(np.broadcast_to(pivot, (len(arm), 2)), hanging, arm, off, rest, turn)


def cylinder_work(pedal: pedal_motion.Pedal, cylinder: Cylinder) -> CylinderWork:
    """Ratio and stroke of a push-rod pedal over its travel."""
    end = xyz(cylinder.rod_end)[:, [0, 2]]
    rod = Rod(column(cylinder.joint_radius), column(cylinder.joint_phase), end)
    over = travel(pedal, rod, SAMPLES)
    stroke = np.abs(over.stroke[:, -1])
    return CylinderWork(
        ratio_rest=over.ratio[:, 0],
        ratio_full=over.ratio[:, -1],
        ratio_mean=mean_ratio(pedal, stroke),
        stroke=stroke,
        stroke_left=stroke_left(column(cylinder.stroke), stroke),
        release=_release(cylinder, stroke),
    )


def cable_work(pedal: pedal_motion.Pedal, cable: Cable) -> CableWork:
    """Pull of a sector over the pedal's travel, and where the stop belongs."""
    radius, needed, slack = column(cable.joint_radius), column(cable.needed), column(cable.slack)
    pull = sector_pull(radius, pedal.travel)
    full = sector_full_angle(radius, needed, slack)
    return CableWork(pull, pull - needed - slack, full, stop_error(pedal, full))


def _release(cylinder: Cylinder, stroke: Mm) -> Mm | None:
    release = cylinder.release
    if release is None:
        return None
    useful = np.maximum(stroke - column(cylinder.lost_travel), 0.0)
    slave = driven_stroke(useful, column(cylinder.bore), column(release.slave_bore))
    return slave / column(release.fork_ratio)
