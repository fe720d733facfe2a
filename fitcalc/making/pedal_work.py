"""What a rework does to one pedal: ratio, travel, stroke, pull and pressure, before and after."""

from dataclasses import dataclass

import numpy as np

from fitcalc.documents.car_pedals import Pedal
from fitcalc.documents.setup import PedalRework
from fitcalc.geometry.degrees import cosd, sind
from fitcalc.making import pedal_motion
from fitcalc.making.actuation import CableWork, CylinderWork, cable_work, cylinder_work
from fitcalc.making.extension import slide
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.pads import pad_at, travel_angle
from fitcalc.units import Floats, Mm, Points


@dataclass(frozen=True, eq=False)
class PedalWork:
    """One pedal after the rework, `(n,)`.

    Attributes:
        shift: movement of the pad's centre by the rework, at rest, `(n, 3)`.
        pad_travel, pad_travel_found: straight, rest to stop, after and as found.
        force_factor: foot force after over foot force as found for the same work at the other end.
        slide: how far the pad runs along the shoe over the travel because it stands off the arm.
        cylinder, cable: what the pedal works; None where it was not measured.
    """

    shift: Points
    pad_travel: Mm
    pad_travel_found: Mm
    force_factor: Floats
    slide: Mm
    cylinder: CylinderWork | None
    cable: CableWork | None

    @property
    def ratio_change(self) -> Floats:
        """Change of the ratio against the pedal as found, %."""
        return 100.0 * (1.0 / self.force_factor - 1.0)


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
        slide=slide(after),
        cylinder=None if pedal.cylinder is None else cylinder_work(found, after, pedal.cylinder),
        cable=None if pedal.cable is None else cable_work(after, pedal.cable),
    )


def motion(pedal: Pedal, rework: PedalRework) -> pedal_motion.Pedal:
    """The pedal as a mechanism, the pad's stand-off resolved along and square to the arm."""
    stands = 1.0 if pedal.hinge == "floor" else -1.0
    stand_off, tilt = column(rework.stand_off), column(pedal.pad_tilt)
    arm = column(pedal.arm) + column(rework.longer_arm) - stands * stand_off * sind(tilt)
    off = column(pedal.stand_off) + stand_off * cosd(tilt)
    pivot = xyz(pedal.pivot)[:, [0, 2]]
    many = np.zeros(len(pivot))
    arm, off, rest, turn, _ = np.broadcast_arrays(
        arm, off, column(pedal.rest_angle), travel_angle(pedal), many
    )
    hanging = np.full(len(arm), pedal.hinge == "hanging")
    return pedal_motion.Pedal(np.broadcast_to(pivot, (len(arm), 2)), hanging, arm, off, rest, turn)
