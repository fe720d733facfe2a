"""Lap straps round the pelvis, and crotch straps from the groin."""

from dataclasses import dataclass

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.straps import SIDES, Strap, crotch_anchors, lap_anchor, on_pelvis, slot_ends
from fitcalc.documents.car_cockpit import Harness
from fitcalc.documents.car_seat import Slot
from fitcalc.geometry.degrees import included, length, unit
from fitcalc.geometry.side import across, at_y, dot, row_of, scaled
from fitcalc.geometry.taut import Roller, Taut, plane, taut, through_segment
from fitcalc.posture.cases import column
from fitcalc.units import Mm, Points

ACROSS = np.array([[0.0, 1.0, 0.0]])
SQUARE = np.array([90.0])
SETTLING = 6
"""Rounds until the pelvis and the slot agree on where the strap leaves and passes; tested to 0.01 mm."""


def lap_contact(case: Case) -> Points:
    """The middle of the lap strap on the front of the pelvis."""
    return on_pelvis(case, case.links.lap_ahead_of_hip, case.links.lap_above_hip)


def groin(case: Case) -> Points:
    """Where crotch straps leave the body, on the middle plane."""
    return on_pelvis(case, case.links.groin_ahead_of_hip, case.links.groin_above_hip)


def straight_lap(harness: Harness, side: str, case: Case) -> Strap:
    """The strap that the rules speak of: round the corner of the pelvis straight to the anchor."""
    anchor = lap_anchor(harness, side, case)
    path, line, reach = _round_pelvis(_pelvis(side, case), anchor)
    whole = reach + path.length
    return Strap(line, line[:, -2], anchor, anchor, anchor, whole, np.zeros(case.count), path.wrap)


def slotted_lap(harness: Harness, side: str, slot: Slot, case: Case) -> Strap:
    """The strap as its slot leads it, cut in the side of the shell square to the straight strap."""
    anchor, pelvis = lap_anchor(harness, side, case), _pelvis(side, case)
    low, high = slot_ends(slot, column(harness.lap_width), lap_slot_line(anchor, case), case)
    gate = (low + high) / 2
    for _ in range(SETTLING):
        leaves = _round_pelvis(pelvis, gate)[1][:, -2]
        gate = through_segment(leaves, anchor, low, high)
    path, line, reach = _round_pelvis(pelvis, gate)
    leaves = line[:, -2]
    turn = 180.0 - included(leaves, gate, anchor)
    whole = reach + path.length + length(anchor - gate)
    line = np.concatenate([line, anchor[:, None]], axis=1)
    return Strap(line, leaves, gate, anchor, anchor, whole, turn, path.wrap)


def lap_slot_line(anchor: Points, case: Case) -> Points:
    """Direction of a lap slot: in side view, square to the straight strap."""
    return across(_toward(anchor, lap_contact(case)))


def crotch_strap(anchor: Points, start_y: Mm, slot: Slot | None, harness: Harness, case: Case) -> Strap:
    """A crotch strap from the groin to an anchor; its slot is level and lies across the car."""
    start, none = at_y(groin(case), start_y), np.zeros(case.count)
    if slot is None:
        line = np.stack([start, anchor], axis=1)
        return Strap(line, start, anchor, anchor, anchor, length(anchor - start), none, none)
    low, high = slot_ends(slot, column(harness.lap_width), ACROSS, case)
    gate = through_segment(start, anchor, low, high)
    whole = length(gate - start) + length(anchor - gate)
    line = np.stack([start, gate, anchor], axis=1)
    return Strap(line, start, gate, anchor, anchor, whole, 180.0 - included(start, gate, anchor), none)


def crotch_strap_ends(harness: Harness, case: Case) -> dict[str, tuple[Points, Mm]]:
    """Anchor and y at the groin of each crotch strap, by the name its slot would have.

    The outer two lie side by side at the groin (design inference); a single or third strap lies on the
    middle plane.
    """
    if not harness.crotch:
        return {}
    anchors, middle = crotch_anchors(harness, case), groin(case)[:, 1]
    half = column(harness.lap_width) / 2
    outer = {"crotch_left": (anchors[:, 0], middle - half), "crotch_right": (anchors[:, -1], middle + half)}
    single = {"crotch": (anchors[:, anchors.shape[1] // 2], middle)}
    return {1: single, 2: outer, 3: outer | single}[len(harness.crotch)]


@dataclass(frozen=True, eq=False)
class _Pelvis:
    """The front of the pelvis on one side.

    Attributes:
        contact: middle of the strap on it.
        hip: middle between the hip joints.
        outward: direction to the side.
        half: half its width, with the hips or the shell that holds them.
    """

    contact: Points
    hip: Points
    outward: Points
    half: Mm


def _pelvis(side: str, case: Case) -> _Pelvis:
    half = np.minimum(case.full(case.links.hip_breadth) / 2, column(case.car.seat.half_width))
    return _Pelvis(lap_contact(case), case.sitting.trunk.hip, SIDES[side] * ACROSS, half)


def _toward(target: Points, contact: Points) -> Points:
    """Direction in side view from the front of the pelvis to where the strap goes."""
    return unit(at_y(target, contact[:, 1]) - contact)


def _round_pelvis(pelvis: _Pelvis, target: Points) -> tuple[Taut, Points, Mm]:
    """The strap from the middle of the pelvis to a point, in the plane that it lies in.

    The front of the pelvis is flat across and its corner round: a quarter circle that ends abreast of the
        hip joint,
    where the pelvis is as wide as the hips, or as the shell that holds them (design inference).

    Returns:
        The path from the corner on, its line from the middle `(n, k, 3)`, and the length on the flat front.
    """
    contact, outward, half = pelvis.contact, pelvis.outward, pelvis.half
    toward = _toward(target, contact)
    corner = np.clip(dot(pelvis.hip - contact, toward), 0.0, half)
    offset, flat = target - contact, half - corner
    path = taut(SQUARE, Roller(plane(corner, flat), corner), plane(dot(offset, toward), dot(offset, outward)))
    corners = (plane(0.0, flat), path.leaves, path.end)
    places = [contact + scaled(toward, at[:, 0]) + scaled(outward, at[:, 1]) for at in corners]
    return path, row_of([contact, *places]), flat
