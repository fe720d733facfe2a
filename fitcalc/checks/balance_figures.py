"""Weight on the front axle with the driver in, and what the rework changes of it."""

import numpy as np

from fitcalc.body.mass import centre_of_mass
from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, unmeasured
from fitcalc.checks.surroundings import slugs
from fitcalc.documents.car import Car
from fitcalc.documents.car_cockpit import MovableMass
from fitcalc.documents.setup import Setup
from fitcalc.making.balance import centre_behind_front, front_load_change, front_share, with_added
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.limbs import Arm, Leg
from fitcalc.posture.seat import travel
from fitcalc.posture.sit import Sitting, sit
from fitcalc.units import Floats, Kg, Points

KIT_MASS = 4.5
"""Helmet, suit, shoes and head-and-neck restraint, kg, taken to sit at the body's own centre of mass: design
inference, no source; the helmet alone may be 1.9 kg (FIA Sporting Code App. L 2025, ch. III 1.5)."""
FIGURES = ("balance.front_share", "balance.front_shift")


def balance_figures(case: Case) -> list[Figure]:
    """The front axle's share after the rework, its change, and what each moved thing gives of it."""
    missing = _missing(case.car)
    if missing or case.sitting.hands is None:
        return [unmeasured(id, missing or "steering_wheel") for id in FIGURES]
    found = sit(case.car, case.links, Setup())
    before, after = driver_centre(case, found), driver_centre(case, case.sitting)
    moved = travel(case.car, case.setup)
    share = share_with_driver(case, after, moved, mass_moment(case.car))
    change = share - share_with_driver(case, before, np.zeros_like(moved))
    return [
        measured(case, "balance.front_share", 100.0 * share, (after,)),
        measured(case, "balance.front_shift", 100.0 * change, (before, after)),
        *_moved_masses(case),
    ]


def mass_moment(car: Car) -> Floats:
    """Mass times rearward movement of all that is moved in the car besides seat and driver, kg mm, `(n,)`."""
    moved = [
        column(each.mass) * (xyz(each.to) - xyz(each.at))[:, 0] for each in car.masses if each.to is not None
    ]
    return np.sum(np.broadcast_arrays(np.zeros(1), *moved), axis=0)


def _moved_masses(case: Case) -> list[Figure]:
    """What each moved thing alone changes of the share, driver in."""
    keys = slugs(each.name for each in case.car.masses)
    return [
        _moved(case, each, key)
        for each, key in zip(case.car.masses, keys, strict=True)
        if each.to is not None
    ]


def _moved(case: Case, each: MovableMass, key: str) -> Figure:
    at, to = xyz(each.at), xyz(each.to or each.at)
    reference = case.car.reference
    whole = column(reference.front_axle_load) + column(reference.rear_axle_load) + case.links.mass + KIT_MASS
    change = front_load_change(column(each.mass), to[:, 0] - at[:, 0], column(reference.wheelbase)) / whole
    return measured(case, f"balance.mass.{key}", 100.0 * change, (at, to), "balance.mass_shift", each.name)


def share_with_driver(case: Case, driver: Points, seat_moved: Points, moment: Floats | float = 0.0) -> Floats:
    """Front axle's share, 0 to 1, with the driver's centre of mass at a point, the seat and other masses moved.

    Source: statics; the axle loads are the car's as found, nobody in it.
    """
    reference, seat = case.car.reference, column(case.car.seat.mass)
    rear, base = column(reference.rear_axle_load), column(reference.wheelbase)
    empty: Kg = column(reference.front_axle_load) + rear
    x = centre_behind_front(rear, empty, base) + (seat * seat_moved[:, 0] + moment) / empty
    _, centre = with_added(empty, x[:, None], case.links.mass + KIT_MASS, driver[:, :1])
    return front_share(centre[:, 0], base)


def driver_centre(case: Case, sitting: Sitting) -> Points:
    """Centre of mass of the seated driver, `(n, 3)`."""
    return centre_of_mass(_joints(case.car, sitting), case.driver.sex)


def _missing(car: Car) -> str:
    loads = ("front_axle_load", "rear_axle_load")
    return next((f"reference.{name}" for name in loads if getattr(car.reference, name) is None), "")


def _joints(car: Car, sitting: Sitting) -> dict[str, Points]:
    """Hands on the wheel, each foot on the rightmost pedal it works; a foot that works none rests beside the other."""
    joints = {"cervicale": sitting.trunk.cervicale, "head_top": sitting.trunk.head_top}
    fitted = car.fitted_pedals()
    legs: dict[str, Leg] = {fitted[name].foot: worked.rest for name, worked in sitting.pedals.items()}
    either = next(iter(legs.values()))
    for side, hip, arm in zip(("left", "right"), sitting.hips, sitting.hands or (), strict=True):
        joints |= _arm(arm, side) | _leg(legs.get(side, either), side) | {f"hip_{side}": hip}
    return joints


def _arm(arm: Arm, side: str) -> dict[str, Points]:
    return {f"shoulder_{side}": arm.shoulder, f"elbow_{side}": arm.elbow, f"grip_{side}": arm.grip}


def _leg(leg: Leg, side: str) -> dict[str, Points]:
    return {
        f"hip_{side}": leg.hip,
        f"knee_{side}": leg.knee,
        f"ankle_{side}": leg.ankle,
        f"heel_{side}": leg.foot.heel,
        f"toe_{side}": leg.foot.toe,
    }
