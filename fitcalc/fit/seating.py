"""A driver seated anew while something is moved: what the change does not reach stays what it was."""

from collections.abc import Iterable
from dataclasses import dataclass

from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.fields import Document
from fitcalc.documents.setup import Setup
from fitcalc.fit.result import Result
from fitcalc.posture.cases import column
from fitcalc.posture.limbs import Arm
from fitcalc.posture.sit import (
    FeetOnPedal,
    OnPedal,
    Sitting,
    feet_on_pads,
    hands_at,
    on_pedal,
    trunk_and_hips,
    with_leg,
)
from fitcalc.posture.trunk import Trunk
from fitcalc.units import Points

SEAT = ("seat", "rails")
SEAT_MOVES = ("seat_travel", "seat_raise", "recline", "cushion_insert", "back_insert")
"""Parts of the car, and values of the rework, that trunk and hips depend on."""
UNDERFOOT = ("floor", "heel_rest")
"""Parts of the footwell that feet depend on."""


def seated(car: Car, links: Links, setup: Setup, *known: Result) -> Sitting:
    """The driver seated; every part that is as in one of the known results is the very same object as there."""
    of_this_body = tuple(each for each in known if each.links is links)
    anew = _Anew(car, links, setup, of_this_body)
    trunk, hips = anew.trunk_and_hips()
    pedals = {name: anew.on_pedal(name, trunk, hips) for name in car.fitted_pedals()}
    sitting = Sitting(trunk, hips, pedals, anew.hands(trunk))
    return next((each.sitting for each in of_this_body if _is_all_of(sitting, each.sitting)), sitting)


@dataclass(frozen=True)
class _Anew:
    """What is sat in, and results of the same body to take from."""

    car: Car
    links: Links
    setup: Setup
    known: tuple[Result, ...]

    def trunk_and_hips(self) -> tuple[Trunk, tuple[Points, Points]]:
        for each in self.known:
            if _same_parts(SEAT, self.car, each.car) and _same_values(SEAT_MOVES, self.setup, each.setup):
                return each.sitting.trunk, each.sitting.hips
        return trunk_and_hips(self.car, self.links, self.setup)

    def on_pedal(self, name: str, trunk: Trunk, hips: tuple[Points, Points]) -> OnPedal:
        """One pedal with its leg; feet do not ask where the hips are, nor pads where the floor is."""
        alike = [each for each in self.known if self._same_pad(name, each)]
        for each in alike:
            if _same_parts(UNDERFOOT, self.car.footwell, each.car.footwell):
                return self._from_hips(name, trunk, hips, each.sitting.pedals[name])
        if not alike:
            return on_pedal(name, self.car, self.setup, trunk, hips, self.links)
        pads = alike[0].sitting.pedals[name]
        feet = feet_on_pads(name, pads.rest_pad, pads.full_pad, self.car, self.links)
        return with_leg(feet, self._hip(name, hips), trunk, self.links)

    def hands(self, trunk: Trunk) -> tuple[Arm, Arm] | None:
        wheel, spacer = self.car.steering_wheel, self.setup.wheel_spacer
        for each in self.known:
            same_wheel = wheel is each.car.steering_wheel and spacer == each.setup.wheel_spacer
            if same_wheel and trunk is each.sitting.trunk:
                return each.sitting.hands
        return hands_at(self.car, self.links, self.setup, trunk, column(0.0))

    def _same_pad(self, name: str, other: Result) -> bool:
        same_pedal = _same_parts((name,), self.car.pedals, other.car.pedals)
        return same_pedal and _same_values((name, "box_travel"), self.setup, other.setup)

    def _from_hips(self, name: str, trunk: Trunk, hips: tuple[Points, Points], before: OnPedal) -> OnPedal:
        hip = self._hip(name, hips)
        if hip is before.rest.hip:
            return before
        feet = FeetOnPedal(before.rest_pad, before.full_pad, before.rest.foot, before.full.foot)
        return with_leg(feet, hip, trunk, self.links)

    def _hip(self, name: str, hips: tuple[Points, Points]) -> Points:
        return hips[0] if self.car.fitted_pedals()[name].foot == "left" else hips[1]


def _same_parts(names: Iterable[str], one: Document, other: Document) -> bool:
    return all(getattr(one, name) is getattr(other, name) for name in names)


def _same_values(names: Iterable[str], one: Setup, other: Setup) -> bool:
    return all(getattr(one, name) == getattr(other, name) for name in names)


def _is_all_of(one: Sitting, other: Sitting) -> bool:
    return one.trunk is other.trunk and one.hands is other.hands and one.pedals == other.pedals
