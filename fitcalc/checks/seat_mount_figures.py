"""Whether the seat's bolts hold it, and the brackets that a moved or raised seat needs.

In these cars the harness is fixed to the car: the mounts hold the seat, and the driver only where the seat is what
stops the driver, which is rearward.
"""

from dataclasses import replace

import numpy as np

from fitcalc.checks.balance_figures import driver_centre
from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, unmeasured
from fitcalc.making.seat_levels import directions, road_seat_level
from fitcalc.making.seat_work import Carried, Mounts, SeatHold, empty_seat, hold, seat_mounts, with_driver
from fitcalc.units import Points

DRIVER = "seat.mount_safety_driver"


def seat_mount_figures(case: Case) -> list[Figure]:
    """Factor of safety of the seat's bolts at the published seat loads, and brackets where they are needed."""
    mounts, seat = seat_mounts(case.car, case.setup), empty_seat(case.car, case.setup)
    places = tuple(np.moveaxis(mounts.after, 1, 0))
    multiples = dict(directions(road_seat_level()))
    figures = [_safety(case, way, hold(mounts, seat, factor), places) for way, factor in multiples.items()]
    if case.sitting.hands is None:
        return [*figures, unmeasured(DRIVER, "steering_wheel")]
    pushed = hold(mounts, seat_and_driver(case), multiples["rearward"])
    return [*figures, measured(case, DRIVER, pushed.safety, places), *_bracket(case, mounts, pushed)]


def seat_and_driver(case: Case) -> Carried:
    """The seat with its driver in it; kit not counted."""
    centre = driver_centre(case, case.sitting)
    return with_driver(empty_seat(case.car, case.setup), case.links.mass, centre)


def _safety(case: Case, way: str, held: SeatHold, places: tuple[Points, ...]) -> Figure:
    return measured(case, f"seat.mount_safety.{way}", held.safety, places, "seat.mount_safety", f"load {way}")


def _bracket(case: Case, mounts: Mounts, pushed: SeatHold) -> list[Figure]:
    if not np.any(mounts.bracketed):
        return []
    ends = (mounts.holes[:, 0], mounts.after[:, 0])
    figures = [
        measured(case, "seat.bracket_reach", mounts.reach, ends),
        measured(case, "seat.bracket_thickness", pushed.thickness, ends),
    ]
    without = np.broadcast_to(~mounts.bracketed, (case.count,))
    return [replace(figure, absent=without) for figure in figures]
