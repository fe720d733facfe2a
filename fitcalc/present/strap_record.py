"""The straps of one or several drivers, and the slots to cut, as one JSON record: `fitcalc straps`."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal

import numpy as np
from pydantic import Field

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.slot_figures import KILONEWTON, SlottedStrap, slotted_straps
from fitcalc.checks.slots import SlotCut
from fitcalc.checks.strap_forces import edge_force
from fitcalc.checks.strap_windows import Axis, LimitWindows, Window, shared_window, windows
from fitcalc.checks.straps import SIDES
from fitcalc.documents.setup import Setup
from fitcalc.fit.propagation import Spread
from fitcalc.fit.result import Result
from fitcalc.fit.slot_study import SlotSpread, guide_wrap, least_radius, most_turn, one_for_all, slot_spreads
from fitcalc.geometry.degrees import atan2d, cosd, length
from fitcalc.geometry.side import at_y
from fitcalc.present.parts import Record
from fitcalc.present.record import CheckRecord, check_rows
from fitcalc.present.wording import CAUTIONS
from fitcalc.units import Deg

STRAIGHT = 0.5
"""A strap bent less than this at its slot counts as straight, deg."""


class StrapRecord(Record):
    """One strap as it runs now; mm, deg, forces per kN of strap tension."""

    name: str
    side_angle: float = Field(
        description="From level at its contact, positive when the anchor is lower; a crotch strap's from the downward "
        "vertical, positive when the anchor is further back."
    )
    plan_angle: float | None = Field(
        description="From the car's length; positive when it converges rearward."
    )
    length: float = Field(description="From the front of the body to the anchor.")
    spine_load: float | None = Field(
        description="N/kN, of the run behind the shoulder; positive presses the spine together. Shoulder straps only."
    )
    sensitivity: float = Field(description="Side angle lost for each mm that the anchor is raised, deg.")
    body_wrap: float
    slot_turn: float
    slot_force: float = Field(description="On the slot's edge, no friction, N/kN.")
    guide_wrap: float
    bears: bool
    shell: str = Field(description="Whether it bears on the shell, in words.")


class WindowRecord(Record):
    """Places of one anchor that pass one limit, or all of them together; null = open on that side."""

    strap: str
    limit: str = Field(description="Id of the limit row; empty for all together.")
    rules: str
    holds: Literal["must", "should"]
    moves: str
    axis: Axis
    low: float | None
    high: float | None
    present: float
    move: float = Field(description="Shortest move that passes, positive along the axis; 0 inside.")
    empty: bool = Field(description="No place passes.")
    source: str


class Ranged(Record):
    """A dimension with the interval that holds 90 % of the drawn cases, mm."""

    value: float
    low: float
    high: float


class SlotRecord(Record):
    """The slot that leaves one strap straight, in the seat's own frame."""

    strap: str
    needed: bool = Field(description="False where the strap ends short of the shell or passes over its edge.")
    why_none: str = Field(description="Why no slot is needed, in words; empty where one is.")
    over: float = Field(
        description="How far the slot would reach beyond the rim or the cushion's front edge."
    )
    cut: bool = Field(description="Whether there is a slot for this strap already.")
    x: Ranged
    y: Ranged
    z: Ranged
    along: Ranged = Field(description="Up the back, along the cushion, or in the side wall from the pelvis.")
    length: Ranged
    height: Ranged


class StrapsOfDriver(Record):
    """One driver's straps, windows and slots."""

    driver: str
    setup: Setup
    straps: list[StrapRecord]
    windows: list[WindowRecord]
    slots: list[SlotRecord]
    checks: list[CheckRecord]


class SharedRecord(Record):
    """One slot for all the drivers, or by how much there is none; mm in the seat's own frame."""

    strap: str
    exists: bool
    x: float
    y: float
    z: float
    play: float = Field(description="How far along the shell the middle may move and still suit all.")
    shortfall: float
    length: float
    height: float
    tall: float = Field(description="Height of one slot that leaves every driver's strap straight.")


