"""The moved seat against what stands behind it, the body side and the driver's hips."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, unmeasured
from fitcalc.geometry.degrees import cosd, tand
from fitcalc.geometry.lines import profile_points
from fitcalc.geometry.nearest import nearest_points
from fitcalc.geometry.outlines import backed, clearance
from fitcalc.geometry.side import point
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.seat import carried, cushion_angle, cushion_padding
from fitcalc.units import Points

REARWARD = np.array([5000.0, 0.0, 0.0])
"""How far behind its face a tank or firewall counts as solid, mm."""


def seat_figures(case: Case) -> list[Figure]:
    """Room about the seat."""
    seat = case.car.seat
    room = 2.0 * column(seat.half_width) - case.links.hip_breadth
    mounts = tuple(xyz(mount) for mount in seat.mounts)
    return [
        _behind(case),
        _side_depth(case),
        measured(case, "seat.hip_room", room, case.sitting.hips),
        measured(case, "seat.mount_count", column(len(mounts)), mounts),
    ]


def _behind(case: Case) -> Figure:
    if case.car.behind_seat is None:
        return unmeasured("seat.behind", "behind_seat")
    line = case.shell
    pieces = np.stack([line[:, :-1], line[:, 1:]], axis=2)
    things = backed(profile_points(case.car.behind_seat), REARWARD)[None]
    gaps = clearance(pieces[:, :, None], things[:, None])
    best = gaps.reshape(len(gaps), -1).argmin(axis=1)
    on_seat, on_thing = nearest_points(
        pieces[np.arange(len(gaps)), best // gaps.shape[2]], things[0, best % gaps.shape[2]]
    )
    room = gaps.min(axis=(1, 2)) - column(case.car.seat.shell_thickness)
    return measured(case, "seat.behind", room, (on_seat, on_thing))


def _side_depth(case: Case) -> Figure:
    if case.car.cockpit is None:
        return unmeasured("seat.side_depth", "cockpit")
    cushion = cushion_under_hip(case)
    depth = column(case.car.cockpit.side_top) - cushion[:, 2]
    return measured(case, "seat.side_depth", depth, (cushion,))


def cushion_under_hip(case: Case) -> Points:
    """Top of the uncompressed cushion straight below the hip joints."""
    seat, angle = case.car.seat, cushion_angle(case.car, case.setup)
    junction, hip = carried(xyz(seat.junction), case.car, case.setup), case.sitting.trunk.hip
    rise = (junction[:, 0] - hip[:, 0]) * tand(angle) + cushion_padding(case.car, case.setup) / cosd(angle)
    return point(hip[:, 0], hip[:, 1], junction[:, 2] + rise)
