"""Whether an extension bar and its joint hold, what governs, and the least stock size that does."""

from dataclasses import dataclass, replace
from functools import reduce

import numpy as np
from numpy.typing import NDArray

from fitcalc.making.bar_loads import FootForce, Reach, RootLoad, on_longer_arm, on_stand_off
from fitcalc.making.bar_modes import bar_modes
from fitcalc.making.bars import end_deflection, moment_deflection
from fitcalc.making.joints import Bolted, Joint, Welded, bolted_modes, welded_modes
from fitcalc.making.materials import Material, welded_yield, yield_stress
from fitcalc.making.modes import Mode, safeties
from fitcalc.making.sections import Section
from fitcalc.making.stock import Stock
from fitcalc.units import Bools, Floats, Mm

UNCHECKED = "The pedal's own arm and pivot are not part of this check."


@dataclass(frozen=True, eq=False)
class BarJob:
    """A bar to make: the load, how far it reaches, what it is made of and how it is held."""

    foot: FootForce
    reach: Reach
    section: Section
    material: Material
    joint: Joint


@dataclass(frozen=True, eq=False)
class BarCheck:
    """Every way a bar can fail.

    Attributes:
        modes: named after the bar ("longer arm" or "stand-off") and the mode.
        deflection: of the pad, upper bound: both bars' own bending in the side view added up.
        advice: what the person who makes it should know.
    """

    modes: tuple[Mode, ...]
    deflection: Mm
    advice: tuple[str, ...]

    @property
    def safety(self) -> Floats:
        """Least factor of safety."""
        return reduce(np.minimum, (mode.safety for mode in self.modes))

    @property
    def governing(self) -> NDArray[np.intp]:
        """Which of `modes` has the least factor of safety."""
        return np.argmin(safeties(self.modes), axis=-1)


@dataclass(frozen=True, eq=False)
class StockChoice:
    """The least of some stock sizes that passes.

    Attributes:
        stock: the sizes tried, least area first.
        index: which of them, `(n,)`; the strongest one where none passes.
        safety: its factor of safety.
        shortfall: factor of safety that is missing; 0 where one passes.
    """

    stock: tuple[Stock, ...]
    index: NDArray[np.intp]
    safety: Floats
    shortfall: Floats


def check_bar(job: BarJob) -> BarCheck:
    """Every way in which the bar and its joint can fail at the design load."""
    longer, stand_off = on_longer_arm(job.foot, job.reach), on_stand_off(job.foot, job.reach)
    modes = (*_named("longer arm", longer, job), *_named("stand-off", stand_off, job))
    deflection = _bent(longer, job) + _bent(stand_off, job)
    return BarCheck(modes, deflection, _advice(job))


def thinnest_stock(job: BarJob, stock: tuple[Stock, ...], wanted: Floats) -> StockChoice:
    """The size with the least cross-section that reaches the wanted factor of safety.

    Args:
        job: the bar; its section is replaced by each size in turn.
        stock: sizes of one shape, as from `stock.stock_sizes`.
        wanted: factor of safety.
    """
    sizes = tuple(sorted(stock, key=lambda size: float(size.section.area[0])))
    reached = np.stack([check_bar(replace(job, section=size.section)).safety for size in sizes], axis=-1)
    passes: Bools = reached >= wanted[:, None]
    index = np.where(np.any(passes, axis=-1), np.argmax(passes, axis=-1), np.argmax(reached, axis=-1))
    safety = np.take_along_axis(reached, index[:, None], axis=-1)[:, 0]
    return StockChoice(sizes, index, safety, np.maximum(wanted - safety, 0.0))


def _named(bar: str, load: RootLoad, job: BarJob) -> tuple[Mode, ...]:
    """Modes of one bar; a bar of no length has none of them, so its demands are 0."""
    there = np.where(load.length > 0.0, 1.0, 0.0)
    modes = (*bar_modes(load, job.section, job.material, _held(job)), *_joint_modes(load, job))
    return tuple(replace(mode, name=f"{bar}: {mode.name}", demand=mode.demand * there) for mode in modes)


def _joint_modes(load: RootLoad, job: BarJob) -> tuple[Mode, ...]:
    if isinstance(job.joint, Welded):
        return welded_modes(load, job.section, job.material, job.joint)
    return bolted_modes(load, job.section, job.material, job.joint)


def _held(job: BarJob) -> Floats:
    strength = welded_yield if isinstance(job.joint, Welded) else yield_stress
    return strength(job.material, job.section.wall)


def _bent(load: RootLoad, job: BarJob) -> Mm:
    stiffness = job.material.modulus * job.section.inertia_depth
    at_end = load.bend_depth - np.abs(load.across) * load.length
    return end_deflection(np.abs(load.across), load.length, stiffness) + moment_deflection(
        at_end, load.length, stiffness
    )


def _advice(job: BarJob) -> tuple[str, ...]:
    joint = _bolt_advice(job.joint) if isinstance(job.joint, Bolted) else job.material.weld_advice
    return (joint, UNCHECKED)


def _bolt_advice(joint: Bolted) -> str:
    apart, away = 3 * joint.bolt.diameter, 2 * joint.bolt.diameter
    told = f"Pitch is the lever: keep the {joint.bolt.id} bolts at least {apart:g} mm apart and {away:g} mm from the end"
    given = [
        f"{float(size[0]):g} mm {where}"
        for size, least, where in ((joint.pitch, apart, "apart"), (joint.edge, away, "from the end"))
        if size[0] < least
    ]
    return f"{told}; the car file gives {' and '.join(given)}." if given else f"{told}."