class StrapsRecord(Record):
    """Everything about the straps of one car for one or several drivers."""

    format: Literal[1] = 1
    car: str
    rules: str
    least_edge_radius: float = Field(description="Of a slot's edge or bushing, mm.")
    most_turn: float = Field(description="Most that a slot may bend its strap, deg.")
    drivers: list[StrapsOfDriver]
    shared: list[SharedRecord]
    cautions: list[str]

    @property
    def anything_fails(self) -> bool:
        """Whether a limit on the straps that must hold is broken for any driver."""
        return any(check.status == "fail" for each in self.drivers for check in each.checks)


def straps_record(results: Sequence[Result]) -> StrapsRecord:
    """The record of one car's straps, one result for each driver."""
    first = results[0]
    return StrapsRecord(
        car=first.car.name,
        rules=first.rules.id,
        least_edge_radius=least_radius(first),
        most_turn=most_turn(first),
        drivers=[_of_driver(result) for result in results],
        shared=list(_shared(results)) if len(results) > 1 else [],
        cautions=list(CAUTIONS),
    )


def _of_driver(result: Result) -> StrapsOfDriver:
    case, harness = result.case, result.car.harness
    straps = [] if harness is None else slotted_straps(harness, case)
    limits = [] if harness is None else list(windows(result.checks, harness, case))
    spreads = slot_spreads(result) if straps else {}
    return StrapsOfDriver(
        driver=result.driver.name,
        setup=result.setup,
        straps=[_strap(strap, result) for strap in straps],
        windows=[*(row for each in limits for row in _window_rows(each)), *_together(limits)],
        slots=[_slot(strap, spreads[strap.name]) for strap in straps],
        checks=[check for check in check_rows(result) if check.id.startswith("harness.")],
    )


def _strap(strap: SlottedStrap, result: Result) -> StrapRecord:
    figures = {figure.id: figure for figure in result.figures}
    run = strap.straight.first - strap.straight.leaves
    drop, side = _drop(strap, result.case), SIDES.get(strap.name.partition("_")[2], 0.0)
    reach = length(at_y(run, 0.0 * drop))
    bears, shell = _on_shell(strap, figures)
    upright = strap.name.startswith("crotch")
    return StrapRecord(
        name=strap.name,
        side_angle=90.0 - drop[0] if upright else drop[0],
        plan_angle=None if upright else atan2d(-side * run[:, 1], np.abs(run[:, 0]))[0],
        length=strap.tight.length[0],
        spine_load=_first(figures.get(f"harness.{strap.name}.spine_load")),
        sensitivity=(-1.0 if upright else 1.0) * np.degrees(cosd(drop) / np.maximum(reach, 1.0))[0],
        body_wrap=strap.tight.wrap[0],
        slot_turn=strap.tight.turn[0],
        slot_force=edge_force(KILONEWTON, KILONEWTON, strap.tight.turn)[0],
        guide_wrap=guide_wrap(strap),
        bears=bears,
        shell=shell,
    )


def _drop(strap: SlottedStrap, case: Case) -> Deg:
    """Side-view angle of the straight strap; a lap strap's from its contact on the front of the pelvis."""
    start = strap.straight.line[:, 0] if strap.name.startswith("lap") else strap.straight.leaves
    run = strap.straight.first - start
    return case.full(atan2d(-run[:, 2], run[:, 0]))


def _on_shell(strap: SlottedStrap, figures: dict[str, Figure]) -> tuple[bool, str]:
    if strap.slot is not None:
        turn = float(strap.tight.turn[0])
        bent = turn > STRAIGHT
        return bent, f"bears on its slot's edge, {turn:.0f} deg" if bent else "straight through its slot"
    over = _first(figures.get(f"harness.{strap.name}.shell_clearance"))
    if over is not None:
        return (
            over < 0.0,
            f"bears on the rim by {-over:.0f} mm" if over < 0.0 else f"clears the rim by {over:.0f} mm",
        )
    needed = bool(strap.cut.needed[0])
    return needed, "no slot yet: the shell is in its way" if needed else no_slot(strap.cut)


