"""Mass and centre of mass of the seated driver, limb by limb.

Source: de Leva, J. Biomech. 29:1223 (1996), masses and centres as shares; second-hand, two agreeing copies.
The women's thigh length of that table has another upper end: only its shares are used. The fist closes on the
wheel where the hand's centre lies, so a forearm runs from the elbow to a wrist short of the grip.
"""

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

import numpy as np

from fitcalc.body.survey import DATA, Sex
from fitcalc.units import Floats, Points

PAIRED = (
    ("upper_arm", "shoulder", "elbow"),
    ("forearm", "elbow", "wrist"),
    ("hand", "grip", "grip"),
    ("thigh", "hip", "knee"),
    ("shank", "knee", "ankle"),
    ("foot", "heel", "toe"),
)
"""Segment, and the joints that its centre lies between."""


@dataclass(frozen=True, eq=False)
class Segments:
    """The body in k segments.

    Attributes:
        names: head_neck, trunk, and the limbs with _left and _right.
        shares: (k,), of the body's mass, summing to 1.
        centres: (n, k, 3), centres of mass, car frame.
    """

    names: tuple[str, ...]
    shares: Floats
    centres: Floats


@cache
def table() -> Mapping[str, Mapping[str, str]]:
    """The published table: rows by segment, as text."""
    with (DATA / "de_leva_1996.csv").open(encoding="utf-8", newline="") as file:
        return MappingProxyType({row["segment"]: row for row in csv.DictReader(file)})


def share(segment: str, figure: str, sex: Sex | None) -> float:
    """A segment's mass or centre as a share of body mass or segment length; sex unknown: mean of both."""
    row = table()[segment]
    columns = {"female": ("women",), "male": ("men",), None: ("women", "men")}[sex]
    return sum(float(row[f"{figure}_{column}"]) for column in columns) / len(columns) / 100


def segments(joints: Mapping[str, Points], sex: Sex | None) -> Segments:
    """Every segment's share of the mass and where its centre lies.

    Args:
        joints: (n, 3) each, car frame: cervicale, head_top, and hip, knee, ankle, heel, toe, shoulder, elbow,
            grip with _left and _right.
        sex: whose shares; none takes the mean of both.
    """
    places = dict(joints)
    for side in ("left", "right"):
        places[f"wrist_{side}"] = _wrist(joints[f"elbow_{side}"], joints[f"grip_{side}"], sex)
    places["midhip"] = (joints["hip_left"] + joints["hip_right"]) / 2
    chains = [
        ("head_neck", "head_neck", "head_top", "cervicale"),
        ("trunk", "trunk", "cervicale", "midhip"),
    ] + [
        (f"{segment}_{side}", segment, f"{first}_{side}", f"{last}_{side}")
        for side in ("left", "right")
        for segment, first, last in PAIRED
    ]
    masses = np.array([share(segment, "mass", sex) for _, segment, _, _ in chains])
    centres = [
        _between(places[first], places[last], share(segment, "centre", sex))
        for _, segment, first, last in chains
    ]
    return Segments(
        tuple(chain[0] for chain in chains),
        masses / masses.sum(),
        np.stack(np.broadcast_arrays(*centres), axis=1),
    )


def centre_of_mass(joints: Mapping[str, Points], sex: Sex | None) -> Points:
    """Centre of mass of the whole body, (n, 3), car frame; joints as for `segments`."""
    parts = segments(joints, sex)
    return np.einsum("k,nkd->nd", parts.shares, parts.centres)


def _between(first: Points, last: Points, along: float) -> Points:
    return first + along * (last - first)


def _wrist(elbow: Points, grip: Points, sex: Sex | None) -> Points:
    """The wrist on the line from elbow to grip, the grip taken at the hand's centre of mass."""
    row = table()
    column = "women" if sex == "female" else "men"
    forearm = float(row["forearm"][f"length_{column}"])
    hand = float(row["hand"][f"length_{column}"]) * share("hand", "centre", sex)
    return _between(elbow, grip, forearm / (forearm + hand))
