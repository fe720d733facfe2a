"""How hard a leg can push at a knee angle."""

import tomllib
from dataclasses import dataclass
from functools import cache

import numpy as np

from fitcalc.body.survey import DATA
from fitcalc.sources import Source
from fitcalc.units import Deg, Floats, Mm


@dataclass(frozen=True, eq=False)
class LegForce:
    """The published curve.

    Attributes:
        knee: (r,), included, 180 = straight.
        share: (r,), of the peak.
        peak: N, trained men.
        source: where it comes from.
        note: what is weak about it.
    """

    knee: Floats
    share: Floats
    peak: float
    source: Source
    note: str


@cache
def leg_force() -> LegForce:
    """The curve of greatest push with a firm backrest."""
    row = tomllib.loads((DATA / "leg_force.toml").read_text(encoding="utf-8"))
    source = Source(document=row["document"], edition=row["edition"], confidence=row["confidence"])
    return LegForce(np.array(row["knee"]), np.array(row["share"]), row["peak"], source, row["note"])


def leg_force_share(knee: Deg) -> Floats:
    """Greatest push at a knee angle as a share of the peak, (n,); outside the rows the end row holds.

    Source: Hugh-Jones 1947, from memory (`data/leg_force.toml`).
    """
    curve = leg_force()
    return np.interp(knee, curve.knee, curve.share)


def knee_arm(thigh: Mm, shank: Mm, knee: Deg) -> Mm:
    """Lever of a push along the line from hip to ankle about the knee, mm, (n,); 0 = straight.

    The push that a knee torque can give is the torque over this arm: it rises as the leg straightens.

    Source: plane geometry, thigh * shank * sin(knee) / distance hip to ankle.
    """
    angle = np.radians(knee)
    distance = np.sqrt(np.maximum(thigh**2 + shank**2 - 2 * thigh * shank * np.cos(angle), 1e-12))
    arm: Mm = thigh * shank * np.sin(angle) / distance
    return arm