def no_slot(cut: SlotCut) -> str:
    """Why a strap needs no slot, in words; empty where it needs one."""
    if cut.needed[0]:
        return ""
    if not cut.passes_over[0]:
        return "ends short of the shell"
    return "passes over the rim" if cut.strap.startswith("shoulder") else "passes ahead of the cushion"


def _first(figure: Figure | None) -> float | None:
    return None if figure is None or figure.value is None else float(figure.value[0])


def _window_rows(limit: LimitWindows) -> Iterator[WindowRecord]:
    check = limit.check
    for holds, given in _by_force(limit):
        for window in given:
            yield _window(window, limit.strap, holds, check.limit, check.rules, str(check.source or ""))


def _by_force(limit: LimitWindows) -> tuple[tuple[Literal["must", "should"], tuple[Window, ...]], ...]:
    return ("must", limit.must), ("should", limit.should)


def _together(limits: Sequence[LimitWindows]) -> Iterator[WindowRecord]:
    """What all limits on each strap leave: those that must hold, then with those that should."""
    axes: tuple[Axis, ...] = ("z", "x")
    for strap in dict.fromkeys(limit.strap for limit in limits):
        own = [limit for limit in limits if limit.strap == strap]
        for axis in axes:
            must = _along(axis, (window for limit in own for window in limit.must))
            should = _along(axis, (window for limit in own for window in limit.should))
            both: tuple[tuple[Literal["must", "should"], list[Window]], ...] = (
                ("must", must),
                ("should", [*must, *should] if should else []),
            )
            for holds, given in both:
                shared = shared_window(given)
                if shared is not None:
                    yield _window(shared, strap, holds, "", "", "")


def _along(axis: Axis, given: Iterable[Window]) -> list[Window]:
    return [window for window in given if window.axis == axis]


def _window(
    window: Window, strap: str, holds: Literal["must", "should"], limit: str, rules: str, source: str
) -> WindowRecord:
    return WindowRecord(
        strap=strap,
        limit=limit,
        rules=rules,
        holds=holds,
        moves=window.moves,
        axis=window.axis,
        low=None if window.low is None else float(window.low[0]),
        high=None if window.high is None else float(window.high[0]),
        present=float(window.present[0]),
        move=float(window.move[0]),
        empty=bool(window.is_empty[0]),
        source=source,
    )


def _slot(strap: SlottedStrap, spread: SlotSpread) -> SlotRecord:
    cut = strap.cut
    x, y, z = cut.in_seat[0]
    return SlotRecord(
        strap=strap.name,
        needed=bool(cut.needed[0]),
        why_none=no_slot(cut),
        over=float(cut.over[0]),
        cut=strap.slot is not None,
        x=_ranged(x, spread.x),
        y=_ranged(y, spread.y),
        z=_ranged(z, spread.z),
        along=_ranged(cut.along[0], spread.along),
        length=_ranged(cut.length[0], spread.length),
        height=_ranged(cut.height[0], spread.height),
    )


def _ranged(value: float, spread: Spread) -> Ranged:
    return Ranged(value=value, low=spread.low, high=spread.high)


def _shared(results: Sequence[Result]) -> Iterator[SharedRecord]:
    harness = results[0].car.harness
    names = [] if harness is None else [strap.name for strap in slotted_straps(harness, results[0].case)]
    for name in names:
        found = one_for_all(results, name)
        if found is None:
            continue
        x, y, z = found.centre
        yield SharedRecord(
            strap=name,
            exists=found.exists,
            x=x,
            y=y,
            z=z,
            play=float((found.shared.high - found.shared.low)[0]),
            shortfall=float(found.shared.shortfall[0]),
            length=found.length,
            height=found.height,
            tall=found.tall,
        )
