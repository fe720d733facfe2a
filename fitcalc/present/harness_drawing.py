"""The straps, pulled tight, and the points they start from and run to."""

from collections.abc import Iterator, Mapping

from fitcalc.checks.case import Case
from fitcalc.checks.pelvis_straps import crotch_strap, crotch_strap_ends, slotted_lap, straight_lap
from fitcalc.checks.shoulder_straps import slotted_shoulder, straight_shoulder
from fitcalc.checks.straps import Strap, slot_for
from fitcalc.documents.car_cockpit import Harness
from fitcalc.fit.result import Result
from fitcalc.present.picture import XY, Circle, Line, Primitive, Style, View, seen
from fitcalc.units import Points



def harness_drawing(result: Result, view: View, prefix: str = "strap", style: Style = "strap") -> Iterator[Primitive]:
    """Every strap from the body to its anchor, near side last."""
    harness = result.car.harness
    if harness is None:
        return
    laid = straps(result, harness)
    for name, strap in laid.items():
        ref = f"car.harness.{name}"
        line = line_of(strap.line, view)
        if name.startswith("shoulder"):
            line = (seen(laid[name.replace("shoulder", "lap")].line[:, 0], view), *line)
        yield Line(f"{prefix}.{name}", style, ref, line)
        if style == "strap":
            yield Circle(f"{prefix}.{name}.anchor", "solid", ref, seen(strap.anchor, view), 11.0)


def straps(result: Result, harness: Harness) -> Mapping[str, Strap]:
    """Every strap by the name of its anchor in the car's file, as its slot leads it."""
    case = Case(result.car, result.driver, result.links, result.setup, result.sitting)
    found: dict[str, Strap] = {}
    for at, (name, (anchor, start)) in enumerate(crotch_strap_ends(harness, case).items()):
        found[f"crotch.{at}"] = crotch_strap(anchor, start, slot_for(name, case), harness, case)
    for side in ("right", "left"):
        lap, shoulder = slot_for(f"lap_{side}", case), slot_for(f"shoulder_{side}", case)
        found[f"lap_{side}"] = slotted_lap(harness, side, lap, case) if lap else straight_lap(harness, side, case)
        found[f"shoulder_{side}"] = (
            slotted_shoulder(harness, side, shoulder, case) if shoulder else straight_shoulder(harness, side, case)
        )
    return found


def line_of(points: Points, view: View) -> tuple[XY, ...]:
    """The first case of a line `(n, k, 3)` as seen in a view."""
    return tuple(seen(points[:, at], view) for at in range(points.shape[1]))
