"""The slots of a seat as figures: where each should be, and what the one that is there does to its strap."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, unmeasured
from fitcalc.checks.pelvis_straps import crotch_strap, crotch_strap_ends, slotted_lap, straight_lap
from fitcalc.checks.shoulder_straps import slotted_shoulder, straight_shoulder
from fitcalc.checks.slots import SlotCut, back, crotch_cut, lap_cut, shoulder_cut
from fitcalc.checks.strap_forces import edge_force
from fitcalc.checks.straps import SIDES, Strap, slot_centre, slot_for
from fitcalc.documents.car_cockpit import Harness
from fitcalc.documents.car_seat import Slot
from fitcalc.geometry.lines import distance_to_line
from fitcalc.geometry.side import dot
from fitcalc.posture.cases import column
from fitcalc.units import Mm

SLOT = "harness.slot"
KILONEWTON = np.array([1000.0])


@dataclass(frozen=True, eq=False)
class SlottedStrap:
    """One strap with the slot it should have and the one it has.

    Attributes:
        straight: as the rules speak of it.
        width: of the webbing.
        cut: the slot that would leave it straight.
        slot: already cut, or None.
        tight: as that slot leads it; the straight strap where there is none.
    """

    name: str
    straight: Strap
    width: Mm
    cut: SlotCut
    slot: Slot | None
    tight: Strap


def slotted_straps(harness: Harness, case: Case) -> list[SlottedStrap]:
    """Every strap that passes the shell, with its slot."""
    shoulders = [_shoulder(harness, side, case) for side in SIDES]
    laps = [_lap(harness, side, case) for side in SIDES]
    return [*shoulders, *laps, *_crotches(harness, case)]


def slot_figures(straps: Iterable[SlottedStrap], case: Case) -> list[Figure]:
    """Where the straight straps cross the shell, and how the slots already cut suit them."""
    return [figure for strap in straps for figure in _figures(strap, case)]


def _shoulder(harness: Harness, side: str, case: Case) -> SlottedStrap:
    name, width = f"shoulder_{side}", column(harness.shoulder_width)
    straight, slot = straight_shoulder(harness, side, case), slot_for(name, case)
    tight = straight if slot is None else slotted_shoulder(harness, side, slot, case)
    return SlottedStrap(name, straight, width, shoulder_cut(name, straight, width, case), slot, tight)


def _lap(harness: Harness, side: str, case: Case) -> SlottedStrap:
    name, width = f"lap_{side}", column(harness.lap_width)
    straight, slot = straight_lap(harness, side, case), slot_for(name, case)
    tight = straight if slot is None else slotted_lap(harness, side, slot, case)
    return SlottedStrap(name, straight, width, lap_cut(name, straight, width, case), slot, tight)


def _crotches(harness: Harness, case: Case) -> Iterator[SlottedStrap]:
    for name, (anchor, start) in crotch_strap_ends(harness, case).items():
        straight, slot = crotch_strap(anchor, start, None, harness, case), slot_for(name, case)
        tight = straight if slot is None else crotch_strap(anchor, start, slot, harness, case)
        width = column(harness.lap_width)
        yield SlottedStrap(name, straight, width, crotch_cut(name, straight, width, case), slot, tight)


def _figures(strap: SlottedStrap, case: Case) -> list[Figure]:
    own, of, cut = f"harness.{strap.name}.slot", _worded(strap.name), strap.cut
    wanted = {"length": cut.length, "height": cut.height}
    wanted = dict(zip("xyz", cut.in_seat.T, strict=True)) | wanted
    figures = [
        measured(case, f"{own}_{key}", value, (cut.at,), f"{SLOT}.{key}", of) for key, value in wanted.items()
    ]
    if strap.slot is not None:
        return figures + _as_cut(strap, strap.slot, case)
    if strap.name.startswith("shoulder"):
        return [*figures, _over_rim(strap, case)]
    return [*figures, unmeasured(f"{own}_turn", f"seat.slots ({strap.name})", f"{SLOT}.turn", of)]


def _as_cut(strap: SlottedStrap, slot: Slot, case: Case) -> list[Figure]:
    own, of, cut = f"harness.{strap.name}.slot", _worded(strap.name), strap.cut
    middle, turn = slot_centre(slot, case), strap.tight.turn
    aside = cut.at - middle
    end_gap = (column(slot.length) - strap.width) / 2 - np.abs(dot(aside, cut.slot_line))
    rows = {
        "offset": (dot(aside, cut.upward), (middle, cut.at)),
        "turn": (turn, (strap.tight.leaves, strap.tight.gate, strap.tight.first)),
        "end_gap": (end_gap, (middle, cut.at)),
        "edge_force": (edge_force(KILONEWTON, KILONEWTON, turn), (strap.tight.gate,)),
        "edge_radius": (column(slot.edge_radius), (middle,)),
    }
    return [measured(case, f"{own}_{key}", *row, f"{SLOT}.{key}", of) for key, row in rows.items()]


def _over_rim(strap: SlottedStrap, case: Case) -> Figure:
    top = back(case)[:, -1]
    clearance = distance_to_line(top, strap.straight.leaves, strap.straight.first)
    ends = (top, strap.straight.leaves, strap.straight.first)
    own, of = f"harness.{strap.name}.shell_clearance", _worded(strap.name)
    return measured(case, own, clearance, ends, "harness.shoulder.shell_clearance", of)


def _worded(strap: str) -> str:
    kind, _, side = strap.partition("_")
    return f"{side} {kind} strap".strip()
