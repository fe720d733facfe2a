"""What a rework may change: how far, in which steps, and what it costs."""

import math
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.effort import Change, Effort, Kind
from fitcalc.documents.setup import Setup
from fitcalc.units import Floats

EFFORTS = Path(__file__).parent / "data" / "efforts.toml"
PEDAL_WAYS = ("stand_off", "longer_arm")
HAIR = 1e-9
AS_GIVEN = Effort()
"""Spans of the car, steps and minutes of the program."""


@dataclass(frozen=True)
class Variable:
    """One thing that a rework may change.

    Attributes:
        path: of the setup, as in `brake.stand_off`.
        unit: of the change, mm or deg.
        work: bolt_on, drilling, welding or new_bracket.
        low, high: allowed span; 0 is as found.
        step: what can be set; places are counted from 0.
        fixed: minutes at the bench once it is changed at all.
        per_unit: minutes for every mm or deg.
    """

    path: str
    title: str
    unit: str
    work: Kind
    low: float
    high: float
    step: float
    fixed: float
    per_unit: float

    def places(self) -> Floats:
        """Every value that can be set, from low to high."""
        return stops(self.low, self.high, self.step)

    def cost(self, values: Floats) -> Floats:
        """Minutes that these changes take; none for no change."""
        size = np.abs(values)
        return np.where(size > HAIR, self.fixed + self.per_unit * size, 0.0)


def stops(low: float, high: float, pitch: float) -> Floats:
    """Places from low to high in steps of the pitch, counted from 0, which is where it was found."""
    first, last = math.ceil(low / pitch - HAIR), math.floor(high / pitch + HAIR)
    return pitch * np.arange(first, last + 1, dtype=float)


def variables_for(car: Car, effort: Effort = AS_GIVEN) -> tuple[Variable, ...]:
    """Everything that may be changed on this car, placement first, then the pedals.

    Args:
        car: says how far each part may go.
        effort: the user's own spans, steps and minutes.
    """
    found = [_variable(path, span, car, effort) for path, span in _spans(car).items()]
    return tuple(each for each in found if each.high - each.low > HAIR)


def value_at(setup: Setup, path: str) -> Floats:
    """A number of the setup as an array over cases."""
    node: Any = setup
    for step in path.split("."):
        node = getattr(node, step)
    return np.atleast_1d(np.asarray(node, dtype=float))


def _spans(car: Car) -> dict[str, tuple[float, float]]:
    rails, pedals, wheel, harness = car.rails, car.pedals, car.steering_wheel, car.harness
    anchor = defaults()["shoulder_anchor_raise"]
    spans = {
        "seat_travel": (-rails.rearward_travel, rails.forward_travel),
        "seat_raise": (-rails.lower_travel, rails.raise_travel),
        "recline": (-rails.upright_travel, rails.recline_travel),
        "box_travel": (-pedals.box_forward, pedals.box_rearward),
        "wheel_spacer": (0.0, 0.0 if wheel is None else wheel.spacer_max),
        "cushion_insert": (0.0, car.seat.cushion_insert_max),
        "back_insert": (0.0, car.seat.back_insert_max),
        "shoulder_anchor_raise": (0.0, 0.0) if harness is None else (anchor["low"], anchor["high"]),
    }
    for name, pedal in car.fitted_pedals().items():
        spans |= {f"{name}.{way}": (0.0, getattr(pedal, f"max_{way}")) for way in PEDAL_WAYS}
    return spans


def _variable(path: str, span: tuple[float, float], car: Car, effort: Effort) -> Variable:
    pedal, _, kind = path.rpartition(".")
    row, own = defaults()[kind], _own(path, effort)
    work = own.get("work") or _work(path, row["work"], car)
    once: dict[str, Any] = {**dues(), **effort.work.model_dump(exclude_none=True)}
    title = f"{pedal} {row['title']}" if pedal else row["title"]
    return Variable(
        path=path,
        title=title,
        unit=row["unit"],
        work=work,
        low=max(span[0], own.get("low", span[0])),
        high=min(span[1], own.get("high", span[1])),
        step=own.get("step") or _pitch(path, row["step"], car),
        fixed=float(own.get("fixed", once[work])),
        per_unit=float(own.get("per_unit", row["per_unit"])),
    )


def _own(path: str, effort: Effort) -> dict[str, Any]:
    """What the user gave for one change: what holds for one pedal ahead of what holds for all."""
    pedal, _, kind = path.rpartition(".")
    own: Change = getattr(effort, kind)
    alone: Change = getattr(getattr(effort, pedal), kind) if pedal else own
    return own.model_dump(exclude_none=True) | alone.model_dump(exclude_none=True)


def _work(path: str, usual: Kind, car: Car) -> Kind:
    pedal = path.partition(".")[0]
    if path == "seat_travel" and car.rails.kind == "fixed":
        return "new_bracket"
    if path.endswith(PEDAL_WAYS) and car.fitted_pedals()[pedal].bar.joint == "welded":
        return "welding"
    return usual


def _pitch(path: str, usual: float, car: Car) -> float:
    if path == "seat_travel" and car.rails.kind == "drilled":
        return car.rails.hole_pitch
    return (car.pedals.box_pitch or usual) if path == "box_travel" else usual


@cache
def _file() -> Mapping[str, Any]:
    return MappingProxyType(tomllib.loads(EFFORTS.read_text(encoding="utf-8")))


def defaults() -> dict[str, dict[str, Any]]:
    """The program's own figures by path, or what follows the pedal's name."""
    return {row["path"]: row for row in _file()["variable"]}


def dues() -> dict[str, float]:
    """Minutes due once, by kind of work."""
    return dict(_file()["work"])
