"""The helmet under the hoops and against the head restraint."""

from dataclasses import replace

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.head_remedy import HelmetUnder, below
from fitcalc.checks.measured import measured, unmeasured
from fitcalc.documents.car_cockpit import Hoops
from fitcalc.geometry.ellipse import touching_point
from fitcalc.geometry.side import across, point
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.trunk import Trunk
from fitcalc.units import Mm, Points

LOWERED = 75.0
"""How far straight below the main hoop's top the lowered line ends, mm (FIA Formula 1, 2023, 12.5.2)."""
HOOP_FIGURES = ("hoop_line", "brace_line", "lowered_line", "main_top", "main_hoop_fore_aft")


def head_figures(case: Case) -> list[Figure]:
    """Helmet to the lines over the hoops, to the main hoop and to the head restraint."""
    return [*_hoops(case), *_restraint(case)]


def helmet_back(trunk: Trunk) -> Points:
    """Rearmost point of the helmet."""
    return trunk.helmet + point(trunk.helmet_length / 2, 0.0, 0.0)


def helmet_top(trunk: Trunk) -> Points:
    """Highest point of the helmet."""
    return trunk.helmet + point(0.0, 0.0, trunk.helmet_height / 2)


def _hoops(case: Case) -> list[Figure]:
    hoops, trunk = case.car.hoops, case.sitting.trunk
    if hoops is None:
        return [unmeasured(f"head.{name}", "hoops") for name in HOOP_FIGURES]
    main, front = xyz(hoops.main_top), xyz(hoops.front_top)
    lowered = main - [0.0, 0.0, LOWERED]
    top = helmet_top(trunk)
    return [
        _line_figure(case, "head.hoop_line", front, main),
        _brace(case, hoops),
        _line_figure(case, "head.lowered_line", front, lowered),
        measured(case, "head.main_top", main[:, 2] - top[:, 2], (top, main)),
        _fore_aft(case, hoops),
    ]


def _brace(case: Case, hoops: Hoops) -> Figure:
    if hoops.brace_foot is None:
        return unmeasured("head.brace_line", "hoops.brace_foot")
    return _line_figure(case, "head.brace_line", xyz(hoops.main_top), xyz(hoops.brace_foot))


def _line_figure(case: Case, id: str, front: Points, rear: Points) -> Figure:
    trunk, upward = case.sitting.trunk, across(front - rear)
    nearest = touching_point(trunk.helmet, trunk.helmet_length / 2, trunk.helmet_height / 2, upward)
    figure = measured(case, id, below(trunk, front, rear), (nearest, front, rear))
    return replace(figure, mend=HelmetUnder(trunk, case.links, front, rear))


def _fore_aft(case: Case, hoops: Hoops) -> Figure:
    back = helmet_back(case.sitting.trunk)
    face = column(hoops.main_top.x) - column(hoops.tube) / 2
    return measured(case, "head.main_hoop_fore_aft", face - back[:, 0], (back, xyz(hoops.main_top)))


def _restraint(case: Case) -> list[Figure]:
    pad, back = case.car.head_restraint, helmet_back(case.sitting.trunk)
    if pad is None:
        return [unmeasured(f"head.restraint_{name}", "head_restraint") for name in ("gap", "edge")]
    contact = point(column(pad.x), back[:, 1], back[:, 2])
    above, under = back[:, 2] - column(pad.z_low), column(pad.z_high) - back[:, 2]
    edge = np.minimum(np.minimum(above, under), column(pad.width) / 2)
    gap = column(pad.x) - back[:, 0]
    return [
        measured(case, "head.restraint_gap", gap, (back, contact)),
        measured(case, "head.restraint_edge", edge, (contact,)),
        *_collar(case, gap, (back, contact)),
    ]


def _collar(case: Case, gap: Mm, ends: tuple[Points, Points]) -> list[Figure]:
    """Room for what a head-and-neck restraint has behind the helmet, where that was measured."""
    collar = case.driver.kit.collar
    return [] if collar is None else [measured(case, "head.collar_room", gap - column(collar), ends)]
