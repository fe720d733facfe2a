"""The straps, pulled tight, between the points that their checks were measured at."""

from collections.abc import Iterator, Mapping

import numpy as np

from fitcalc.checks.check import Figure
from fitcalc.checks.pelvis_straps import crotch_strap_ends, lap_contact
from fitcalc.checks.straps import lap_anchor, on_pelvis, shoulder_anchor
from fitcalc.documents.car_cockpit import Harness
from fitcalc.fit.result import Result
from fitcalc.geometry.side import at_y
from fitcalc.present.picture import XY, Circle, Line, Primitive, View, seen
from fitcalc.units import Points

OVER_SHOULDER = 7
"""Points of a strap on the round of the shoulder."""


def harness_drawing(result: Result, view: View) -> Iterator[Primitive]:
    """Every strap from the buckle or the groin to its anchor, near side last."""
    harness = result.car.harness
    if harness is None:
        return
    for name, line in strap_lines(result, harness).items():
        ref = f"car.harness.{name}"
        drawn: tuple[XY, ...] = tuple(seen(point, view) for point in line)
        yield Line(f"strap.{name}", "strap", ref, drawn)
        yield Circle(f"strap.{name}.anchor", "solid", ref, drawn[-1], 11.0)


def strap_lines(result: Result, harness: Harness) -> dict[str, tuple[Points, ...]]:
    """Points along every strap by the name of its anchor in the car's file."""
    case = result.case
    figures = {check.figure.id: check.figure for check in result.checks}
    lines: dict[str, tuple[Points, ...]] = {}
    for at, (name, (anchor, start_y)) in enumerate(crotch_strap_ends(harness, case).items()):
        groin = on_pelvis(case, result.links.groin_ahead_of_hip, result.links.groin_above_hip)
        lines[f"crotch.{at}"] = (*_bent(name, (at_y(groin, start_y),), figures), anchor)
    buckle = lap_contact(case)
    for side in ("right", "left"):
        lap = _bent(f"lap_{side}", (), figures)
        lines[f"lap_{side}"] = (buckle, *lap, lap_anchor(harness, side, case))
        shoulder = _bent(f"shoulder_{side}", (), figures)
        lines[f"shoulder_{side}"] = (
            buckle,
            *_over_shoulder(shoulder[:1], result),
            *shoulder,
            shoulder_anchor(harness, side, case),
        )
    return lines


def _bent(name: str, otherwise: tuple[Points, ...], figures: Mapping[str, Figure]) -> tuple[Points, ...]:
    """Where a strap leaves the body, and its slot where there is one."""
    for figure, count in ((f"harness.{name}.slot_turn", 2), (f"harness.{name}.side_angle", 1)):
        if figure in figures and figures[figure].evidence:
            return figures[figure].evidence[:count]
    return otherwise


def _over_shoulder(leaves: tuple[Points, ...], result: Result) -> Iterator[Points]:
    """The strap's way round the shoulder, from the chest to where it leaves."""
    trunk = result.sitting.trunk
    radius = float(result.links.strap_above_shoulder[0])
    for end in leaves:
        offset = end[0] - trunk.shoulder[0]
        first = 180.0 - float(trunk.recline[0])
        last = float(np.degrees(np.arctan2(offset[2], offset[0])))
        turns = np.radians(np.linspace(first, last, OVER_SHOULDER, endpoint=False))
        x, z = trunk.shoulder[0, 0] + radius * np.cos(turns), trunk.shoulder[0, 2] + radius * np.sin(turns)
        yield from (np.array([[at_x, end[0, 1], at_z]]) for at_x, at_z in zip(x, z, strict=True))
